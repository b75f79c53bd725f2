import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { anyOf, type Outcome, type Truth } from "../../src/base/index.js";
import { openRulebook } from "../../src/cli/open-rulebook.js";
import { nodeInflating } from "../../src/disk/index.js";
import { surveyReader } from "../../src/records/index.js";
import type { ConditionTrace, RuleTrace } from "../../src/rulebook/index.js";
import { type FactWhy, type ScreeningInput, screen, whyPoints } from "../../src/screening/index.js";
import { readWorkbook } from "../../src/workbook/index.js";

async function sample(set: string): Promise<ScreeningInput> {
  const loading = await openRulebook(null);
  const reading = await readWorkbook(new Uint8Array(readFileSync("samples/survey.xlsx")), nodeInflating);
  if (!loading.ok || !reading.ok) throw new Error("nothing to screen");
  const survey = surveyReader(loading.rulebook.words, null).read(reading.workbook, "survey.xlsx", "0");
  if (!survey.ok) throw new Error(survey.text);
  return {
    program: { name: "spotface", version: "test" },
    rulebook: loading.rulebook,
    surveys: [survey.survey],
    skipped: [],
    site: null,
    options: { set, stage: "proposed", asOf: "2026-06-01", siteName: "Vellamoor", allFindings: true },
  };
}

/** The outcome as the steps of a trace say it, by the definition of outcomes. */
function outcomeOf({ applies, entry, bands }: RuleTrace): Outcome {
  if (applies?.truth === false) return "not-applicable";
  if (entry === null) return "no-limit-in-force";
  const side = (outcome: "fail" | "warn"): Truth =>
    anyOf(bands.filter((band) => band.outcome === outcome).map(({ truth }) => truth));
  if (applies?.truth === null) return "undecided";
  if (side("fail") === true) return "fail";
  if (side("fail") === null || side("warn") === null) return "undecided";
  return side("warn") ? "warn" : "pass";
}

function eachCondition(trace: ConditionTrace, see: (trace: ConditionTrace) => void): void {
  see(trace);
  for (const part of trace.parts) eachCondition(part, see);
}

describe("the whole way to a verdict", () => {
  it.each(["core", "full"])("comes to what the screening says, for every point and rule of the set %s", async (set) => {
    const input = await sample(set);
    const points = [...screen(input).points()];
    const whys = [...whyPoints(input, { isMeant: () => true, rules: null })];
    expect(whys.map(({ point }) => point)).toEqual(points);
    for (const { rules } of whys) {
      for (const { trace, finding, rule } of rules) expect(outcomeOf(trace), rule).toBe(finding.outcome);
    }
  });

  it("judges each part of a condition as its parts demand", async () => {
    const input = await sample("full");
    let seen = 0;
    for (const { rules } of whyPoints(input, { isMeant: () => true, rules: null })) {
      for (const { trace } of rules) {
        for (const root of [trace.applies, ...trace.bands.map(({ condition }) => condition)]) {
          if (!root) continue;
          eachCondition(root, ({ condition, truth, parts }) => {
            const truths = parts.map((part) => part.truth);
            if (condition.kind === "any") expect(truth).toBe(anyOf(truths));
            if (condition.kind === "not") expect(truth).toBe(truths[0] === null ? null : !truths[0]);
            if (condition.kind === "all") seen += 1;
          });
        }
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  it("follows derived facts down to what is no longer derived", async () => {
    const input = await sample("full");
    const roots = (fact: FactWhy): readonly string[] =>
      fact.under.length === 0 ? [fact.shown.fact] : fact.under.flatMap(roots);
    const [first] = whyPoints(input, { isMeant: () => true, rules: new Set(["flat-margin", "min-speed"]) });
    const speed = first?.rules.find(({ rule }) => rule === "min-speed");
    const judged = speed?.facts.find(({ shown }) => shown.fact === "lowest_running_speed");
    expect(judged && roots(judged)).toEqual(["lowest_speed", "nominal_speed", "variable_speed"]);
  });

  it("tells only of the points and rules that are meant, and marks what was not asked", async () => {
    const input = await sample("full");
    const whys = [...whyPoints(input, { isMeant: ({ row }) => row === 11, rules: new Set(["bend-radius"]) })];
    expect(whys.length).toBeGreaterThan(0);
    for (const { rules } of whys) {
      expect(rules.map(({ rule, notAsked }) => [rule, notAsked?.facts])).toEqual([
        ["bend-radius", ["bend_radius", "cable_diameter"]],
      ]);
    }
  });
});
