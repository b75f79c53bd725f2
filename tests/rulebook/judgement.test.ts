import { describe, expect, it } from "vitest";
import { compileRule, engineRules } from "../../src/rulebook/index.js";
import { bookWith, judge, limit, stateOf } from "./made-rule.js";

describe("limit and margin", () => {
  const both = `judges: hole_depth\n${limit("fail: { below: 10 mm }, warn: { below: 15 mm }")}`;

  it("of a warning are the band that warns and the distance to the failing one", () => {
    expect(judge(both, { hole_depth: 12 })).toMatchObject({
      outcome: "warn",
      limit: { value: 15 },
      margin: { value: 2, fraction: 0.2 },
    });
  });

  it("of a pass are those of the nearest failing band", () => {
    expect(judge(both, { hole_depth: 20 })).toMatchObject({
      outcome: "pass",
      limit: { value: 10 },
      margin: { value: 10, fraction: 1 },
    });
    const outside = `judges: hole_depth\n${limit("fail: { outside: [10 mm, 30 mm] }")}`;
    expect(judge(outside, { hole_depth: 28 })).toMatchObject({
      limit: { is: "outside", value: [10, 30], fact: null },
      margin: { value: 2, fraction: 0.0666666666667 },
    });
  });

  it("are measured from the worst end of the interval, and unknown for an endless one", () => {
    expect(judge(both, { hole_depth: { lowest: 18, highest: 30 } }).margin).toEqual({ value: 8, fraction: 0.8 });
    expect(judge(both, { hole_depth: { lowest: 8, highest: 12 } })).toMatchObject({
      outcome: "undecided",
      margin: { value: -2, fraction: -0.2 },
    });
    expect(judge(both, { hole_depth: { lowest: Number.NEGATIVE_INFINITY, highest: 9 } })).toMatchObject({
      outcome: "fail",
      margin: null,
    });
    expect(judge(both, {})).toMatchObject({ outcome: "undecided", limit: { value: 10 }, margin: null });
  });

  it("have no fraction at a limit of 0", () => {
    expect(judge(`judges: paint_thickness\n${limit("fail: { above: 0 µm }")}`, { paint_thickness: 5 }).margin).toEqual({
      value: -5,
      fraction: null,
    });
  });

  it("at a limit that itself fails are 0", () => {
    const lines = `judges: nominal_speed\n${limit("fail: { atOrBelow: 10 r/s }")}`;
    expect(judge(lines, { nominal_speed: 600 })).toMatchObject({
      outcome: "fail",
      limit: { value: 600, unit: "r/min" },
      margin: { value: 0, fraction: 0 },
    });
  });

  it("of choices name them", () => {
    const lines = `judges: wetting\n${limit("fail: { noneOf: [dry, splash] }")}`;
    expect(judge(lines, { wetting: "jets" })).toMatchObject({
      outcome: "fail",
      limit: { is: "noneOf", value: ["dry", "splash"], unit: null, fact: null, from: "2026-01-01", cites: ["c"] },
      margin: null,
    });
    expect(judge(lines, { wetting: "dry" })).toMatchObject({ outcome: "pass", limit: { is: "noneOf" } });
  });

  it("point to the line of the rule, or of the model that the bound is taken from", () => {
    const lines = `judges: thread_depth\n${limit("fail: { below: { fact: model.thread_depth_min } }")}`;
    expect(judge(lines, { thread_depth: 9 }).limit).toMatchObject({
      value: 9,
      fact: "model.thread_depth_min",
      origin: { file: "models/baseline.yaml", line: 6 },
    });
    expect(judge(lines, { thread_depth: 9 }, { asOf: "2027-03-01" })).toMatchObject({
      outcome: "fail",
      limit: { value: 10, origin: { line: 7 } },
    });
    const unknown = judge(lines, { thread_depth: 9, "model.thread_depth_min": { unknown: "missing" } });
    expect(unknown).toMatchObject({
      outcome: "undecided",
      limit: { value: null, origin: { file: "made/made.yaml", line: 6 } },
    });
  });
});

describe("days and stages", () => {
  const lines = `appliesWhen: { fact: wetting, operator: equal, value: dry }\njudges: { proposed: target_torque, installed: applied_torque }\n${limit("fail: { above: 10 N·m }")}`;

  it("have no limit before the first day, for a point to which the rule applies or may", () => {
    const asOf = "2025-12-31";
    expect(judge(lines, { wetting: "dry" }, { asOf })).toEqual({
      outcome: "no-limit-in-force",
      atBest: null,
      limit: null,
      margin: null,
      open: [],
    });
    expect(judge(lines, {}, { asOf })).toMatchObject({
      outcome: "no-limit-in-force",
      atBest: "not-applicable",
      open: [{ fact: "wetting" }],
    });
    expect(judge(lines, { wetting: "jets" }, { asOf }).outcome).toBe("not-applicable");
  });

  it("say when the review is overdue, from the day after on", () => {
    const { rule, book } = bookWith(lines);
    const overdue = (asOf: string) => compileRule(rule, book, { stage: "proposed", asOf })?.reviewOverdue;
    expect([overdue("2025-12-31"), overdue("2026-09-01"), overdue("2026-09-02")]).toEqual([false, false, true]);
  });

  it("judge the fact of the stage, and nothing at a stage that the rule is not for", () => {
    const { rule, book } = bookWith(lines);
    const compiled = compileRule(rule, book, { stage: "installed", asOf: "2026-06-01" });
    expect(compiled).toMatchObject({
      judged: "applied_torque",
      factsNamed: ["applied_torque", "wetting"],
      messages: { fail: "f", warn: null },
    });
    const slow = book.rules.find(({ id }) => id === "slow");
    if (!slow) throw new Error("no rule");
    expect(compileRule(slow, book, { stage: "proposed", asOf: "2026-06-01" })).toBeNull();
    expect(engineRules(slow, book, { stage: "proposed", asOf: "2026-06-01" })).toBeNull();
  });

  it("name the facts of named conditions, and know the stage without being told", () => {
    const named = `appliesWhen: { all: [{ fact: stage, operator: equal, value: proposed }, { not: { condition: outdoors } }] }\njudges: hole_depth\n${limit("fail: { below: { fact: thread_depth } }")}`;
    const { rule, book } = bookWith(named);
    expect(compileRule(rule, book, { stage: "proposed", asOf: "2026-06-01" })?.factsNamed).toEqual([
      "hole_depth",
      "stage",
      "wetting",
      "thread_depth",
    ]);
    const facts = new Map([["wetting", stateOf("dry")]]);
    const at = (stage: "proposed" | "installed") =>
      compileRule(rule, book, { stage, asOf: "2026-06-01" })?.judge(facts).outcome;
    expect([at("proposed"), at("installed")]).toEqual(["undecided", "not-applicable"]);
  });
});

describe("a fact of the wrong kind", () => {
  it("is a broken promise of whoever filled it in", () => {
    expect(() => judge(`judges: hole_depth\n${limit("fail: { below: 5 mm }")}`, { hole_depth: "deep" })).toThrow(
      TypeError,
    );
    expect(() =>
      judge(limit("fail: { when: { fact: wetting, operator: equal, value: dry } }"), { wetting: 5 }),
    ).toThrow(TypeError);
  });
});
