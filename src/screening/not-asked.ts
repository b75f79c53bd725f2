import { isOpen } from "../base/index.js";
import { type Facts, factName, findFact } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { ReadyRule } from "./judge-point.js";
import { missingFacts } from "./missing.js";
import type { NotAsked } from "./result.js";

/** The set whose rules speak on every row. */
const CORE = "core";

/**
 * The rules that a survey cannot be asked: outside the core, short of a fact that has no column and is stated
 * nowhere, and for that decided on no row to which they may apply.
 *
 * @param rows - the facts of each row, derived and model facts included
 */
export function rulesNotAsked(
  rules: readonly ReadyRule[],
  survey: Survey,
  rows: () => Iterable<Facts>,
): readonly NotAsked[] {
  const candidates = rules.flatMap((ready) => {
    const lacking = ready.rule.sets.includes(CORE) ? [] : lackingFacts(ready, survey);
    return lacking.length > 0 ? [{ ready, lacking, open: 0, decided: 0 }] : [];
  });
  if (candidates.length === 0) return [];
  for (const facts of rows()) {
    for (const candidate of candidates) {
      const judgement = candidate.ready.compiled.judge(facts);
      if (judgement.outcome === "not-applicable") continue;
      const missing = missingFacts(judgement.open, facts);
      const forLack = isOpen(judgement.outcome) && missing.some(({ fact }) => candidate.lacking.includes(fact));
      if (forLack) candidate.open += 1;
      else candidate.decided += 1;
    }
  }
  return candidates
    .filter(({ open, decided }) => open > 0 && decided === 0)
    .map(({ ready, lacking }) => ({
      rule: ready.rule.id,
      facts: lacking,
      text: `not asked: the survey has no column for ${lacking.map(factName).join(", ")}, and the site states nothing`,
    }));
}

function lackingFacts({ compiled }: ReadyRule, survey: Survey): readonly string[] {
  const roots = new Set(compiled.factsNamed.flatMap(rootsOf));
  return [...roots].filter((id) => findFact(id)?.source === "survey" && !survey.factsAsked.has(id));
}

function rootsOf(id: string): readonly string[] {
  const needs = findFact(id)?.needs;
  return needs ? needs.flatMap(rootsOf) : [id];
}
