import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

/** A survey of one column beside the point ids, read as one fact. */
async function column(heading: string, values: readonly string[], fact: string): Promise<readonly unknown[]> {
  const survey = await surveyOfCsv(`Point;Machine;${heading}\n${values.map((v, i) => `P${i};Pump;${v}\n`).join("")}`);
  return plainFacts(survey, fact).map(([value]) => value);
}

const ASKED = "(unreadable)";

describe("a column without a unit whose values fit another unit", () => {
  it.each([
    ["Hole depth", "0.5 0.63 0.8", "hole_depth"],
    ["Bohrtiefe", "0,75 1,25 1,5", "hole_depth"],
    ["Prof. taladro", "1,6 1,7 1,8", "hole_depth"],
    ["Profondeur filetée", "0,4 0,5 0,6", "thread_depth"],
    ["Flat dia.", "1.25 1.5 2", "flat_diameter"],
    ["Speed", "24.75 25 16.5", "nominal_speed"],
    ["Vitesse mini", "10 15 20", "lowest_speed"],
    ["Torque", "88 75 60", "target_torque"],
    ["Cure time", "0.25 0.5 1", "cure_time"],
    ["Distance to power cable", "0.3 0.5 1", "power_cable_distance"],
    ["PSU rating", "10 5 20", "supply_rating"],
    ["Wire size", "18 20 22", "conductor_size"],
  ])("is asked for: %s %s", async (heading, values, fact) => {
    expect(await column(heading, values.split(" "), fact)).toEqual(values.split(" ").map(() => ASKED));
  });

  it.each([
    ["Torque", "7 ft-lb;7;8", "target_torque", [9.49072563832, ASKED, ASKED]],
    ["Anzugsmoment", "8;72 in-lb;7 ft-lb;8 Nm", "target_torque", [ASKED, 8.13490768999, 9.49072563832, 8]],
    ["Surface temp", "140 °F;60", "surface_temperature", [60, ASKED]],
  ])("is asked for below other units: %s %s", async (heading, values, fact, read) => {
    const cells = values.split(";");
    expect(await column(heading, cells, fact)).toEqual(read);
  });

  it.each([
    ["Torque", "8;8 Nm;72 in-lb;8", "target_torque", [8, 8, 8.13490768999, 8]],
    ["Torque", "8;72 in-lb;8", "target_torque", [8, 8.13490768999, 8]],
    ["Cure time", "20;24 h;30", "cure_time", [20, 1440, 30]],
    ["Speed", "25 Hz;1480", "nominal_speed", [1500, 1480]],
    ["Torque (Nm)", "72 in-lb;8", "target_torque", [8.13490768999, 8]],
  ])("is that of the field where one cell alone states another: %s %s", async (heading, values, fact, read) => {
    const cells = values.split(";");
    expect(await column(heading, cells, fact)).toEqual(read);
  });

  it("says which units other cells state", async () => {
    const survey = await surveyOfCsv("Point;Torque\nA;7 ft-lb\nB;7\n");
    expect(survey.problems.find(({ cell }) => cell === "B3")).toMatchObject({
      code: "unknown-unit",
      text: 'no unit is stated here, and other cells of the column state "ft·lbf"; write the unit into the cell, or into the heading if it is the same in all',
    });
  });

  it("says which units are possible, once per cell and in what the column was taken for", async () => {
    const survey = await surveyOfCsv("Point;Hole depth\nA;0.5\nB;0.63\nC;0.8\n");
    const text =
      "no unit is stated, and the values of the column (0.5 to 0.8) may be mm or in; write the unit into the heading";
    const said = survey.problems.filter(({ code }) => code === "unknown-unit");
    expect(said.map(({ cell, text: why }) => [cell, why])).toEqual(["B2", "B3", "B4"].map((cell) => [cell, text]));
    expect(survey.columns[1]?.why).toContain("may be mm or in");
  });

  it.each([
    ["Cure time", "0.25 0.5 0.75", "0.25 to 0.75", "min or h"],
    ["Shaft speed", "24.75 25 16.5", "16.5 to 25", "r/min or Hz"],
    ["Torque", "88 75 60", "60 to 88", "N·m or in·lbf"],
    ["Distance to power cable", "0.3 0.5 1", "0.3 to 1", "mm or m"],
    ["PSU rating", "10 5 20", "5 to 20", "mA or A"],
    ["Wire size", "18 20 22", "18 to 22", "mm² or AWG"],
  ])("names the likeliest other unit: %s %s", async (heading, values, range, units) => {
    const cells = values.split(" ").map((value, i) => `P${i};${value}`);
    const { problems } = await surveyOfCsv(`Point;${heading}\n${cells.join("\n")}\n`);
    const said = problems.filter(({ code }) => code === "unknown-unit").map(({ text }) => text);
    expect(said).toHaveLength(3);
    for (const text of said) expect(text).toContain(`(${range}) may be ${units};`);
  });

  it("is read all the same where the cell, the heading, the row of units or the title block states one", async () => {
    expect(await column("Hole depth", ["0.5 in", "0.63", "0.8", "0.75"], "hole_depth")).toEqual([
      12.7,
      ASKED,
      ASKED,
      ASKED,
    ]);
    expect(await column("Hole depth (in)", ["0.5", "0.63", "0.8"], "hole_depth")).toEqual([12.7, 16.002, 20.32]);
    const below = await surveyOfCsv("Point;Hole depth;Torque\n;in;Nm\nA;0.5;9\nB;0.63;9\nC;0.8;9\n");
    expect(plainFacts(below, "hole_depth")).toEqual([[12.7], [16.002], [20.32]]);
    const titled = await surveyOfCsv(
      "All dimensions in inches;;\nPoint;Machine;Hole depth\nA;P;0.5\nB;P;0.63\nC;P;0.8\n",
    );
    expect(plainFacts(titled, "hole_depth")).toEqual([[12.7], [16.002], [20.32]]);
  });

  it.each([
    ["Hole depth", "16 17 0.8", "hole_depth", [16, 17, ASKED]],
    ["Hole depth", "1.25 1.5", "hole_depth", [1.25, 1.5]],
    ["Speed", "25 1480 990", "nominal_speed", [25, 1480, 990]],
    ["Speed (rpm)", "25 30 15", "nominal_speed", [25, 30, 15]],
    ["Torque", "8 9 88", "target_torque", [8, 9, 88]],
    ["Flat dia.", "3 4 35", "flat_diameter", [3, 4, 35]],
    ["Cure time", "0.5 20 24", "cure_time", [0.5, 20, 24]],
    ["Surface temperature", "176 180 190", "surface_temperature", [176, 180, 190]],
    ["Wall thickness", "1.5 2 3", "wall_thickness", [1.5, 2, 3]],
  ])(
    "is left alone where a value is usual, there are few, or nothing can tell: %s %s",
    async (heading, values, fact, read) => {
      expect(await column(heading, values.split(" "), fact)).toEqual(read);
    },
  );
});

