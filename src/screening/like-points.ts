import type { Verdict } from "../base/index.js";
import type { Survey } from "../records/index.js";
import { FactKey } from "./fact-key.js";
import type { ScreeningInput } from "./input.js";
import { weightOf, worst } from "./judge-point.js";
import type { PointFacts } from "./point-facts.js";
import type { ResultHead } from "./result.js";
import { pointFactsOf, readyRules, screen } from "./screen.js";

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
 * @param rules - ids of rules of the set; their other forms may name no other facts
 * @throws RangeError if the rulebook has no such set
 */
export function likePoints(
  input: ScreeningInput,
  rules: ReadonlySet<string>,
): { readonly head: ResultHead; readonly like: readonly LikePoints[] } {
  const ready = readyRules(input.rulebook, input.options);
  const weighs = new Map(ready.map(({ rule }) => [rule.id, rule.undecided]));
  const named = ready.filter(({ rule }) => rules.has(rule.id)).flatMap(({ compiled }) => compiled.factsNamed);
  const factKey = new FactKey(named);
  const screening = screen({ ...input, options: { ...input.options, allFindings: false } });
  const ways = pointFactsOf(input)[Symbol.iterator]();
  const numbers = new Map<unknown, number>();
  const numberOf = (thing: unknown): number => {
    const number = numbers.get(thing) ?? numbers.size;
    numbers.set(thing, number);
    return number;
  };
  const like = new Map<string | symbol, { -readonly [K in keyof LikePoints]: LikePoints[K] }>();
  for (const { findings } of screening.points()) {
    const way = ways.next();
    if (way.done) throw new Error("the points of a run and their facts are not as many");
    const { facts, survey } = way.value;
    let others: Verdict = "pass";
    for (const { rule, outcome } of findings) {
      if (!rules.has(rule)) others = worst(others, weightOf(outcome, weighs.get(rule) ?? "warn"));
    }
    const same = factKey.of(facts);
    const model = facts.model.ok ? facts.model.model : facts.model.reason;
    // Where it cannot be told whether two points are equal, each stands for itself.
    const key = same === null ? Symbol() : `${numberOf(survey)} ${numberOf(model)} ${others} ${same}`;
    const known = like.get(key);
    if (known) known.points += 1;
    else like.set(key, { survey, facts, others, points: 1 });
  }
  return { head: screening.head, like: [...like.values()] };
}
