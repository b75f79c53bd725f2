import { describe, expect, it } from "vitest";
import { STAGES, type Stage } from "../../src/base/index.js";
import { type Screening, screen } from "../../src/screening/index.js";
import { readTestSurvey, shippedRulebook } from "../tools/shipped.js";
import { exercisedBy } from "./exercised-rules.mjs";

async function screenFull(stage: Stage): Promise<Screening> {
  const screening = screen({
    program: { name: "spotface", version: "test" },
    rulebook: await shippedRulebook(),
    surveys: [await readTestSurvey("samples/survey-full.xlsx")],
    skipped: [],
    site: null,
    options: { set: "full", stage, asOf: "2026-11-25", siteName: "Vellamoor starch works", allFindings: false },
  });
  for (const _ of screening.points());
  return screening;
}

describe.each(STAGES)("the survey of 200 points, stage %s", (stage) => {
  it("lets every rule give each outcome that it can give (npm run exercised shows how often)", async () => {
    const screening = await screenFull(stage);
    const exercised = exercisedBy(screening.head, screening.summary());
    const lacking = exercised.filter((one) => one.lacking.length > 0);
    expect(lacking.map((one) => `${one.rule} lacks ${one.lacking.join(", ")}`)).toEqual([]);
    const fullRules = (await shippedRulebook()).rules.filter((rule) => rule.stages.includes(stage));
    expect(exercised.map((one) => one.rule)).toEqual(expect.arrayContaining(fullRules.map((rule) => rule.id)));
  });

  it("asks every rule, and holds no cell that cannot be read", async () => {
    const screening = await screenFull(stage);
    const { surveys } = screening.head;
    expect(screening.summary().points).toBe(200);
    // What a sensor model does not state is no matter of the survey.
    expect(surveys.flatMap(({ notAsked }) => notAsked).filter(({ model }) => model === null)).toEqual([]);
    const codes = new Set(surveys.flatMap(({ problems }) => problems.map(({ code }) => code)));
    expect([...codes].sort()).toEqual(["ditto", "dropped-remark", "no-group", "row-skipped"]);
  });
});

describe("what counts as exercised", () => {
  it("misses an outcome that a band of the rule allows and no point gave", async () => {
    const screening = await screenFull("proposed");
    const summary = screening.summary();
    const byRule = summary.byRule.map((counts) =>
      counts.rule === "load-zone" ? { ...counts, warn: 0, undecided: 0 } : counts,
    );
    const lacking = exercisedBy(screening.head, { ...summary, byRule }).filter((one) => one.lacking.length > 0);
    expect(lacking).toMatchObject([{ rule: "load-zone", lacking: ["warn", "undecided"] }]);
  });

  it("misses everything of a rule that was not asked", async () => {
    const screening = await screenFull("proposed");
    const summary = screening.summary();
    const byRule = summary.byRule.filter(({ rule }) => rule !== "hot-work");
    const lacking = exercisedBy(screening.head, { ...summary, byRule }).filter((one) => one.lacking.length > 0);
    expect(lacking).toMatchObject([{ rule: "hot-work", lacking: ["pass", "warn", "fail", "undecided"] }]);
  });
});
