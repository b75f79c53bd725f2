import { isOpen, type Outcome } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { supposed } from "../changed-record.js";
import { FactKey, Remembered } from "../fact-key.js";
import type { ReadyRule } from "../judge-point.js";
import { missingFacts } from "../missing.js";
import type { PointFacts } from "../point-facts.js";
import { surveyFactsUnder } from "../survey-facts-under.js";

/** The fact that a trial changes. */
export const METHOD = "mounting_method";

/** Trials remembered per rule and method; past it everything is forgotten, which costs time and nothing else. */
const MOST_REMEMBERED = 20_000;

/** What a rule says of a point with another method. */
export interface TrialOutcome {
  readonly outcome: Outcome;
  /** Of an open outcome: the survey, site and model facts that it is short of. */
  readonly missing: readonly string[];
}

/** Whether a rule rests on the mounting method, directly or through what is derived from it. */
export function restsOnMethod({ compiled }: ReadyRule): boolean {
  return compiled.factsNamed.some((id) => surveyFactsUnder(id).includes(METHOD));
}

/** One rule tried with one method in place of the proposed one, on each different set of facts once. */
export class MethodTrial {
  readonly id: string;
  /** Of the rule among the rules of points. */
  readonly place: number;
  readonly #ready: ReadyRule;
  /** What it says of the method whatever else is known; null where that depends. */
  readonly always: TrialOutcome | null;
  readonly #key: FactKey;
  readonly #remembered = new Remembered<TrialOutcome>(MOST_REMEMBERED);

  constructor(ready: ReadyRule, place: number, method: string) {
    this.#ready = ready;
    this.place = place;
    this.id = ready.rule.id;
    this.#key = new FactKey(ready.compiled.factsNamed, METHOD);
    const { outcome } = ready.compiled.judge(new Map([[METHOD, supposed(method)]]));
    // Decided by the method alone, it is decided whatever else is known.
    this.always = isOpen(outcome) ? null : { outcome, missing: [] };
  }

  /** Whether it puts the method to the test, where it applies: what it says hangs on other facts, too. */
  get tests(): boolean {
    return this.always === null;
  }

  /** @param changed - the facts of the point with the method in place; made on demand */
  outcomeOn(facts: PointFacts, changed: () => PointFacts): TrialOutcome {
    if (this.always) return this.always;
    const key = this.#key.of(facts);
    if (key === null) return this.#judgeAnew(changed());
    const known = this.#remembered.get(facts, key);
    if (known) return known;
    const own = key.copy();
    const fresh = this.#judgeAnew(changed());
    this.#remembered.set(facts, own, fresh);
    return fresh;
  }

  #judgeAnew(facts: Facts): TrialOutcome {
    const { outcome, open } = this.#ready.compiled.judge(facts);
    return keptOnce(outcome, isOpen(outcome) ? missingFacts(open, facts).map(({ fact }) => fact) : []);
  }
}

const kept = new Map<string, TrialOutcome>();

/** Of the few different ones each is kept once, however many sets of facts lead to it. */
function keptOnce(outcome: Outcome, missing: readonly string[]): TrialOutcome {
  const key = `${outcome} ${missing.join()}`;
  const known = kept.get(key) ?? { outcome, missing };
  kept.set(key, known);
  return known;
}

/** A point as it would be with another method. */
export function withMethod(facts: PointFacts, method: FactState): PointFacts {
  return facts.changed(new Map([[METHOD, method]]));
}
