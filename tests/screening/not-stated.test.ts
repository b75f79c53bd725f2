import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import type { NotAsked } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();
/** Every fact that the two rules looked at here need of a survey. */
const WEIGHED = { ...GOOD_POINT, moving_mass: known(20), mount_mass: known(0) };
const BASELINE = { ...WEIGHED, sensor_model: known("baseline") };
const COMPACT = { ...WEIGHED, sensor_model: known("example-compact") };

interface Asked {
  readonly notAsked: readonly Pick<NotAsked, "model" | "facts" | "text">[];
  /** What the rule said of each row; null where it said nothing. */
  readonly outcomes: readonly (string | null)[];
}

function ask(rule: string, rows: readonly Readonly<Record<string, FactState>>[]): Asked {
  const { screening, points } = screenRows(rulebook, [surveyOf(rows)], { set: "full", allFindings: true });
  const notAsked = screening.head.surveys.flatMap((survey) => survey.notAsked.filter((one) => one.rule === rule));
  const outcomes = points.map(({ findings }) => findings.find((one) => one.rule === rule)?.outcome ?? null);
  return { notAsked: notAsked.map(({ model, facts, text }) => ({ model, facts, text })), outcomes };
}

const UNSTATED = {
  model: "baseline",
  facts: ["model.mass"],
  text: 'not asked of points with the model "baseline": it does not state mass of the model',
};

describe("a rule that needs what a sensor model does not state", () => {
  it("is silent on the points of that model alone, and says so once", () => {
    const { notAsked, outcomes } = ask("moving-mass", [BASELINE, COMPACT, BASELINE]);
    expect(outcomes).toEqual([null, "pass", null]);
    expect(notAsked).toEqual([UNSTATED]);
  });

  it("is silent where no model is named and the baseline holds", () => {
    const { notAsked, outcomes } = ask("moving-mass", [WEIGHED]);
    expect([outcomes, notAsked]).toEqual([[null], [UNSTATED]]);
  });

  it("speaks where the model is not known: nobody knows what that would state", () => {
    const rows = [BASELINE, COMPACT, { ...WEIGHED, sensor_model: unknown("unreadable") }];
    expect(ask("moving-mass", rows).outcomes).toEqual([null, "pass", "undecided"]);
  });

  it("speaks on all points of a model as soon as one of them is decided", () => {
    const rows = [
      { ...BASELINE, highest_frequency: known(5000), mounted_resonance: known(30_000) },
      { ...BASELINE, highest_frequency: known(5000), mounted_resonance: unknown("missing") },
    ];
    const { notAsked, outcomes } = ask("over-reading", rows);
    expect([outcomes, notAsked]).toEqual([["pass", "undecided"], []]);
  });

  it("is not asked of the whole survey where a column is lacking, too, and says only that", () => {
    const rows = [
      { ...GOOD_POINT, sensor_model: known("baseline") },
      { ...GOOD_POINT, sensor_model: known("example-compact") },
    ];
    const { notAsked, outcomes } = ask("moving-mass", rows);
    expect(outcomes).toEqual([null, null]);
    expect(notAsked).toMatchObject([{ model: null, facts: ["mount_mass", "moving_mass"] }]);
  });
});
