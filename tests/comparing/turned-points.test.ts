import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outcome, Verdict } from "../../src/base/index.js";
import { compareResults, type PointCompared } from "../../src/comparing/index.js";

function point(row: number, verdict: "pass" | "warn" | "fail", outcomes: Readonly<Record<string, Outcome>> = {}) {
  const findings = Object.entries(outcomes).map(([rule, outcome]) => ({
    rule,
    outcome,
    message: `${rule} ${outcome}`,
  }));
  return {
    id: `id-${row}`,
    point: `P-${row}`,
    file: "s.xlsx",
    sheet: "S",
    row,
    verdict,
    findings,
  } satisfies PointCompared;
}

const OUTCOMES: readonly Outcome[] = ["pass", "warn", "fail", "undecided", "not-applicable", "no-limit-in-force"];
const VERDICTS: readonly Verdict[] = ["pass", "warn", "fail"];

describe("two results compared", () => {
  it("names points that turn, the rules that turned them, and counts both", () => {
    const before = [
      point(1, "pass", { depth: "pass" }),
      point(2, "warn", { depth: "undecided" }),
      point(3, "fail", { depth: "fail", speed: "fail" }),
      point(4, "pass"),
    ];
    const after = [
      point(1, "fail", { depth: "fail" }),
      point(2, "fail", { depth: "fail" }),
      point(3, "fail", { depth: "not-applicable", speed: "fail" }),
      point(4, "pass", { depth: "pass" }),
    ];
    const turned = compareResults(before, after);
    expect(turned.points).toBe(4);
    expect(turned.turned.map(({ row, findings }) => [row, findings])).toEqual([
      [1, [{ rule: "depth", before: null, after: "fail", message: "depth fail" }]],
      [2, [{ rule: "depth", before: "undecided", after: "fail", message: "depth fail" }]],
      [3, [{ rule: "depth", before: "fail", after: null, message: "depth not-applicable" }]],
    ]);
    expect(turned.byRule.map(({ before: from, after: to, points }) => [from, to, points])).toEqual([
      [null, "fail", 1],
      ["undecided", "fail", 1],
      ["fail", null, 1],
    ]);
    expect(turned.verdicts).toEqual([
      { before: "pass", after: "fail", points: 1 },
      { before: "warn", after: "fail", points: 1 },
    ]);
  });

  it("finds a point by its id, also where its row is another, and by its row where it has no id", () => {
    const moved = compareResults(
      [point(1, "pass"), point(2, "fail")],
      [{ ...point(2, "fail"), row: 9 }, point(1, "warn")],
    );
    expect(moved.turned.map(({ point: name }) => name)).toEqual(["P-1"]);
    const nameless = compareResults([{ ...point(1, "pass"), id: null }], [{ ...point(1, "fail"), id: null }]);
    expect(nameless.turned).toHaveLength(1);
  });

  it("counts points that only one result has, and compares two rows with one id in their order", () => {
    const turned = compareResults([point(1, "pass"), point(2, "pass")], [point(2, "pass"), point(3, "pass")]);
    expect([turned.onlyBefore, turned.onlyAfter, turned.points]).toEqual([1, 1, 1]);
    const twice = [point(1, "pass"), { ...point(1, "fail"), row: 2 }];
    expect(compareResults(twice, twice).turned).toEqual([]);
  });

  const outcomes = fc.dictionary(fc.constantFrom("a", "b", "c"), fc.constantFrom(...OUTCOMES));
  const points = fc.array(fc.tuple(fc.constantFrom(...VERDICTS), outcomes), { maxLength: 8 });
  it("says nothing of a result beside itself, and the reverse when the sides are swapped", () => {
    fc.assert(
      fc.property(points, points, (one, other) => {
        const [a, b] = [one, other].map((list) => list.map(([verdict, of], row) => point(row, verdict, of)));
        if (!a || !b) return;
        expect(compareResults(a, a)).toMatchObject({ turned: [], byRule: [], verdicts: [], onlyBefore: 0 });
        const [there, back] = [compareResults(a, b), compareResults(b, a)];
        expect(back.turned.map(({ row }) => row)).toEqual(there.turned.map(({ row }) => row));
        expect(back.onlyBefore).toBe(there.onlyAfter);
        const sum = (turns: readonly { readonly points: number }[]): number =>
          turns.reduce((all, t) => all + t.points, 0);
        expect(sum(back.byRule)).toBe(sum(there.byRule));
      }),
    );
  });
});
