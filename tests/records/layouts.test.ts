import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv, surveyOfWorkbook } from "../tools/survey-of.js";

const HEADINGS = "Point,Machine,Speed,Drive,Mounting,Hole depth,Torque";
const ROW = "P1,Pump 1,1485,DOL,tapped,18,8";

/** Codes and cells of the remarks of one kind. */
function said(survey: Awaited<ReturnType<typeof surveyOfCsv>>, code: string): readonly (string | null)[] {
  return survey.problems.filter((problem) => problem.code === code).map((problem) => problem.cell);
}

describe("rows that are points, and rows that are not", () => {
  it("finds the headings below a title block of any length", async () => {
    for (const lines of [0, 3, 17, 38]) {
      const title = Array.from({ length: lines }, (_, i) =>
        i === 0 ? "Vibration survey 2026,,,,,," : `line ${i},,,,,,`,
      );
      const survey = await surveyOfCsv([...title, HEADINGS, ROW].join("\n"));
      expect(plainFacts(survey, "point_id", "nominal_speed")).toEqual([["P1", 1485]]);
      expect(survey.records[0]?.row).toBe(lines + 2);
    }
  });

  it("leaves out section rows, totals, notes and column numbers, and says each", async () => {
    const survey = await surveyOfCsv(
      [
        HEADINGS,
        "1,2,3,4,5,6,7",
        "Area North,,,,,,",
        ROW,
        ",,,,,,",
        "P2,Fan 2,960,VFD,glued,,8",
        "Total,2,,,,,",
        "Average,,1222,,,,8",
        "Surveyed by:,J. Smith,,,,,",
        "*,read from the nameplate,,,,,",
        "All speeds were read from nameplates,,,,,,",
      ].join("\n"),
    );
    expect(plainFacts(survey, "point_id")).toEqual([["P1"], ["P2"]]);
    expect(said(survey, "row-skipped")).toEqual(["A2", "A3", "A7", "A8", "A9", "A10", "A11"]);
  });

  it("keeps a point of which nothing but the code is known", async () => {
    const survey = await surveyOfCsv([HEADINGS, "P-7,,,,,,"].join("\n"));
    expect(plainFacts(survey, "point_id", "nominal_speed")).toEqual([["P-7", "(missing)"]]);
  });

  it("tells a total from a code that begins like one", async () => {
    const survey = await surveyOfCsv(
      [HEADINGS, "SUM-12,Sump pump,,,,,", "Total:,,2445,,,18,16", "Total flow pump,Pump,,DOL,tapped,,"].join("\n"),
    );
    expect(plainFacts(survey, "point_id")).toEqual([["SUM-12"], ["Total flow pump"]]);
  });

  it("reads repeated headings as headings", async () => {
    const survey = await surveyOfCsv([HEADINGS, ROW, HEADINGS, ROW.replace("P1", "P2")].join("\n"));
    expect(plainFacts(survey, "point_id", "target_torque")).toEqual([
      ["P1", 8],
      ["P2", 8],
    ]);
  });

  it("leaves out the lines of a legend that reaches below the table", async () => {
    const survey = await surveyOfCsv(
      "Point,Machine,Speed,,Mounting,Code\nP1,Pump,1485,,tapped,T\n,,,,magnet,M\n,,,,clamp,C\n",
    );
    expect(plainFacts(survey, "point_id", "mounting_method")).toEqual([["P1", "tapped-hole"]]);
    expect(said(survey, "row-skipped")).toEqual(["A3"]);
  });

  it("takes a row of words that are headings elsewhere for a point", async () => {
    const survey = await surveyOfCsv(
      "Point de mesure;Machine;Palier;Support;Variateur\nP1;Pompe;Roulement;Fonte;oui\nP2;Palier;Palier;Palier;Variateur\n",
    );
    expect(plainFacts(survey, "point_id")).toEqual([["P1"], ["P2"]]);
  });

  it("reads a second table below by its own headings", async () => {
    const survey = await surveyOfCsv([HEADINGS, ROW, "", "Messstelle,Drehzahl,Maschine", "M1,960,Lüfter"].join("\n"));
    expect(plainFacts(survey, "point_id", "nominal_speed", "machine_name")).toEqual([
      ["P1", 1485, "Pump 1"],
      ["M1", 960, "Lüfter"],
    ]);
  });

  it("takes a list of other things below, or a legend on its own sheet, for no points", async () => {
    const below = await surveyOfCsv([HEADINGS, ROW, "", "Sensor,Supply,Voltage,Qty", "X1,PSU1,24 V DC,4"].join("\n"));
    expect(plainFacts(below, "point_id")).toEqual([["P1"]]);
    expect(said(below, "row-skipped")).toEqual(["A4"]);
    const sheets = await surveyOfWorkbook((workbook) => {
      const points = workbook.addWorksheet("Points");
      points.addRows([HEADINGS.split(","), ROW.split(",")]);
      workbook.addWorksheet("Legend").addRows([
        ["Mounting", "Notes"],
        ["T", "tapped hole"],
        ["G", "glued pad"],
      ]);
    });
    expect(plainFacts(sheets, "point_id")).toEqual([["P1"]]);
  });

  it("reads hidden rows, columns and sheets, and says so", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      const sheet = workbook.addWorksheet("A");
      sheet.addRows([HEADINGS.split(","), ["P1", "Pump", 1485, "DOL", "tapped", 18, 8]]);
      sheet.addRow(["P2", "Pump", 300, "DOL", "tapped", 18, 8]).hidden = true;
      sheet.getColumn(7).hidden = true;
      const hidden = workbook.addWorksheet("B");
      hidden.state = "hidden";
      hidden.addRows([HEADINGS.split(","), ["P3", "Pump", 600, "DOL", "tapped", 18, 8]]);
    });
    expect(plainFacts(survey, "nominal_speed", "target_torque")).toEqual([
      [1485, 8],
      [300, 8],
      [600, 8],
    ]);
    expect(said(survey, "hidden-row")).toEqual(["A3"]);
    expect(said(survey, "hidden-column")).toEqual(["G1"]);
    expect(said(survey, "hidden-sheet")).toHaveLength(1);
  });
});

