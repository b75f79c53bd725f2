import { type Counted, type LimitMoved, type MoveAsked, moveLimit, placesIn } from "../../src/moving/index.js";
import type { Rulebook } from "../../src/rulebook/index.js";
import { type ScreeningInput, type ScreeningOptions, screen } from "../../src/screening/index.js";
import { readTestSurvey } from "../tools/shipped.js";

export const SURVEYS = [
  "samples/survey.xlsx",
  "tests/data/surveys/dunkelforst.xlsx",
  "tests/data/surveys/quillmoor.xlsx",
  "tests/data/surveys/tallgrass.csv",
] as const;

/** What a run over the test surveys is made from. */
export async function inputOf(
  rulebook: Rulebook,
  options: Partial<ScreeningOptions> = {},
  surveys: ScreeningInput["surveys"] | null = null,
): Promise<ScreeningInput> {
  return {
    program: { name: "spotface", version: "test" },
    rulebook,
    surveys: surveys ?? (await Promise.all(SURVEYS.map((path) => readTestSurvey(path)))),
    skipped: [],
    site: null,
    options: { set: "core", stage: "proposed", asOf: "2026-06-01", siteName: null, allFindings: false, ...options },
  };
}

/** Moves a number of a rule by its name; the first one where none is named. */
export function moveIn(
  input: ScreeningInput,
  id: string,
  more: Partial<Omit<MoveAsked, "rule" | "place">> & { readonly bound?: string } = {},
): LimitMoved | string {
  const { bound, ...asked } = more;
  const rule = input.rulebook.rules.find((one) => one.id === id);
  const places = rule && placesIn(rule, input.options)?.places;
  const place = places?.find(({ name }) => bound === undefined || name === bound);
  if (!rule || !place) throw new Error(`${id} has no number "${bound}": ${places?.map(({ name }) => name).join(", ")}`);
  return moveLimit(input, { rule, place, model: null, from: null, to: null, step: null, ...asked });
}

/** The same where it must work. */
export function movedIn(...args: Parameters<typeof moveIn>): LimitMoved {
  const moved = moveIn(...args);
  if (typeof moved === "string") throw new Error(moved);
  return moved;
}

/** What screening all points with a rulebook counts for a rule, and the verdicts. */
export function screenedCounts(input: ScreeningInput, rulebook: Rulebook, rule: string): Counted {
  const screening = screen({ ...input, rulebook });
  const points = [...screening.points()].length;
  const { byRule, pass, warn, fail } = screening.summary();
  const counts = byRule.find((one) => one.rule === rule);
  if (!counts) throw new Error(`${rule} was not asked`);
  const undecided = counts.undecided + counts.noLimitInForce;
  const { notApplicable } = counts;
  const asked = counts.pass + counts.warn + counts.fail + undecided + notApplicable;
  return {
    rule: {
      pass: counts.pass,
      warn: counts.warn,
      fail: counts.fail,
      undecided,
      notApplicable,
      notAsked: points - asked,
    },
    points: { pass, warn, fail },
  };
}
