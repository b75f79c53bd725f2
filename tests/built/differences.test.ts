import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { known } from "../tools/make-record.js";
import { checkRows, done, proposal } from "./made.js";

function between(lowest: number, highest: number, accuracy?: number): FactState {
  const value = { lowest, highest };
  return { known: true, value, ...(accuracy === undefined ? {} : { accuracy }), origin: { kind: "none" } };
}

async function differing(fact: string, proposed: FactState, built: FactState): Promise<readonly string[]> {
  const { of } = await checkRows([proposal("P1", { [fact]: proposed })], [done("P1", { [fact]: built })]);
  return of("P1").differences.map((one) => one.fact);
}

describe("two numbers", () => {
  it.each([
    ["the same", known(16), known(16), []],
    ["a tenth apart", known(16), known(16.1), ["hole_depth"]],
    ["within the accuracy of one", between(15.5, 16.5, 0.5), known(16.4), []],
    ["at the end of the accuracy", between(15.5, 16.5, 0.5), known(16.5), []],
    ["just past it", between(15.5, 16.5, 0.5), known(16.51), ["hole_depth"]],
    ["ranges that meet", between(14, 16), between(15, 18), []],
    ["ranges that do not", between(14, 15), between(15.1, 18), ["hole_depth"]],
    ["within a bound", between(Number.NEGATIVE_INFINITY, 16), known(12), []],
    ["beyond a bound", between(Number.NEGATIVE_INFINITY, 16), known(17), ["hole_depth"]],
  ])("%s", async (_name, proposed, built, expected) => {
    expect(await differing("hole_depth", proposed, built)).toEqual(expected);
  });
});

describe("two words", () => {
  it.each([
    ["thread", "M6 x 1", "m6x1", []],
    ["thread", "M6", "M8", ["thread"]],
    ["machine_name", "Feed water  pump", "feed water pump", []],
    ["sensor_model", "baseline", "Baseline", []],
    ["sensor_model", "SLOW120", "example-slow-shaft", []],
    ["sensor_model", "SLOW120", "COMPACT22", ["sensor_model"]],
    ["surface_material", "grey-cast-iron", "ductile-iron", ["surface_material"]],
  ])("of %s: %s and %s", async (fact, proposed, built, expected) => {
    expect(await differing(fact, known(proposed), known(built))).toEqual(expected);
  });

  it("of yes and no", async () => {
    expect(await differing("soft_layer", known(false), known(true))).toEqual(["soft_layer"]);
  });
});

describe("what is not compared", () => {
  it("is what is said of the walk, and what was planned beside what was measured", async () => {
    const then = proposal("P1", {
      surveyed_by: known("O. Tressick"),
      notes: known("green paint"),
      target_torque: known(8),
    });
    const now = done("P1", { surveyed_by: known("J. Marrow"), notes: known("done"), applied_torque: known(9) });
    const { of } = await checkRows([then], [now]);
    expect(of("P1").differences).toEqual([]);
    expect(of("P1").carried).not.toContain("notes");
  });

  it("gives both cells of what is", async () => {
    const then = proposal("P1", { hole_depth: known(16, "O8") });
    const { of, summary } = await checkRows([then], [done("P1", { hole_depth: known(17, "F3") })]);
    expect(of("P1").differences).toMatchObject([
      {
        fact: "hole_depth",
        needsNewVerdict: false,
        proposed: { value: 16, unit: "mm", cells: [{ cell: "O8" }] },
        built: { value: 17, unit: "mm", cells: [{ cell: "F3" }] },
      },
    ]);
    expect(summary.byFact).toEqual([{ fact: "hole_depth", points: 1 }]);
  });
});
