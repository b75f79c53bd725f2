import type { PlainDay, Stage } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import type { Judgement } from "../book/judgement.js";
import type { Rule, RuleCase } from "../book/rule.js";
import type { Rulebook } from "../book/rulebook.js";
import { takeGiven } from "../reading/case-reading.js";
import { modelFactsOn } from "../reading/model-reading.js";
import { compileRule } from "./compile-rule.js";
import { type TableLookup, tablesOn, withTables } from "./table-lookup.js";

/** How a case came out at one stage. */
export interface CaseRun {
  readonly stage: Stage;
  readonly judgement: Judgement;
  /** Outcome, and the facts named as missing where the case lists them, are as expected. */
  readonly asExpected: boolean;
  /** What differs, in one line; null where nothing does. */
  readonly difference: string | null;
}

/** What a case may be run with besides the rulebook. */
export interface CaseOptions {
  /** Computes derived facts from the facts given; left out, only facts given directly are known. */
  readonly derive?: (facts: Facts) => Facts;
}

/** A case ready to be judged. */
export interface PreparedCase {
  readonly asOf: PlainDay;
  /** The stage of the case or, without one, all of its rule. */
  readonly stages: readonly Stage[];
  /** What the case gives, with the facts of its model. */
  readonly given: Facts;
  /** The tables on the day of the case. */
  readonly tables: TableLookup;
  /** All facts that it is judged on. */
  readonly facts: Facts;
}

/**
 * The facts that a case gives, those of its model and of the tables included.
 *
 * @throws RangeError for a case whose values or model were never checked by loading
 */
export function prepareCase(
  rule: Rule,
  ruleCase: RuleCase,
  rulebook: Pick<Rulebook, "models" | "tables">,
  options: CaseOptions = {},
): PreparedCase {
  const given = takeGiven(rule.casesGive, ruleCase.given);
  const facts = new Map<string, FactState>();
  if (given.model !== null) {
    const model = rulebook.models.get(given.model);
    if (!model) throw new RangeError(`no model "${given.model}" in the rulebook`);
    for (const [id, state] of modelFactsOn(model, given.asOf)) facts.set(id, state);
  }
  for (const [id, state] of given.facts) facts.set(id, state);
  const tables = tablesOn(rulebook, given.asOf);
  const looked = withTables(facts, tables);
  return {
    asOf: given.asOf,
    stages: given.stage === null ? rule.stages : [given.stage],
    given: facts,
    tables,
    facts: options.derive ? options.derive(looked) : looked,
  };
}

/**
 * Runs one case of a rule, at its stage or, without one, at every stage of the rule.
 *
 * @throws RangeError for a case whose values or model were never checked by loading
 */
export function runCase(
  rule: Rule,
  ruleCase: RuleCase,
  rulebook: Pick<Rulebook, "conditions" | "models" | "tables">,
  options: CaseOptions = {},
): readonly CaseRun[] {
  const { asOf, stages, facts } = prepareCase(rule, ruleCase, rulebook, options);
  return stages.map((stage) => {
    const compiled = compileRule(rule, rulebook, { stage, asOf });
    if (!compiled) throw new RangeError(`the rule "${rule.id}" is not for the stage "${stage}"`);
    const judgement = compiled.judge(facts);
    const difference = differenceOf(judgement, ruleCase);
    return { stage, judgement, asExpected: difference === null, difference };
  });
}

/** What differs between a judgement and what a case expects, in one line; null where nothing does. */
export function differenceOf(
  judgement: Judgement,
  { expect, missing }: Pick<RuleCase, "expect" | "missing">,
): string | null {
  const open = judgement.open.map(({ fact }) => fact);
  const found = open.length > 0 ? `${judgement.outcome} (open: ${open.join(", ")})` : judgement.outcome;
  if (judgement.outcome !== expect) return `expected ${expect}, found ${found}`;
  if (missing === null) return null;
  const same = missing.length === open.length && missing.every((fact) => open.includes(fact));
  return same
    ? null
    : `expected ${missing.join(", ") || "nothing"} to be missing, found ${open.join(", ") || "nothing"}`;
}
