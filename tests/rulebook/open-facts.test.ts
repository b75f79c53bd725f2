import { describe, expect, it } from "vitest";
import { judge, limit } from "./made-rule.js";

describe("what is open", () => {
  const needs =
    "appliesWhen: { any: [{ fact: wetting, operator: equal, value: dry }, { fact: load_steady, operator: equal, value: true }] }\njudges: hole_depth\n";

  it("leaves out what a decided part settles", () => {
    const lines = needs + limit("fail: { below: 15 mm }");
    expect(judge(lines, { wetting: "dry", hole_depth: 20 }).open).toEqual([]);
    expect(judge(lines, { wetting: "jets", hole_depth: 20 })).toMatchObject({
      outcome: "undecided",
      atBest: "pass",
      open: [{ fact: "load_steady", reason: "missing" }],
    });
    expect(judge(lines, { wetting: { unknown: "unreadable" }, hole_depth: 10 })).toMatchObject({
      outcome: "undecided",
      atBest: "not-applicable",
      open: [
        { fact: "wetting", reason: "unreadable" },
        { fact: "load_steady", reason: "missing" },
      ],
    });
    expect(judge(lines, { wetting: "jets", load_steady: false })).toMatchObject({
      outcome: "not-applicable",
      open: [],
      limit: null,
    });
  });

  it("names both facts of a comparison where neither is known, and only the coarse ones where both are", () => {
    const lines = `judges: hole_depth\n${limit("fail: { below: { fact: thread_depth } }")}`;
    expect(judge(lines, {}).open).toEqual([
      { fact: "hole_depth", reason: "missing" },
      { fact: "thread_depth", reason: "missing" },
    ]);
    expect(judge(lines, { hole_depth: { lowest: 9, highest: 11 }, thread_depth: 10 }).open).toEqual([
      { fact: "hole_depth", reason: "too-close" },
    ]);
    expect(
      judge(lines, { hole_depth: { lowest: 9, highest: 11 }, thread_depth: { unknown: "conflicting" } }).open,
    ).toEqual([{ fact: "thread_depth", reason: "conflicting" }]);
    expect(
      judge(lines, {
        hole_depth: { lowest: 9, highest: 11 },
        thread_depth: { lowest: 10, highest: Number.POSITIVE_INFINITY },
      }).open,
    ).toEqual([{ fact: "thread_depth", reason: "missing" }]);
  });

  it("is nothing where the outcome is decided all the same", () => {
    const lines = `judges: hole_depth\n${limit("fail: [{ below: 5 mm }, { when: { fact: wetting, operator: equal, value: jets } }]")}`;
    expect(judge(lines, { hole_depth: 4 })).toMatchObject({
      outcome: "fail",
      open: [],
      limit: { is: "below", value: 5 },
    });
    expect(judge(lines, { wetting: "jets" })).toMatchObject({
      outcome: "fail",
      open: [],
      limit: { is: "when", value: null, unit: null },
      margin: null,
    });
  });

  it("never takes a missing value for its opposite", () => {
    for (const condition of [
      "{ fact: wetting, operator: notEqual, value: jets }",
      "{ fact: wetting, operator: notIn, value: [jets] }",
      "{ not: { fact: wetting, operator: equal, value: jets } }",
    ]) {
      expect(judge(limit(`fail: { when: ${condition} }`), {}).outcome).toBe("undecided");
    }
  });

  it("counts a warning that may still come", () => {
    const lines = `judges: hole_depth\n${limit("fail: { below: 5 mm }, warn: { when: { fact: wetting, operator: equal, value: jets } }")}`;
    expect(judge(lines, { hole_depth: 9 })).toMatchObject({
      outcome: "undecided",
      atBest: "pass",
      open: [{ fact: "wetting" }],
    });
    expect(judge(lines, { hole_depth: { lowest: 4, highest: 6 }, wetting: "jets" })).toMatchObject({
      outcome: "undecided",
      atBest: "warn",
      open: [{ fact: "hole_depth", reason: "too-close" }],
    });
  });
});
