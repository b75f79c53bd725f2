import { describe, expect, it } from "vitest";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

async function read(text: string, ...facts: readonly string[]): Promise<readonly unknown[]> {
  const [row] = plainFacts(await surveyOfCsv(text), ...facts);
  return row ?? [];
}

describe("a value beside a doubtful, bounded or unreadable one", () => {
  it.each([
    ["24 VDC;AC?", "(doubtful)"],
    ["24 VDC;AC or DC", "(unreadable)"],
    ["24 VDC;tbc", "dc"],
    ["24 VDC;", "dc"],
    ["24 VDC;DC", "dc"],
    ["24 VDC;AC", "(conflicting)"],
  ])("kind of supply: %s", async (cells, kind) => {
    expect(await read(`Point;Supply;Supply kind\nP1;${cells}\n`, "supply_kind")).toEqual([kind]);
  });

  it.each([
    ["16;12 ?", "(doubtful)"],
    ["16;<15", "(unreadable)"],
    ["16;deep", "(unreadable)"],
    ["16;16", 16],
    ["16;12", "(conflicting)"],
    ["16;n/a", 16],
    ["16;", 16],
  ])("hole depth in two columns: %s", async (cells, depth) => {
    expect(await read(`Point;Hole depth;Drilled depth\nP1;${cells}\n`, "hole_depth")).toEqual([depth]);
  });

  it("keeps a bound on the lowest speed open beside a range", async () => {
    const text = "Point;Speed;Min speed\nP1;700-1500;<300\n";
    expect(await read(text, "lowest_speed", "highest_speed")).toEqual(["(unreadable)", 1500]);
  });

  it("lets a place of its own column stand beside a phrase that nobody understands", async () => {
    expect(await read("Point;Mounted on;Material\nP1;bearing housing;xyz\n", "mounted_on", "surface_material")).toEqual(
      ["bearing-housing", "(unreadable)"],
    );
  });
});

describe("speeds that cannot all be true", () => {
  it.each([
    ["Min speed;Max speed", "1500;500", ["(conflicting)", "(no fact)", "(conflicting)"]],
    ["Min speed;Speed", "1500;1000", ["(conflicting)", "(conflicting)", "(no fact)"]],
    ["Speed;Max speed", "1500;1000", ["(no fact)", "(conflicting)", "(conflicting)"]],
    ["Min speed;Speed;Max speed", "300;1500;1800", [300, 1500, 1800]],
    ["Min speed;Speed;Max speed", "1500;1500;1500", [1500, 1500, 1500]],
    ["Min speed;Speed;Max speed", "300;1500;1000", [300, "(conflicting)", "(conflicting)"]],
  ])("%s: %s", async (headings, cells, speeds) => {
    const text = `Point;${headings}\nP1;${cells}\n`;
    expect(await read(text, "lowest_speed", "nominal_speed", "highest_speed")).toEqual(speeds);
  });

  it("names the cells", async () => {
    const survey = await surveyOfCsv("Point;Min speed;Max speed\nP1;1500;500\n");
    const said = survey.problems.filter((problem) => problem.code === "conflicting");
    expect(said.map(({ fact, cell }) => [fact, cell])).toEqual([
      ["lowest_speed", "B2"],
      ["highest_speed", "B2"],
    ]);
    expect(said[0]?.text).toContain("cells B2 and C2 contradict each other");
  });
});

describe("a word for the drive beside a speed", () => {
  it.each([
    ["1480 (VFD)", 1480, "yes"],
    ["1480 (fixed speed)", 1480, "no"],
    ["1480 (VFD?)", "(doubtful)", "(no fact)"],
    ["1480 VFD", "(unreadable)", "(no fact)"],
    ["1480 (nameplate)", 1480, "(no fact)"],
    ["1480 (x)", 1480, "(no fact)"],
  ])("%s", async (cell, speed, variable) => {
    const text = `Point;Machine;Speed\nP1;Pump;${cell}\n`;
    expect(await read(text, "nominal_speed", "variable_speed")).toEqual([speed, variable]);
  });

  it("must agree with the column for it", async () => {
    expect(await read("Point;Speed;VFD\nP1;1480 (VFD);\n", "variable_speed")).toEqual(["yes"]);
    expect(await read("Point;Speed;VFD\nP1;1480 (VFD);no\n", "variable_speed")).toEqual(["(conflicting)"]);
  });
});
