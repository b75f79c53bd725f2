import { describe, expect, it } from "vitest";
import { alterBook } from "../../src/proving/index.js";
import { bookOf, GOOD_CASES, ONE_OF_EACH, wallRule } from "./small-rule.js";

function unnoticed(cases: readonly string[], more: Readonly<Record<string, string>> = {}): readonly string[] {
  return alterBook(bookOf(wallRule(cases, more))).unnoticed.map(({ alteration }) => alteration.what);
}

describe("altering a rule", () => {
  it("alters limit, operator, condition and dates, and good cases notice all of it", () => {
    const report = alterBook(bookOf(wallRule(GOOD_CASES)));
    expect(report.unnoticed).toEqual([]);
    expect(report.counts).toEqual([
      // One step down and up, the band left out, the failure made a warning.
      { kind: "limit", altered: 4, noticed: 4, alike: 0 },
      // atOrBelow, atOrAbove; notIn.
      { kind: "operator", altered: 3, noticed: 3, alike: 0 },
      // appliesWhen left out, each method left out of the two, each of the four others added.
      { kind: "condition", altered: 7, noticed: 7, alike: 0 },
      { kind: "date", altered: 2, noticed: 2, alike: 0 },
    ]);
  });

  const without = (name: string): readonly string[] => GOOD_CASES.filter((line) => !line.includes(`"${name}"`));
  it.each([
    ["clamp", ["appliesWhen: mounting_method in tapped-hole, welded-pad and clamp"]],
    ["welded, too thin", ["appliesWhen: mounting_method in tapped-hole, welded-pad without welded-pad"]],
    ["before", ["from 2026-01-01 becomes 2025-12-31"]],
    ["first day", ["from 2026-01-01 becomes 2026-01-02"]],
  ])("goes unnoticed where the case is missing: %s", (name, expected) => {
    expect(unnoticed(without(name))).toEqual(expected);
  });

  it("goes unnoticed where no case stands at the limit", () => {
    const far = GOOD_CASES.map((line) => line.replace("wall_thickness: 3 mm", "wall_thickness: 30 mm"));
    expect(unnoticed(far)).toEqual(["fail: below becomes atOrBelow", "fail: below 3 becomes 4"]);
  });

  it("suggests a case that can be pasted and notices it", () => {
    let cases: readonly string[] = ONE_OF_EACH;
    for (let round = 0; round < 30; round++) {
      const [first] = alterBook(bookOf(wallRule(cases))).unnoticed;
      if (!first) break;
      expect(first.suggestion, first.alteration.what).not.toBeNull();
      const before = unnoticed(cases);
      cases = [...cases, first.suggestion?.yaml ?? ""];
      expect(unnoticed(cases)).not.toContain(first.alteration.what);
      expect(unnoticed(cases).length).toBeLessThan(before.length);
    }
    expect(unnoticed(cases)).toEqual([]);
  });

  it("counts apart what changes no outcome, as far as was tried", () => {
    // Loading refuses a limit that another one covers; that one condition implies another is beyond it.
    const thin = "{ when: { fact: wall_thickness, operator: lessThan, value: 2 mm } }";
    const both = `[{ from: 2026-01-01, until: null, fail: [{ below: 3 mm }, ${thin}], cites: [rings] }]`;
    const report = alterBook(bookOf(wallRule(GOOD_CASES, { limits: both })));
    const alike = report.unnoticed.filter(({ suggestion }) => suggestion === null);
    expect(alike.map(({ alteration }) => alteration.what)).toContain("fail: when is left out");
    expect(report.unnoticed).toEqual(alike);
    expect(report.counts.reduce((sum, count) => sum + count.alike, 0)).toBe(alike.length);
  });

  it("alters named conditions, over all rules that use them", () => {
    const conditions = {
      "conditions/drilled.yaml":
        'id: drilled\ntitle: "a hole is drilled"\nwhen: { fact: mounting_method, operator: equal, value: tapped-hole }\n',
    };
    const rule = wallRule(ONE_OF_EACH, { appliesWhen: "{ condition: drilled }" });
    const report = alterBook(bookOf(rule, conditions));
    const told = report.unnoticed.map(({ alteration }) => alteration.what);
    expect(told).not.toContain('condition "drilled": mounting_method equal tapped-hole becomes notEqual');
    expect(report.counts.find(({ kind }) => kind === "condition")?.altered).toBe(7);
  });
});
