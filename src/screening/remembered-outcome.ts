import type { Outcome } from "../base/index.js";
import { FactKey, Remembered } from "./fact-key.js";
import type { ReadyRule } from "./judge-point.js";
import type { PointFacts } from "./point-facts.js";

/** Outcomes remembered per rule and model. */
const MOST_REMEMBERED = 20_000;

/** The outcome of one rule alone, without any finding, for each different set of facts once. */
export class RememberedOutcome {
  readonly ready: ReadyRule;
  readonly #key: FactKey;
  readonly #remembered = new Remembered<Outcome>(MOST_REMEMBERED);

  constructor(ready: ReadyRule) {
    this.ready = ready;
    this.#key = new FactKey(ready.compiled.factsNamed);
  }

  of(facts: PointFacts): Outcome {
    const key = this.#key.of(facts);
    const known = key === null ? undefined : this.#remembered.get(facts, key);
    if (known !== undefined) return known;
    const own = key?.copy() ?? null;
    const { outcome } = this.ready.compiled.outcomeOn(facts);
    if (own !== null) this.#remembered.set(facts, own, outcome);
    return outcome;
  }
}
