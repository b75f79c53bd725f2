import { describe, expect, it } from "vitest";
import { type Interval, single } from "../../src/base/index.js";
import type { FactState, KnownFact, UnknownReason } from "../../src/facts/index.js";
import {
  compileRule,
  engineRules,
  type Judgement,
  loadRulebook,
  modelFactsOn,
  type Rule,
  type Rulebook,
} from "../../src/rulebook/index.js";
import { smallFiles } from "./small-book.js";

/** A rule from some of its lines; the rest is filled in. */
function bookWith(lines: string, changed: Readonly<Record<string, string>> = {}): { rule: Rule; book: Rulebook } {
  const text = `id: made
title: "made"
sets: [core]
stages: [proposed, installed]
${lines}
citations: { c: { basis: from-memory, says: "x" } }
messages: { ${/^ *fail:/m.test(lines) || lines.includes(", fail:") ? 'fail: "f", ' : ""}${lines.includes("warn:") ? 'warn: "w"' : ""} }
remedy: { text: "x", change: [] }
cases: [{ name: "none", given: { asOf: 2026-06-01 }, expect: undecided }]
`;
  const loading = loadRulebook(smallFiles({ "made/made.yaml": text, ...changed }));
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  const rule = loading.rulebook.rules.find(({ id }) => id === "made");
  if (!rule) throw new Error("no rule");
  return { rule, book: loading.rulebook };
}

function limit(bands: string): string {
  return `limits: [{ from: 2026-01-01, until: null, reviewBy: 2026-09-01, ${bands}, cites: [c] }]`;
}

type Given = Readonly<Record<string, number | string | boolean | Interval | { unknown: UnknownReason }>>;

function stateOf(value: Given[string]): FactState {
  const origin = { kind: "none" } as const;
  if (typeof value === "object" && "unknown" in value) return { known: false, reason: value.unknown, origin };
  const kept: KnownFact["value"] = typeof value === "number" ? single(value) : value;
  return { known: true, value: kept, origin };
}

function judge(
  lines: string,
  given: Given,
  options: { asOf?: string; files?: Readonly<Record<string, string>> } = {},
): Judgement {
  const { rule, book } = bookWith(lines, options.files);
  const asOf = options.asOf ?? "2026-06-01";
  const model = book.models.get("baseline");
  const facts = new Map([
    ...(model ? modelFactsOn(model, asOf) : []),
    ...Object.entries(given).map(([id, v]) => [id, stateOf(v)] as const),
  ]);
  const judgement = compileRule(rule, book, { stage: "proposed", asOf })?.judge(facts);
  if (!judgement) throw new Error("the rule is for the stage");
  return judgement;
}

describe("a scaled or shifted bound", () => {
  it("is converted to the unit of the judged fact, then scaled, then shifted", () => {
    const lines = `judges: paint_thickness\n${limit("fail: { above: { fact: thread_depth, times: 0.5, plus: 100 µm } }")}`;
    expect(judge(lines, { thread_depth: 2, paint_thickness: 1100 })).toMatchObject({
      outcome: "pass",
      limit: { is: "above", value: 1100, unit: "µm", fact: "thread_depth" },
      margin: { value: 0, fraction: 0 },
    });
    expect(judge(lines, { thread_depth: 2, paint_thickness: 1100.1 })).toMatchObject({
      outcome: "fail",
      margin: { value: -0.1, fraction: -0.0000909090909091 },
    });
  });

  it("is rounded to 12 digits, so that 24 V × 1.2 is 28.8 V", () => {
    const lines = `judges: voltage_at_sensor\n${limit("fail: { above: { fact: supply_voltage, times: 1.2 } }")}`;
    expect(judge(lines, { supply_voltage: 24, voltage_at_sensor: 28.8 }).outcome).toBe("pass");
  });

  it("shifts a temperature by a difference, in K or °F", () => {
    for (const shift of ["-10 K", "-18 °F"]) {
      const lines = `judges: surface_temperature\n${limit(`fail: { above: { fact: ambient_max, plus: "${shift}" } }`)}`;
      expect(judge(lines, { ambient_max: 50, surface_temperature: 40 })).toMatchObject({
        outcome: "pass",
        limit: { value: 40, unit: "°C" },
        margin: { value: 0, fraction: null },
      });
    }
  });

  it("turns an interval round when scaled below zero", () => {
    const lines = `judges: surface_temperature\n${limit("fail: { above: 60 °C }")}`;
    expect(judge(lines, { surface_temperature: { lowest: 50, highest: 59 } }).margin).toEqual({
      value: 1,
      fraction: null,
    });
    const scaled = `judges: hole_depth\n${limit("fail: { below: { fact: thread_depth, times: -1, plus: 20 mm } }")}`;
    const facts = { thread_depth: { lowest: 5, highest: 8 } };
    expect(judge(scaled, { ...facts, hole_depth: 15 })).toMatchObject({ outcome: "pass", limit: { value: 15 } });
    expect(judge(scaled, { ...facts, hole_depth: 13 })).toMatchObject({
      outcome: "undecided",
      open: [{ fact: "thread_depth", reason: "too-close" }],
    });
    expect(judge(scaled, { ...facts, hole_depth: 11.9 }).outcome).toBe("fail");
  });

  it("becomes a fact of its own for the reference engine", () => {
    const lines = `judges: paint_thickness\n${limit("fail: [{ above: { fact: thread_depth } }, { above: { fact: surface_radius, times: 2 } }]")}`;
    const { rule, book } = bookWith(lines);
    const rules = engineRules(rule, book, { stage: "proposed", asOf: "2026-06-01" });
    expect(rules?.fail).toEqual({
      all: [
        {
          any: [
            { fact: "paint_thickness", operator: "greaterThan", value: { fact: "bound:made:1" } },
            { fact: "paint_thickness", operator: "greaterThan", value: { fact: "bound:made:2" } },
          ],
        },
      ],
    });
    const [stage, first, second] = rules?.computed ?? [];
    expect(stage?.compute([])).toBe("proposed");
    expect([first?.needs, first?.compute([9])]).toEqual([["thread_depth"], 9000]);
    expect([second?.needs, second?.compute([9])]).toEqual([["surface_radius"], 18_000]);
  });
});

describe("two facts in a condition", () => {
  it("are compared in one unit", () => {
    const lines = limit(
      "fail: { when: { fact: paint_thickness, operator: greaterThanInclusive, value: { fact: thread_depth } } }",
    );
    expect(judge(lines, { paint_thickness: 9000, thread_depth: 9 }).outcome).toBe("fail");
    expect(judge(lines, { paint_thickness: 8999, thread_depth: 9 }).outcome).toBe("pass");
  });
});

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
