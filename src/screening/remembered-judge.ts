import type { Margin } from "../rulebook/index.js";
import { FactKey, Remembered } from "./fact-key.js";
import { findingOf, isAlwaysListed, marginShown, type ReadyRule } from "./judge-point.js";
import { factsInMessage } from "./messages.js";
import type { PointFacts } from "./point-facts.js";
import type { Kept } from "./remedies/kept.js";
import { type FindingPattern, patternOf, repeatOn } from "./repeated.js";
import type { Finding } from "./result.js";

/** Judgements remembered per rule and model. */
const MOST_REMEMBERED = 20_000;

/** What a rule says of a point: the outcome, and the finding where it is listed. */
export interface Judged {
  readonly outcome: Finding["outcome"];
  readonly finding: Finding | null;
  readonly margin: Margin | null;
  /** Room for what else follows from the same facts; null where it cannot be told whether facts are equal. */
  readonly kept: Kept | null;
}

/**
 * Judges points by one rule, each different set of facts once. A finding depends on what is said of the facts that
 * the rule and its messages name, on the facts under those, and on the sensor model; on nothing else but the cells,
 * which every point has of its own.
 */
export class RememberedJudge {
  readonly ready: ReadyRule;
  readonly #allFindings: boolean;
  readonly #key: FactKey;
  readonly #remembered = new Remembered<
    Kept & Pick<Judged, "outcome" | "margin"> & { readonly pattern: FindingPattern | null }
  >(MOST_REMEMBERED);

  constructor(ready: ReadyRule, allFindings: boolean) {
    this.ready = ready;
    this.#allFindings = allFindings;
    const { factsNamed, messages } = ready.compiled;
    this.#key = new FactKey([...factsNamed, ...factsInMessage(messages.fail), ...factsInMessage(messages.warn)]);
  }

  judge(facts: PointFacts): Judged {
    const key = this.#key.of(facts);
    if (key === null) return this.#judgeAnew(facts);
    const known = this.#remembered.get(facts, key);
    if (known) {
      const { outcome, margin, pattern } = known;
      return { outcome, margin, finding: pattern && repeatOn(pattern, facts), kept: known };
    }
    const own = key.copy();
    const judged = this.#judgeAnew(facts);
    const pattern = judged.finding && patternOf(judged.finding, facts);
    const kept = { outcome: judged.outcome, margin: judged.margin, pattern, solved: null, after: null };
    this.#remembered.set(facts, own, kept);
    return { ...judged, kept };
  }

  /** Whether a finding of the rule rests on a survey fact. */
  restsOn(fact: string): boolean {
    return this.#key.roots.includes(fact);
  }

  #judgeAnew(facts: PointFacts): Judged {
    const judgement = this.ready.compiled.judge(facts);
    const listed = this.#allFindings || isAlwaysListed(judgement.outcome);
    const finding = listed ? findingOf(this.ready, judgement, facts) : null;
    return { outcome: judgement.outcome, finding, margin: marginShown(judgement), kept: null };
  }
}
