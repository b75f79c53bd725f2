import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert } from "../../src/base/index.js";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

async function read(headings: string, cells: string, fact: string): Promise<unknown> {
  const [row] = plainFacts(await surveyOfCsv(`Point;${headings}\nP1;${cells}\n`), fact);
  return row?.[0];
}

const CONFLICT = "(conflicting)";

describe("two columns for one fact", () => {
  it.each([
    ["16;0.63", [16, 16.002]],
    ["16;5/8", [15.875, 16]],
    ["15;0.6", [15, 15.24]],
    ["16;0.65", CONFLICT],
    ["16;0.5", CONFLICT],
    ["16.0;0.63", [16, 16.002]],
    ["16.00;0.630", [16, 16.002]],
    ["16.000;0.625", CONFLICT],
    [";0.63", 16.002],
    ["16;", 16],
    ["16;tbc", 16],
    ["16;n/a", 16],
    ["16 ?;0.63", "(doubtful)"],
    ["16;0.63 ?", "(doubtful)"],
    ["16 tbc;0.63", "(doubtful)"],
    ["16;deep", "(unreadable)"],
    ["16;<0.63", "(unreadable)"],
    ["16 mm;16 mm", 16],
    ["16 mm;0.63", [16, 16.002]],
    ["16;16.2 mm", CONFLICT],
    ["0.63 in;0.63", 16.002],
    ["0.63 in;0.64", CONFLICT],
  ])("hole depth in millimetres and in inches: %s", async (cells, depth) => {
    expect(await read("Hole depth (mm);Hole depth (in)", cells, "hole_depth")).toEqual(depth);
  });

  it.each([
    ["Torque (Nm);Torque (ft-lb)", "9.5;7", "target_torque", [9.49072563832, 9.5]],
    ["Torque (Nm);Torque (ft-lb)", "9.5;8", "target_torque", CONFLICT],
    ["Torque (Nm);Torque (in-lb)", "10;88.5", "target_torque", [9.99915736894, 10]],
    ["Speed (rpm);Shaft speed (Hz)", "1485;24.75", "nominal_speed", 1485],
    ["Speed (rpm);Shaft speed (Hz)", "1485;24.8", "nominal_speed", [1485, 1488]],
    ["Speed (rpm);Shaft speed (Hz)", "1485;23", "nominal_speed", CONFLICT],
    ["Speed;Nominal speed", "1485;1486", "nominal_speed", CONFLICT],
    ["Drehzahl;Running speed", "1.485;1,485", "nominal_speed", 1485],
    ["Surface finish;Paint", "painted;lackiert", "surface_finish", "painted"],
    ["Surface finish;Paint", "painted;machined", "surface_finish", CONFLICT],
    ["Surface finish;Paint", "painted;probably machined", "surface_finish", "(doubtful)"],
  ])("%s: %s", async (headings, cells, fact, value) => {
    expect(await read(headings, cells, fact)).toEqual(value);
  });

  it("keep both cells as the origin, and name both where they contradict each other", async () => {
    const survey = await surveyOfCsv("Point;Hole depth (mm);Hole depth (in)\nA;16;0.63\nB;16;0.7\n");
    const cellsOf = (i: number): unknown => survey.records[i]?.facts.get("hole_depth")?.origin;
    expect(cellsOf(0)).toMatchObject({ kind: "cells", cells: [{ cell: "B2" }, { cell: "C2" }] });
    expect(cellsOf(1)).toMatchObject({ kind: "cells", cells: [{ cell: "B3" }, { cell: "C3" }] });
    const said = survey.problems.filter(({ code }) => code === "conflicting");
    expect(said.map(({ cell, text }) => [cell, text])).toEqual([
      ["B3", "cells B3 and C3 contradict each other; correct the wrong one"],
    ]);
  });

  it("agree whenever one is the other converted and rounded, and lie around the true value", async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 6, max: 100 }), fc.integer({ min: 1, max: 4 }), async (mm, digits) => {
        const inches = convert(mm, "mm", "in", "length").toFixed(digits);
        const value = await read("Hole depth (mm);Hole depth (in)", `${mm};${inches}`, "hole_depth");
        const [lowest, highest] = Array.isArray(value) ? value : [value, value];
        expect([mm, inches, lowest <= mm && mm <= highest]).toEqual([mm, inches, true]);
        expect(highest - lowest).toBeLessThanOrEqual((25.4 * 0.5) / 10 ** digits + 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});