describe("units and halves of headings in the row below", () => {
  it.each([
    [",,rpm,,,in,ft-lb", "plain"],
    ["-,-,rpm,-,-,in,ft-lb", "with dashes"],
    [",,[rpm],(Y/N),,[in],[ft-lb]", "in brackets"],
    [",,r/min,VFD/DOL,,inch,ft lb", "with choices"],
  ])("%s", async (units) => {
    const survey = await surveyOfCsv([HEADINGS, units, "P1,Pump 1,1485,DOL,tapped,0.75,5"].join("\n"));
    expect(plainFacts(survey, "point_id", "nominal_speed", "hole_depth", "target_torque")).toEqual([
      ["P1", 1485, 19.05, 6.77908974166],
    ]);
  });

  it("counts one unit alone", async () => {
    const survey = await surveyOfCsv("Point,Machine,Hole depth\n,,cm\nP1,Pump,1.8\n");
    expect(plainFacts(survey, "point_id", "hole_depth")).toEqual([["P1", 18]]);
  });

  it("takes the kind of supply from the row of units", async () => {
    const survey = await surveyOfCsv("Point,Machine,Supply\n,,V AC\nP1,Pump,24\n");
    expect(plainFacts(survey, "supply_voltage", "supply_kind")).toEqual([[24, "ac"]]);
  });

  it("takes no row of points for a row of units", async () => {
    const survey = await surveyOfCsv("Point,Direction,Machine,Speed\nP1,H,V,1485\nA,V,M,960\n");
    expect(plainFacts(survey, "point_id", "direction", "nominal_speed")).toEqual([
      ["P1", "horizontal", 1485],
      ["A", "vertical", 960],
    ]);
  });

  it("joins two heading rows, merged or not", async () => {
    const merged = await surveyOfWorkbook((workbook) => {
      const sheet = workbook.addWorksheet("A");
      sheet.addRows([
        ["", "", "Hole", "", "Torque"],
        ["Point", "Machine", "depth (mm)", "Ø", "Nm"],
        ["P1", "Pump", 18, 5, 8],
      ]);
      sheet.mergeCells("C1:D1");
    });
    expect(plainFacts(merged, "point_id", "hole_depth")).toEqual([["P1", 18]]);
    const unmerged = await surveyOfCsv(
      "Survey;;;\n;;Hole (mm);;Torque\nPoint;Machine;Depth;Thread depth;Nm\nP1;Pump;18;10;8\n",
    );
    expect(plainFacts(unmerged, "hole_depth", "thread_depth", "target_torque")).toEqual([[18, 10, 8]]);
    const halves = await surveyOfCsv("Point,Machine,Speed,,Mounting\n,,min,max,\nP1,Fan,300,1500,glued\n");
    expect(plainFacts(halves, "lowest_speed", "highest_speed", "mounting_method")).toEqual([
      [300, 1500, "adhesive-pad"],
    ]);
  });
});

