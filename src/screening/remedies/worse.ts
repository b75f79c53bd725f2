import type { Outcome, Verdict } from "../../base/index.js";
import { type ReadyRule, weightOf } from "../judge-point.js";
import type { PointFacts } from "../point-facts.js";
import type { Judged, RememberedJudge } from "../remembered-judge.js";
import { afterChange, type Change } from "./change.js";
import type { Kept } from "./kept.js";

/** A rule that would say worse of a point after a change than it does now. */
export interface Broken {
  readonly ready: ReadyRule;
  readonly place: number;
  readonly outcome: Outcome;
}

const WEIGHTS: Readonly<Record<Verdict, number>> = { pass: 0, warn: 1, fail: 2 };

/** Finds the rules that a change would break; what a rule says after a change is asked once for equal facts. */
export class WorseRules {
  readonly #judges: readonly RememberedJudge[];
  readonly #restingOn = new Map<string, readonly number[]>();

  constructor(judges: readonly RememberedJudge[]) {
    this.#judges = judges;
  }

  /**
   * @param said - what each rule says of the point now, by its place; null for one that is not asked
   * @param own - place of the rule that the change is made for
   */
  after(change: Change, point: PointFacts, said: readonly (Judged | null)[], own: number): readonly Broken[] {
    const broken: Broken[] = [];
    let facts: ReturnType<typeof afterChange> | null = null;
    for (const place of this.#rulesOn(change.fact)) {
      const now = said[place];
      const judge = this.#judges[place];
      if (place === own || !now || !judge) continue;
      let outcome = outcomeAfter(change, now.kept);
      if (outcome === null) {
        facts ??= afterChange(point, change);
        outcome = judge.ready.compiled.outcomeOn(facts).outcome;
        if (now.kept) now.kept.after = { change, outcome, next: now.kept.after };
      }
      if (isWorse(outcome, now.outcome, judge.ready)) broken.push({ ready: judge.ready, place, outcome });
    }
    return broken;
  }

  #rulesOn(fact: string): readonly number[] {
    const known = this.#restingOn.get(fact);
    if (known) return known;
    const places = this.#judges.flatMap((judge, place) => (judge.restsOn(fact) ? [place] : []));
    this.#restingOn.set(fact, places);
    return places;
  }
}

function outcomeAfter(change: Change, kept: Kept | null): Outcome | null {
  for (let after = kept?.after ?? null; after !== null; after = after.next) {
    if (after.change === change) return after.outcome;
  }
  return null;
}

function isWorse(then: Outcome, now: Outcome, { rule }: ReadyRule): boolean {
  return then !== now && WEIGHTS[weightOf(then, rule.undecided)] > WEIGHTS[weightOf(now, rule.undecided)];
}
