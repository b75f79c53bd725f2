import type { Verdict } from "../base/index.js";
import type { Survey } from "../records/index.js";
import { FactKey } from "./fact-key.js";
import type { ScreeningInput } from "./input.js";
import { weightOf, worst } from "./judge-point.js";
import type { PointFacts, PointOnItsWay } from "./point-facts.js";
import { RememberedOutcome } from "./remembered-outcome.js";
import type { ResultHead } from "./result.js";
import { type BareRun, bareRun } from "./screen.js";

/** Points of one survey of which some rules see the same, and on which all other rules together say the same. */
export interface LikePoints {
  readonly survey: Survey;
  /** Those of the first of them. */
  readonly facts: PointFacts;
  /** What the other rules make of them. */
  readonly others: Verdict;
  readonly points: number;
}

/**
 * Screens once and puts together the points that are alike to some rules, so that these can be judged again and again
 * in other forms while the rest stands.
 *
 * @param rules - ids of rules of single points, of the set; their other forms may name no other facts
 * @throws RangeError if the rulebook has no such set
 */
export function likePoints(
  input: ScreeningInput,
  rules: ReadonlySet<string>,
): { readonly head: ResultHead; readonly like: readonly LikePoints[] } {
  const run = bareRun(input);
  const named = run.rules.filter(({ rule }) => rules.has(rule.id)).flatMap(({ compiled }) => compiled.factsNamed);
  const factKey = new FactKey(named);
  const outcomes = run.rules
    .filter(({ rule }) => rule.group === null && !rules.has(rule.id))
    .map((ready) => new RememberedOutcome(ready));
  const numbers = new Map<unknown, number>();
  const numberOf = (thing: unknown): number => {
    const number = numbers.get(thing) ?? numbers.size;
    numbers.set(thing, number);
    return number;
  };
  const like = new Map<string | symbol, { -readonly [K in keyof LikePoints]: LikePoints[K] }>();
  for (const point of run.points()) {
    const { facts, survey } = point;
    const others = verdictOf(point, run, outcomes);
    const same = factKey.of(facts);
    const model = facts.model.ok ? facts.model.model : facts.model.reason;
    // Where it cannot be told whether two points are equal, each stands for itself.
    const key = same === null ? Symbol() : `${numberOf(survey)} ${numberOf(model)} ${others} ${same.text()}`;
    const known = like.get(key);
    if (known) known.points += 1;
    else like.set(key, { survey, facts, others, points: 1 });
  }
  return { head: run.head, like: [...like.values()] };
}

/** What rules say of a point that are not moved, those of its groups and the built-in ones included. */
function verdictOf(point: PointOnItsWay, run: BareRun, outcomes: readonly RememberedOutcome[]): Verdict {
  const isAsked = run.asks(point);
  let verdict = run.verdictBeside(point);
  for (const outcome of outcomes) {
    // Nothing is worse.
    if (verdict === "fail") break;
    const { rule } = outcome.ready;
    if (isAsked(rule.id)) verdict = worst(verdict, weightOf(outcome.of(point.facts), rule.undecided));
  }
  return verdict;
}
