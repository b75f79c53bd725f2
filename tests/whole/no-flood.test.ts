import { describe, expect, it } from "vitest";
import type { Verdict } from "../../src/base/index.js";
import { terminalReport } from "../../src/outputs/index.js";
import type { Survey } from "../../src/records/index.js";
import { type Finding, type PointResult, type Screening, screen } from "../../src/screening/index.js";
import { readTestSurvey, shippedRulebook } from "../tools/shipped.js";

/** Surveys with the columns that the nine core rules need, and hardly any more. */
const SURVEYS = ["quillmoor.xlsx", "dunkelforst.xlsx", "tallgrass.csv"];
/** Listed findings that the whole book may add to a row, on average, where most of it cannot be asked. */
const MOST_ADDED_A_ROW = 1.5;
const RANK: Readonly<Record<Verdict, number>> = { pass: 0, warn: 1, fail: 2 };

interface Run {
  readonly survey: Survey;
  readonly screening: Screening;
  readonly points: readonly PointResult[];
}

async function screenWith(file: string, set: string, allFindings = true): Promise<Run> {
  const survey = await readTestSurvey(`tests/data/surveys/${file}`);
  const screening = screen({
    program: { name: "spotface", version: "test" },
    rulebook: await shippedRulebook(),
    surveys: [survey],
    skipped: [],
    site: null,
    options: { set, stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings },
  });
  return { survey, screening, points: [...screening.points()] };
}

async function coreRules(): Promise<ReadonlySet<string>> {
  return new Set((await shippedRulebook()).rules.filter(({ sets }) => sets.includes("core")).map(({ id }) => id));
}

function notAskedOf({
  screening,
}: Run): readonly { readonly rule: string; readonly model: string | null; readonly facts: readonly string[] }[] {
  return screening.head.surveys.flatMap(({ notAsked }) => notAsked);
}

describe.each(SURVEYS)("%s, screened with the whole book", (file) => {
  it("gives the nine core outcomes and their reasons as the core alone gives them", async () => {
    const core = await coreRules();
    // What a remedy would break is told of all the rules that are asked.
    const ofCore = ({ findings }: PointResult): readonly Omit<Finding, "remedy" | "changes">[] =>
      findings.filter(({ rule }) => core.has(rule)).map(({ remedy: _, changes: __, ...reasons }) => reasons);
    const [alone, whole] = [await screenWith(file, "core"), await screenWith(file, "full")];
    expect(alone.points.length).toBeGreaterThan(0);
    expect(whole.points.map(ofCore)).toEqual(alone.points.map(ofCore));
  });

  it("gives no better verdict", async () => {
    const [alone, whole] = [await screenWith(file, "core"), await screenWith(file, "full")];
    const better = whole.points.filter(({ verdict }, i) => {
      const before = alone.points[i]?.verdict;
      return before === undefined || RANK[verdict] < RANK[before];
    });
    expect(better.map(({ point }) => point)).toEqual([]);
  });

  it("leaves no row undecided for a fact that has no column, except where the core misses that fact there, too", async () => {
    const core = await coreRules();
    const { survey, points } = await screenWith(file, "full");
    const open = points.flatMap(({ point, findings }) => {
      const missed = findings.flatMap(({ rule, missing }) => missing.map(({ fact }) => ({ rule, fact })));
      const byCore = missed.filter(({ rule }) => core.has(rule)).map(({ fact }) => fact);
      const more = missed.filter(({ fact }) => !survey.factsAsked.has(fact) && !byCore.includes(fact));
      return more.map(({ rule, fact }) => `${point}: ${rule} lacks ${fact}`);
    });
    expect(open).toEqual([]);
  });

  it("names each rule that was not asked once, with columns that the survey does not have, and on no row", async () => {
    const run = await screenWith(file, "full");
    const notAsked = notAskedOf(run);
    const silent = notAsked.map(({ rule }) => rule);
    expect(new Set(silent).size).toBe(silent.length);
    for (const { rule, facts } of notAsked) {
      expect(facts.length, rule).toBeGreaterThan(0);
      expect(facts.filter((fact) => run.survey.factsAsked.has(fact))).toEqual([]);
    }
    const rules = run.screening.head.rules.filter(({ sets }) => sets.includes("full")).map(({ id }) => id);
    const speaking = rules.filter((id) => !silent.includes(id)).sort();
    for (const { findings } of run.points) expect(findings.map(({ rule }) => rule).sort()).toEqual(speaking);
  });

  it("adds few findings to the rows, and says what was not asked once in the report", async () => {
    const [alone, whole] = [await screenWith(file, "core", false), await screenWith(file, "full", false)];
    const listed = ({ points }: Run): number => points.reduce((sum, { findings }) => sum + findings.length, 0);
    expect((listed(whole) - listed(alone)) / whole.points.length).toBeLessThanOrEqual(MOST_ADDED_A_ROW);
    const report = terminalReport(whole.screening.head, whole.screening.summary());
    for (const { rule, model } of notAskedOf(whole)) {
      const said = `- ${rule}${model === null ? "" : `, ${model}`}:`;
      expect(report.split(said).length - 1, rule).toBe(1);
    }
  });
});
