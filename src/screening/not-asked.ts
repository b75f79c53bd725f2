import { isOpen } from "../base/index.js";
import { type Facts, factName, findFact } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { Judgement, SensorModel } from "../rulebook/index.js";
import { FactKey, Remembered } from "./fact-key.js";
import type { ReadyRule } from "./judge-point.js";
import { missingFacts } from "./missing.js";
import type { PointFacts } from "./point-facts.js";
import type { NotAsked } from "./result.js";

/** The set whose rules speak on every row. */
export const CORE = "core";

/** Different sets of facts remembered per rule and model. */
const MOST_REMEMBERED = 20_000;

/** A rule that is short of a column, or of what a sensor model states, and decided on no row, if it may apply to any. */
export interface LackingRule {
  readonly ready: ReadyRule;
  /** Facts that have no column and are stated nowhere, or that the model does not state. */
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
      model: null,
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
    const lacking = columnsLacking(ready, survey);
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

/** The rules that cannot be asked of the points of one sensor model: they may apply to one, and are decided on none. */
export function rulesNotStated(rules: readonly LackingRule[], model: SensorModel): readonly NotAsked[] {
  return rules
    .filter(({ open }) => open)
    .map(({ ready, lacking }) => {
      const text = `not asked of points with the model "${model.id}": it does not state ${lacking.map(factName).join(", ")}`;
      return { rule: ready.rule.id, model: model.id, facts: lacking, text };
    });
}

/**
 * By sensor model the rules outside the core that are short of a fact that the model does not state, and for that
 * decided on no row of the model to which they may apply. Nobody on site can find out what a sheet does not say, so
 * that it is said once.
 *
 * @param rows - as of {@link rulesLacking}
 */
export function rulesUnstated(
  rules: readonly ReadyRule[],
  models: Iterable<SensorModel>,
  rows: () => Iterable<PointFacts>,
): ReadonlyMap<SensorModel, readonly LackingRule[]> {
  const byModel = new Map([...models].map((model) => [model, unstatedOf(rules, model)] as const));
  if ([...byModel.values()].every((candidates) => candidates.length === 0)) return new Map();
  for (const facts of rows()) {
    if (!facts.model.ok) continue;
    for (const candidate of byModel.get(facts.model.model) ?? []) if (!candidate.decided) candidate.isDecidedOn(facts);
  }
  return new Map([...byModel].map(([model, candidates]) => [model, candidates.filter(({ decided }) => !decided)]));
}

function unstatedOf(rules: readonly ReadyRule[], model: SensorModel): readonly Candidate[] {
  return rules.flatMap((ready) => {
    const unstated = unstatedFacts(ready, model);
    return unstated.length > 0 ? [new Candidate(ready, unstated)] : [];
  });
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
    const asking = askingOf(this.ready.compiled.judge(facts), facts, this.lacking);
    if (asking === "open") this.open = true;
    else if (asking === "decided") this.decided = true;
    return this.decided;
  }
}

/**
 * What a row tells of whether a rule can be asked: that it is decided, that it is open for want of a column or of what
 * a model states, or nothing: a row that is open for another reason gives the rule no voice on all the others.
 *
 * @param lacking - what `columnsLacking` or `unstatedFacts` says
 */
export function askingOf(
  { outcome, open }: Judgement,
  facts: Facts,
  lacking: readonly string[],
): "open" | "decided" | null {
  if (outcome === "not-applicable") return null;
  if (!isOpen(outcome)) return "decided";
  return missingFacts(open, facts).some(({ fact }) => lacking.includes(fact)) ? "open" : null;
}

/** Facts under a rule of which no column of a survey speaks and which are stated nowhere; none for a rule of the core. */
export function columnsLacking({ rule, compiled }: ReadyRule, survey: Survey): readonly string[] {
  return rule.sets.includes(CORE) ? [] : lackingFacts(compiled.factsNamed, survey);
}

/** Facts under a rule that a sensor model does not state; none for a rule of the core. */
export function unstatedFacts({ rule, compiled }: ReadyRule, model: SensorModel): readonly string[] {
  if (rule.sets.includes(CORE)) return [];
  const roots = [...new Set(compiled.factsNamed.flatMap(rootsOf))];
  return roots.filter((id) => findFact(id)?.source === "model" && !model.facts.has(id));
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
