import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactState, factOf, readingOf, statedAccuracy, withAccuracy } from "../../src/facts/index.js";
import { GOOD_POINT, known, screenRows, surveyOf } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();
const depth = factOf("hole_depth");

function number(lowest: number, highest: number): FactState & { known: true } {
  return { known: true, value: { lowest, highest }, origin: { kind: "none" } };
}

describe("a number with an accuracy", () => {
  it("keeps its reading, also where the lower end is cut off at nothing", () => {
    const wide = withAccuracy(number(3, 3), statedAccuracy(5, "mm", depth), depth);
    expect(wide).toMatchObject({ value: { lowest: 0, highest: 8 }, accuracy: 5 });
    expect(readingOf(wide)).toBe(3);
  });

  it("that is a bound moves on its known side alone", () => {
    const half = statedAccuracy(0.5, "mm", depth);
    expect(withAccuracy(number(-Infinity, 10), half, depth).value).toEqual({ lowest: -Infinity, highest: 10.5 });
    expect(withAccuracy(number(10, Infinity), half, depth).value).toEqual({ lowest: 9.5, highest: Infinity });
    expect(withAccuracy(number(10, Infinity), statedAccuracy(2, null, depth), depth).value).toEqual({
      lowest: 9.8,
      highest: Infinity,
    });
    expect(readingOf(number(-Infinity, 10))).toBeNull();
  });

  it("may lie below nothing where that is a value", () => {
    const temperature = factOf("surface_temperature");
    const wide = withAccuracy(number(1, 1), statedAccuracy(9, "°F", temperature), temperature);
    expect(wide).toMatchObject({ value: { lowest: -4, highest: 6 }, accuracy: 5 });
  });

  it("stays as it is where it says its own, and is exact where that is nothing", () => {
    const own = { ...number(9, 11), accuracy: 1 };
    expect(withAccuracy(own, statedAccuracy(5, "mm", depth), depth)).toBe(own);
    expect(withAccuracy(number(10, 10), statedAccuracy(0, "mm", depth), depth)).toEqual({
      ...number(10, 10),
      accuracy: 0,
    });
  });

  it("is never judged better or worse than without, only left open", () => {
    const facts = ["hole_depth", "thread_depth", "flat_diameter", "target_torque", "supply_voltage", "nominal_speed"];
    const row = fc.record(
      Object.fromEntries(
        facts.map((id) => [
          id,
          fc.tuple(fc.integer({ min: 5, max: 15 }), fc.integer({ min: 0, max: 40 }), fc.boolean()),
        ]),
      ),
    );
    const limits: Readonly<Record<string, number>> = {
      hole_depth: 15,
      thread_depth: 9,
      flat_diameter: 30,
      target_torque: 10,
      supply_voltage: 20.4,
      nominal_speed: 600,
    };
    fc.assert(
      fc.property(row, (rows) => {
        const bare: Record<string, FactState> = { ...GOOD_POINT };
        const wide: Record<string, FactState> = { ...GOOD_POINT };
        for (const [id, [tenths, width, isPercent]] of Object.entries(rows)) {
          const definition = factOf(id);
          const state = known(Number((((limits[id] ?? 1) * tenths) / 10).toPrecision(6)));
          bare[id] = state;
          wide[id] = withAccuracy(
            state,
            statedAccuracy(width, isPercent ? null : (definition.unit ?? ""), definition),
            definition,
          );
        }
        const { points } = screenRows(rulebook, [surveyOf([bare, wide])], { set: "full", allFindings: true });
        const outcomes = points.map(({ findings }) => new Map(findings.map(({ rule, outcome }) => [rule, outcome])));
        for (const [rule, outcome] of outcomes[1] ?? []) {
          if (outcome !== "undecided") expect([rule, outcome]).toEqual([rule, outcomes[0]?.get(rule)]);
        }
      }),
      { numRuns: 60 },
    );
  });
});
