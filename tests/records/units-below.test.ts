import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

const HEADINGS = "Point;Speed;Torque;Photo;Hole depth;Mounting";
const ROW = "A1;1480;9;12;1.25;tapped";
const READ = [["A1", 1480, 12.202361535, 31.75]];

async function read(...lines: readonly string[]): Promise<readonly (readonly unknown[])[]> {
  return plainFacts(await surveyOfCsv(lines.join("\n")), "point_id", "nominal_speed", "target_torque", "hole_depth");
}

describe("a row of units with cells that nobody knows", () => {
  it.each([
    [";rpm;ft-lb;jpg;in;"],
    ["unit:;rpm;ft-lb;;in;see note 1"],
    ["Einheit;rpm;ft-lb;m³/h;in;ISO"],
    [";rpm;ft-lb;kg;in;(Y/N)"],
  ])("%s", async (units) => {
    expect(await read(HEADINGS, units, ROW)).toEqual(READ);
  });

  it("leaves open only the column of which it says no unit", async () => {
    expect(await read(HEADINGS, ";rpm;ft-lb;;see drawing;", ROW)).toEqual([["A1", 1480, 12.202361535, "(unreadable)"]]);
    expect(await read(HEADINGS, ";rpm;ft-lb;;-;", ROW)).toEqual([["A1", 1480, 12.202361535, 1.25]]);
  });

  it("reads units beside columns of other quantities", async () => {
    const survey = await surveyOfCsv("Point;Current;Flow;Cure time;Full thread;Foo\n;A;m³/h;s;mm;h\nA1;3;4;120;12;1\n");
    expect(plainFacts(survey, "point_id", "cure_time")).toEqual([["A1", 2]]);
  });

  it("takes a row with the code of a point for a point, and leaves the units open", async () => {
    expect(await read(HEADINGS, "P1;rpm;ft-lb;;in;tapped", ROW)).toEqual([
      ["P1", "(unreadable)", "(unreadable)", "(unreadable)"],
      ["A1", "(unreadable)", "(unreadable)", "(unreadable)"],
    ]);
  });

  it("loses no point that says one word where a number is asked for", async () => {
    const survey = await surveyOfCsv("Point;Machine;Cure time\nNorth;Pump;h\nSouth;Pump;30 min\n");
    expect(plainFacts(survey, "point_id", "cure_time")).toEqual([
      ["North", "(unreadable)"],
      ["South", 30],
    ]);
  });
});
