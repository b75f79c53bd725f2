import { isOpen } from "../base/index.js";
import { factName, findFact } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import { FactKey, Remembered } from "./fact-key.js";
import type { ReadyRule } from "./judge-point.js";
import { missingFacts } from "./missing.js";
import type { PointFacts } from "./point-facts.js";
import type { NotAsked } from "./result.js";

/** The set whose rules speak on every row. */
export const CORE = "core";

/** Different sets of facts remembered per rule and model. */
const MOST_REMEMBERED = 20_000;

/** A rule that is short of a column and for that decided on no row, if it may apply to any. */
export interface LackingRule {
  readonly ready: ReadyRule;
  /** Facts that have no column and are stated nowhere. */
  readonly lacking: readonly string[];
  /** It may apply to some row. */
  readonly open: boolean;
}

/** The rules that a survey cannot be asked: they may apply to a row, and are decided on none. */
export function rulesNotAsked(rules: readonly LackingRule[]): readonly NotAsked[] {
  return rules
    .filter(({ open }) => open)
    .map(({ ready, lacking }) => ({
      rule: ready.rule.id,
      facts: lacking,
      text: notAskedText(lacking),
    }));
}

/**
 * The rules outside the core that are short of a fact that has no column and is stated nowhere, and for that decided
 * on no row to which they may apply.
 *
 * @param rows - the facts of each row, derived and model facts included
 */
export function rulesLacking(
  rules: readonly ReadyRule[],
  survey: Survey,
  rows: () => Iterable<PointFacts>,
): readonly LackingRule[] {
  let candidates = rules.flatMap((ready) => {
    const lacking = ready.rule.sets.includes(CORE) ? [] : lackingFacts(ready.compiled.factsNamed, survey);
    return lacking.length > 0 ? [new Candidate(ready, lacking)] : [];
  });
  if (candidates.length === 0) return [];
  for (const facts of rows()) {
    let anyDecided = false;
    for (const candidate of candidates) if (candidate.isDecidedOn(facts)) anyDecided = true;
    if (anyDecided) candidates = candidates.filter(({ decided }) => !decided);
    if (candidates.length === 0) break;
  }
  return candidates;
}

/** A rule that may turn out not to be asked, while rows pass by; it is out as soon as one row decides it. */
class Candidate implements LackingRule {
  readonly ready: ReadyRule;
  readonly lacking: readonly string[];
  open = false;
  decided = false;
  readonly #key: FactKey;
  readonly #seen = new Remembered<true>(MOST_REMEMBERED);

  constructor(ready: ReadyRule, lacking: readonly string[]) {
    this.ready = ready;
    this.lacking = lacking;
    this.#key = new FactKey(ready.compiled.factsNamed);
  }

  isDecidedOn(facts: PointFacts): boolean {
    const key = this.#key.of(facts);
    if (key !== null) {
      if (this.#seen.get(facts, key)) return false;
      this.#seen.set(facts, key, true);
    }
    const judgement = this.ready.compiled.judge(facts);
    if (judgement.outcome === "not-applicable") return false;
    // A row that is open for another reason decides nothing, so that it gives the rule no voice on all the others.
    if (!isOpen(judgement.outcome)) this.decided = true;
    else if (missingFacts(judgement.open, facts).some(({ fact }) => this.lacking.includes(fact))) this.open = true;
    return this.decided;
  }
}

export function notAskedText(lacking: readonly string[]): string {
  return `not asked: the survey has no column for ${lacking.map(factName).join(", ")}, and the site states nothing`;
}

/** The facts of rows under some facts, of which no column speaks and which are stated nowhere. */
export function lackingFacts(facts: readonly string[], survey: Survey): readonly string[] {
  const roots = new Set(facts.flatMap(rootsOf));
  return [...roots].filter((id) => findFact(id)?.source === "survey" && !survey.factsAsked.has(id));
}

function rootsOf(id: string): readonly string[] {
  const needs = findFact(id)?.needs;
  return needs ? needs.flatMap(rootsOf) : [id];
}
