import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv, surveyOfWorkbook } from "../tools/survey-of.js";

const FACTS = ["point_id", "lowest_speed", "nominal_speed", "highest_speed", "target_torque"] as const;

describe("headings divided between two rows", () => {
  it.each([
    ["highest;lowest", "(no fact)", [["A1", 300, "(no fact)", 1500, 8]]],
    ["from;to", "(no fact)", [["A1", 1500, "(no fact)", 300, 8]]],
    ["full load;turndown", "(no fact)", [["A1", "(no fact)", "(no fact)", "(no fact)", 8]]],
  ])("reads %s under Speed, merged or not, and takes the row for no point", async (halves, _, rows) => {
    const [left = "", right = ""] = halves.split(";");
    const expected = halves.startsWith("from") ? [["A1", "(conflicting)", "(no fact)", "(conflicting)", 8]] : rows;
    const csv = `Point;Machine;Speed;;Torque\n;;${halves};\nA1;Pump;1500;300;8\n`;
    expect(plainFacts(await surveyOfCsv(csv), ...FACTS)).toEqual(expected);
    const merged = await surveyOfWorkbook((workbook) => {
      const sheet = workbook.addWorksheet("A");
      sheet.addRows([
        ["Point", "Machine", "Speed", null, "Torque"],
        [null, null, left, right, null],
        ["A1", "Pump", 1500, 300, 8],
      ]);
      sheet.mergeCells("C1:D1");
      sheet.mergeCells("A1:A2");
    });
    expect(plainFacts(merged, ...FACTS)).toEqual(expected);
  });

  it("reads a row of units under the second row of headings", async () => {
    const csv = "Point;Machine;Speed;;Torque\n;;min;max;\n;;rpm;rpm;ft-lb\nA1;Pump;300;1500;9\n";
    expect(plainFacts(await surveyOfCsv(csv), ...FACTS)).toEqual([["A1", 300, "(no fact)", 1500, 12.202361535]]);
  });

  it("keeps headings that stand in the upper row alone", async () => {
    const csv = "Point;Machine;;Fixing;;Supply\n;Tag;Name;Torque;Hole depth;\nA1;P-1;Pump;9;18;24 V DC\n";
    const facts = ["point_id", "asset_tag", "machine_name", "target_torque", "hole_depth", "supply_voltage"];
    expect(plainFacts(await surveyOfCsv(csv), ...facts)).toEqual([["A1", "P-1", "Pump", 9, 18, 24]]);
  });

  it("reads headings that are written twice", async () => {
    const csv = "Point;Machine;Speed;Torque\nPoint;Machine;Speed;Torque\nA1;Pump;1480;8\n";
    expect(plainFacts(await surveyOfCsv(csv), "point_id", "nominal_speed")).toEqual([["A1", 1480]]);
  });
});