describe("merged cells", () => {
  it("give their value to the rows they cover, and to no other", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      const sheet = workbook.addWorksheet("A");
      sheet.addRows([HEADINGS.split(","), ["P1", "Pump 1", 1485], ["P2"], ["P3", "Fan", 960], ["P4"]]);
      sheet.mergeCells("B2:B3");
      sheet.mergeCells("C2:C3");
    });
    expect(plainFacts(survey, "point_id", "machine_name", "nominal_speed")).toEqual([
      ["P1", "Pump 1", 1485],
      ["P2", "Pump 1", 1485],
      ["P3", "Fan", 960],
      ["P4", "(missing)", "(missing)"],
    ]);
  });

  it("do not carry the number of one column into the next", async () => {
    const survey = await surveyOfWorkbook((workbook) => {
      const sheet = workbook.addWorksheet("A");
      sheet.addRows([
        ["Point", "Machine", "Hole depth", "Thread depth"],
        ["P1", "Pump", 18],
        ["P2", "Pump", 16, 10],
      ]);
      sheet.mergeCells("C2:D2");
    });
    expect(plainFacts(survey, "hole_depth", "thread_depth")).toEqual([
      [18, "(unreadable)"],
      [16, 10],
    ]);
  });
});

describe("columns", () => {
  it("that agree count once, that contradict are conflicting, wherever they stand", async () => {
    const agree = await surveyOfCsv("Point,Machine,Speed,Notes,RPM\nP1,Pump,1485,x,1485 rpm\nP2,Pump,1485,x,960\n");
    expect(plainFacts(agree, "nominal_speed")).toEqual([[1485], ["(conflicting)"]]);
  });

  it("DE H gives position and direction, beside a column of its own for the component too", async () => {
    const survey = await surveyOfCsv(
      "Point,Position,Component\nP1,Motor DE H,Motor\nP2,Pump NDE V,Pump\nP3,DE A,Fan\n",
    );
    expect(plainFacts(survey, "component", "bearing_position", "direction")).toEqual([
      ["motor", "drive-end", "horizontal"],
      ["pump", "non-drive-end", "vertical"],
      ["fan", "drive-end", "axial"],
    ]);
  });

  it("one seat column leaves unmentioned parts absent, columns of their own leave them unknown", async () => {
    const one = await surveyOfCsv("Point,Machine,Surface\nP1,Pump,cast iron\nP2,Pump,tbc\nP3,Pump,fan cowl\n");
    expect(plainFacts(one, "surface_material", "surface_finish", "mounted_on")).toEqual([
      ["grey-cast-iron", "absent", "absent"],
      ["(missing)", "(no fact)", "(no fact)"],
      ["absent", "absent", "fan-cover"],
    ]);
    const several = await surveyOfCsv(
      "Point,Machine,Material,Finish,Mounted on\nP1,Pump,cast iron,,\nP2,Pump,steel,painted,foot\n",
    );
    expect(plainFacts(several, "surface_material", "surface_finish", "mounted_on")).toEqual([
      ["grey-cast-iron", "(missing)", "(missing)"],
      ["carbon-steel", "painted", "foot"],
    ]);
  });

  it("answers yes and no to whether it is painted, and nothing to whether the paint is off", async () => {
    const painted = await surveyOfCsv("Point,Machine,Painted?\nP1,Pump,yes\nP2,Pump,no\n");
    expect(plainFacts(painted, "surface_finish")).toEqual([["painted"], ["absent"]]);
    const removed = await surveyOfCsv("Point,Machine,Paint removed?\nP1,Pump,yes\nP2,Pump,no\n");
    expect(plainFacts(removed, "surface_finish")).toEqual([["(unreadable)"], ["(unreadable)"]]);
  });

  it("reads the voltage beside the kind of supply where no other column has it", async () => {
    const survey = await surveyOfCsv("Point,Machine,Supply type\nP1,Pump,24 V DC\nP2,Pump,AC\n");
    expect(plainFacts(survey, "supply_voltage", "supply_kind")).toEqual([
      [24, "dc"],
      ["(no fact)", "ac"],
    ]);
  });

  it("a heading that may mean several fields is settled by the values, or said to be open", async () => {
    const supply = await surveyOfCsv("Point,Machine,Power\nP1,Pump,24 V DC\nP2,Fan,24 V DC\n");
    expect(plainFacts(supply, "supply_voltage", "power")[0]).toEqual([24, "(no fact)"]);
    const power = await surveyOfCsv("Point,Machine,Power\nP1,Pump,75 kW\nP2,Fan,11 kW\n");
    expect(plainFacts(power, "supply_voltage", "power")[0]).toEqual(["(no fact)", 75]);
    const drive = await surveyOfCsv("Point,Machine,Drive\nP1,Pump,VFD\nP2,Fan,DOL\n");
    expect(plainFacts(drive, "variable_speed")).toEqual([["yes"], ["no"]]);
    const belt = await surveyOfCsv("Point,Machine,Drive\nP1,Pump,V-belt\nP2,Fan,direct\n");
    expect(plainFacts(belt, "drive_type")).toEqual([["belt"], ["direct"]]);
  });
});
