import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { SettlingCounts } from "../../src/screening/settling/settling-counts.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();
const MISSING = unknown("missing");

function steps(...sets: readonly (readonly [count: number, ...facts: string[]])[]): readonly string[] {
  const counts = new SettlingCounts();
  for (const [count, ...facts] of sets) for (let i = 0; i < count; i++) counts.add(facts);
  return counts.steps().map(({ facts, points, pointsSoFar }) => `${facts.join("+")} ${points} ${pointsSoFar}`);
}

describe("what to fetch first", () => {
  it("is what settles most points per fact", () => {
    expect(steps([3, "hole_depth"], [5, "cure_time"])).toEqual(["cure_time 5 5", "hole_depth 3 8"]);
    expect(steps([3, "hole_depth"], [5, "thread_depth", "cure_time"])).toEqual([
      "hole_depth 3 3",
      "thread_depth+cure_time 5 8",
    ]);
    expect(steps([2, "hole_depth"], [5, "thread_depth", "cure_time"])).toEqual([
      "thread_depth+cure_time 5 5",
      "hole_depth 2 7",
    ]);
  });

  it("counts what is fetched once for all points that need it", () => {
    expect(steps([2, "hole_depth"], [2, "thread_depth", "hole_depth"], [3, "thread_depth"])).toEqual([
      "thread_depth+hole_depth 7 7",
    ]);
    expect(steps([4, "hole_depth"], [1, "thread_depth", "hole_depth"])).toEqual(["hole_depth 4 4", "thread_depth 1 5"]);
  });

  it("joins sets that are worth more together", () => {
    const [a, b, c] = ["thread_depth", "hole_depth", "cure_time"] as const;
    expect(steps([1, a, b], [1, b, c], [1, a, c])).toEqual(["thread_depth+hole_depth+cure_time 3 3"]);
  });

  it("takes fewer facts first where points per fact are equal, then the order of the catalogue", () => {
    expect(steps([2, "thread_depth", "cure_time"], [1, "hole_depth"])).toEqual([
      "hole_depth 1 1",
      "thread_depth+cure_time 2 3",
    ]);
    expect(steps([1, "cure_time"], [1, "flat_diameter"])).toEqual(["flat_diameter 1 1", "cure_time 1 2"]);
  });

  it("settles every point in the end, whatever their order", () => {
    const facts = ["hole_depth", "thread_depth", "cure_time", "flat_diameter", "target_torque", "supply_kind"];
    const sets = fc.array(fc.subarray(facts, { minLength: 1 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(sets, fc.infiniteStream(fc.nat()), (some, shuffle) => {
        const one = new SettlingCounts();
        for (const set of some) one.add(set);
        const other = new SettlingCounts();
        const shuffled = some.map((set) => ({ set, at: shuffle.next().value as number })).sort((a, b) => a.at - b.at);
        for (const { set } of shuffled) other.add(set);
        expect(other.steps()).toEqual(one.steps());
        expect(one.steps().at(-1)?.pointsSoFar).toBe(some.length);
        const fetched = one.steps().flatMap((step) => step.facts);
        expect(new Set(fetched).size).toBe(fetched.length);
      }),
    );
  });
});

function settledBy(row: Readonly<Record<string, FactState>>, options: Parameters<typeof screenRows>[2] = {}) {
  return screenRows(rulebook, [surveyOf([row])], options).points[0]?.settledBy;
}

describe("what settles a point", () => {
  it.each([
    ["nothing is open", GOOD_POINT, null],
    ["one fact is", { ...GOOD_POINT, flat_diameter: MISSING }, ["flat_diameter"]],
    ["several are", { ...GOOD_POINT, hole_depth: MISSING, supply_kind: MISSING }, ["hole_depth", "supply_kind"]],
    ["it fails anyway", { ...GOOD_POINT, hole_depth: MISSING, flat_diameter: known(9) }, null],
    [
      "it warns, and may yet fail",
      { ...GOOD_POINT, hole_depth: MISSING, surface_finish: known("painted") },
      ["hole_depth"],
    ],
    [
      "only some methods need the rest",
      { ...GOOD_POINT, mounting_method: MISSING, hole_depth: MISSING },
      ["mounting_method", "hole_depth", "cure_time"],
    ],
    ["no speed is known", { ...GOOD_POINT, nominal_speed: MISSING }, ["nominal_speed"]],
    [
      "a drive decides what else is asked",
      { ...GOOD_POINT, variable_speed: unknown("doubtful") },
      ["lowest_speed", "variable_speed"],
    ],
    [
      "a seat has several parts",
      { ...GOOD_POINT, surface_material: MISSING, surface_finish: MISSING },
      ["surface_material", "surface_finish"],
    ],
    [
      "a part of the seat settles it",
      { ...GOOD_POINT, surface_material: known("plastic"), surface_finish: MISSING },
      null,
    ],
  ] as const)("where %s", (_name, row, expected) => {
    const settled = settledBy(row);
    expect(settled === null || settled === undefined ? settled : new Set(settled)).toEqual(
      expected === null ? null : new Set(expected),
    );
  });

  it("is nothing where no limit is in force", () => {
    expect(settledBy(GOOD_POINT, { asOf: "2025-12-31" })).toBeNull();
    const { screening } = screenRows(rulebook, [surveyOf([GOOD_POINT])], { asOf: "2025-12-31" });
    expect(screening.summary()).toMatchObject({
      settling: [],
      openPoints: { toSettle: 0, failAnyway: 0, notByFacts: 1 },
    });
  });

  it("does settle it, whatever the facts turn out to be", () => {
    const row = { ...GOOD_POINT, mounting_method: MISSING, hole_depth: MISSING, variable_speed: unknown("doubtful") };
    const facts = settledBy(row) ?? [];
    const words: Readonly<Record<string, readonly (string | number)[]>> = {
      mounting_method: ["tapped-hole", "adhesive-pad", "magnet"],
      variable_speed: ["yes", "no"],
      hole_depth: [5, 40],
      cure_time: [1, 90],
      lowest_speed: [100, 1400],
    };
    expect([...facts].sort()).toEqual(Object.keys(words).sort());
    const known1 = facts.map((id) => fc.constantFrom(...(words[id] ?? [])).map((value) => [id, known(value)] as const));
    fc.assert(
      fc.property(fc.tuple(...known1), (found) => {
        const [point] = screenRows(rulebook, [surveyOf([{ ...row, ...Object.fromEntries(found) }])]).points;
        expect(point?.settledBy).toBeNull();
        expect(point?.findings.map(({ outcome }) => outcome)).not.toContain("undecided");
      }),
      { numRuns: 60 },
    );
  });

  it("is counted over all points, those that fail anyway apart", () => {
    const rows = [
      { ...GOOD_POINT, hole_depth: MISSING },
      { ...GOOD_POINT, hole_depth: MISSING, thread_depth: MISSING },
      { ...GOOD_POINT, hole_depth: MISSING, flat_diameter: known(9) },
      GOOD_POINT,
    ];
    const summaryOf = (some: readonly Readonly<Record<string, FactState>>[]) => {
      const { settling, openPoints } = screenRows(rulebook, [surveyOf(some)]).screening.summary();
      return { settling, openPoints };
    };
    expect(summaryOf(rows)).toEqual({
      settling: [
        { facts: ["hole_depth"], points: 1, pointsSoFar: 1 },
        { facts: ["thread_depth"], points: 1, pointsSoFar: 2 },
      ],
      openPoints: { toSettle: 2, failAnyway: 1, notByFacts: 0 },
    });
    expect(summaryOf([...rows].reverse())).toEqual(summaryOf(rows));
  });
});