describe("speeds that would have three decimals", () => {
  it.each([
    ["Speed", ["1.485", "2.970"]],
    ["Vitesse", ["1,485", "2,970 tr/min"]],
    ["Velocidad", ["1,485 r.p.m.", "1,480 r.p.m."]],
    ["RPM nominal", ["1,485", "1,480"]],
  ])("are asked for: %s %j", async (heading, values) => {
    expect(await column(heading, values, "nominal_speed")).toEqual([ASKED, ASKED]);
  });

  it("are asked for beside a speed that shows how speeds are written", async () => {
    expect(await column("Vitesse", ["1 485", "1,485"], "nominal_speed")).toEqual([1485, ASKED]);
  });

  it.each([
    ["Drehzahl", ["1.485", "2.970"], [1485, 2970]],
    ["Speed", ["1,485", "990"], [1485, 990]],
    ["Speed", ["24.750 Hz", "25.000 Hz"], [1485, 1500]],
    ["Speed (Hz)", ["24.750", "25.000"], [1485, 1500]],
    ["Speed", ["12.5", "20.5"], [12.5, 20.5]],
  ])(
    "are read where the language groups by that sign, or where thousandths make sense: %s %j",
    async (heading, values, read) => {
      expect(await column(heading, values, "nominal_speed")).toEqual(read);
    },
  );
});
