import type { TextPlace } from "../base/index.js";
import type { Rule, Rulebook } from "../rulebook/index.js";
import { ChangedFacts } from "./changed-facts.js";
import { type CaseAtStage, DEMAND_KINDS, type Demand, type DemandKind, demandsOf } from "./demands.js";
import { type Book, type ReadyCase, RuleOnDays, readyCases } from "./proven-cases.js";
import { type SuggestedCase, suggestedCase } from "./suggested-case.js";

/** One thing that the cases of a rule are asked to show, and whether they do. */
export interface Shown {
  readonly rule: string;
  readonly kind: DemandKind;
  readonly what: string;
  readonly at: TextPlace;
  readonly isShown: boolean;
  /** A case that would show it, where one can be made from the cases that are written. */
  readonly suggestion: SuggestedCase | null;
}

/** What the cases of a rulebook show. */
export interface CoverageReport {
  readonly counts: readonly { readonly kind: DemandKind; readonly asked: number; readonly shown: number }[];
  readonly items: readonly Shown[];
}

/** What the cases written beside the rules show: every outcome, limit, missing fact, date and citation. */
export function coverageOf(rulebook: Rulebook): CoverageReport {
  const items = rulebook.rules.flatMap((rule) => coverageOfRule(rule, rulebook));
  const counts = DEMAND_KINDS.map((kind) => {
    const ofKind = items.filter((item) => item.kind === kind);
    return { kind, asked: ofKind.length, shown: ofKind.filter(({ isShown }) => isShown).length };
  });
  return { counts, items };
}

/** What the cases of one rule show. */
export function coverageOfRule(rule: Rule, rulebook: Book): readonly Shown[] {
  const onDays = new RuleOnDays(rule, rulebook);
  const cases = readyCases(rule, rulebook);
  const run = cases.flatMap((one) => atStages(one, onDays));
  const named = new Set(
    cases.flatMap(({ stages, asOf }) => stages.flatMap((s) => onDays.at(s, asOf)?.factsNamed ?? [])),
  );
  return demandsOf(rule, [...named]).map((demand) => {
    const isShown = run.some((one) => demand.isMetBy(one));
    const suggestion = isShown ? null : suggestionFor(demand, rule, cases, onDays);
    return { rule: rule.id, kind: demand.kind, what: demand.what, at: demand.at, isShown, suggestion };
  });
}

function atStages(one: ReadyCase, rule: RuleOnDays): readonly CaseAtStage[] {
  return one.stages.flatMap((stage) => {
    const compiled = rule.at(stage, one.asOf);
    return compiled ? [{ ...one, stages: [stage], judgement: compiled.judge(one.facts) }] : [];
  });
}

/** The first written case that, changed as the demand wants, shows it. */
function suggestionFor(
  demand: Demand,
  rule: Rule,
  cases: readonly ReadyCase[],
  onDays: RuleOnDays,
): SuggestedCase | null {
  for (const base of cases) {
    const { asOf, changes } = demand.wanted(base);
    const facts = new ChangedFacts(base, changes);
    for (const one of atStages({ ...base, asOf, facts }, onDays)) {
      const [stage] = one.stages;
      if (stage === undefined || !demand.isMetBy(one)) continue;
      return suggestedCase(rule, base.written, { asOf, stage, changes, judgement: one.judgement });
    }
  }
  return null;
}
