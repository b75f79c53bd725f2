import { findFact } from "../facts/index.js";
import { findingOf, isAlwaysListed, type ReadyRule } from "./judge-point.js";
import { factsInMessage } from "./messages.js";
import type { ModelChoice } from "./models.js";
import type { PointFacts } from "./point-facts.js";
import { type FindingPattern, patternOf, repeatOn } from "./repeated.js";
import type { Finding } from "./result.js";

/** Judgements remembered per rule; past it everything is forgotten, which costs time and nothing else. */
const MOST_REMEMBERED = 20_000;

/** What a rule says of a point: the outcome, and the finding where it is listed. */
export interface Judged {
  readonly outcome: Finding["outcome"];
  readonly finding: Finding | null;
}

interface Remembered {
  readonly outcome: Finding["outcome"];
  readonly pattern: FindingPattern | null;
}

/**
 * Judges points by one rule, each different set of facts once. A finding depends on what is said of the facts that
 * the rule and its messages name, on the facts under those, and on the sensor model; on nothing else but the cells,
 * which every point has of its own.
 */
export class RememberedJudge {
  readonly ready: ReadyRule;
  readonly #allFindings: boolean;
  readonly #roots: readonly string[];
  /** By sensor model, or by the reason why there is none. */
  readonly #remembered = new Map<unknown, Map<string, Remembered>>();

  constructor(ready: ReadyRule, allFindings: boolean) {
    this.ready = ready;
    this.#allFindings = allFindings;
    const { factsNamed, messages } = ready.compiled;
    const named = [...factsNamed, ...factsInMessage(messages.fail), ...factsInMessage(messages.warn)];
    this.#roots = [...new Set(named.flatMap(surveyFactsUnder))];
  }

  judge(facts: PointFacts): Judged {
    if (facts.family === undefined) return this.#judgeAnew(facts);
    const remembered = this.#rememberedFor(facts.model);
    const key = this.#keyOf(facts);
    const known = remembered.get(key);
    if (known) {
      return { outcome: known.outcome, finding: known.pattern && repeatOn(known.pattern, facts) };
    }
    const judged = this.#judgeAnew(facts);
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    const pattern = judged.finding && patternOf(judged.finding, facts);
    remembered.set(key, { outcome: judged.outcome, pattern });
    return judged;
  }

  #rememberedFor(model: ModelChoice): Map<string, Remembered> {
    const by = model.ok ? model.model : model.reason;
    const known = this.#remembered.get(by) ?? new Map<string, Remembered>();
    this.#remembered.set(by, known);
    return known;
  }

  #judgeAnew(facts: PointFacts): Judged {
    const judgement = this.ready.compiled.judge(facts);
    const listed = this.#allFindings || isAlwaysListed(judgement.outcome);
    return { outcome: judgement.outcome, finding: listed ? findingOf(this.ready, judgement, facts) : null };
  }

  #keyOf(facts: PointFacts): string {
    let key = String(facts.family);
    for (const id of this.#roots) key += `,${facts.sameness(id)}`;
    return key;
  }
}

/** The facts of a record that a fact rests on; of one of the model, the fact that names the model. */
function surveyFactsUnder(id: string): readonly string[] {
  const fact = findFact(id);
  if (fact?.source === "model") return ["sensor_model"];
  return fact?.needs ? fact.needs.flatMap(surveyFactsUnder) : [id];
}
