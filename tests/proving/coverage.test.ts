import { describe, expect, it } from "vitest";
import { coverageOf } from "../../src/proving/index.js";
import { bookOf, GOOD_CASES, ONE_OF_EACH, wallRule } from "./small-rule.js";

function notShown(cases: readonly string[]): readonly string[] {
  return coverageOf(bookOf(wallRule(cases)))
    .items.filter(({ isShown }) => !isShown)
    .map(({ kind, what }) => `${kind}: ${what}`);
}

describe("what cases show", () => {
  it("is everything that is asked, for a rule with good cases", () => {
    const report = coverageOf(bookOf(wallRule(GOOD_CASES)));
    expect(report.counts).toEqual([
      { kind: "outcome", asked: 4, shown: 4 },
      { kind: "limit", asked: 2, shown: 2 },
      { kind: "missing fact", asked: 2, shown: 2 },
      { kind: "date", asked: 2, shown: 2 },
      { kind: "citation", asked: 1, shown: 1 },
    ]);
  });

  it.each([
    ["not known", ["missing fact: wall thickness not known"]],
    ["method not known", ["missing fact: mounting method not known"]],
    ["before", ["date: on 2025-12-31"]],
    ["first day", ["date: on 2026-01-01"]],
  ])("lacks what the case alone shows: %s", (name, expected) => {
    expect(notShown(GOOD_CASES.filter((line) => !line.includes(`"${name}"`)))).toEqual(expected);
  });

  it("does not take a value far past the limit for one just past it", () => {
    const far = GOOD_CASES.map((line) => line.replace("wall_thickness: 2 mm", "wall_thickness: 1 mm"));
    expect(notShown(far)).toEqual(["limit: one step below the limit of below 3 mm"]);
  });

  it("asks for a case at the limit itself", () => {
    const thick = GOOD_CASES.map((line) => line.replace("wall_thickness: 3 mm", "wall_thickness: 30 mm"));
    expect(notShown(thick)).toEqual(["limit: at the limit of below 3 mm"]);
  });

  it("suggests cases that load and show what was lacking", () => {
    let cases: readonly string[] = ONE_OF_EACH;
    for (let round = 0; round < 20; round++) {
      const found = coverageOf(bookOf(wallRule(cases))).items.find((item) => !item.isShown && item.suggestion !== null);
      if (!found) break;
      cases = [...cases, found.suggestion?.yaml ?? ""];
      expect(notShown(cases)).not.toContain(`${found.kind}: ${found.what}`);
    }
    expect(notShown(cases)).toEqual([]);
  });
});
