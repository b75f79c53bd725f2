import type { PlainDay, Stage } from "../base/index.js";
import { type FactState, factName, factOf } from "../facts/index.js";
import type { Judgement, Rule, RuleCase } from "../rulebook/index.js";
import { flowYaml } from "./flow-yaml.js";

/** A case as a rule file holds it. */
export type WrittenCase = Omit<RuleCase, "at">;

/** A case that is not written yet. */
export interface SuggestedCase {
  /** The case as a line of YAML, to be pasted below `cases`. */
  readonly yaml: string;
  /** The same as data. */
  readonly written: WrittenCase;
}

/** How a case that is to be written differs from one that is. */
export interface CaseChange {
  readonly asOf: PlainDay;
  readonly stage: Stage;
  readonly changes: ReadonlyMap<string, FactState>;
  readonly judgement: Judgement;
}

/** Writes a case out: the facts of a written one, some of them changed, with the outcome that the rule gives. */
export function suggestedCase(rule: Rule, base: RuleCase, change: CaseChange): SuggestedCase {
  const { asOf, stage, changes, judgement } = change;
  const given = new Map(Object.entries(base.given));
  for (const [fact, state] of changes) given.set(fact, written(fact, state));
  if ((given.get("asOf") ?? rule.casesGive.asOf) !== asOf) given.set("asOf", asOf);
  if (rule.stages.length > 1 && (given.get("stage") ?? rule.casesGive.stage) === undefined) given.set("stage", stage);
  const missing = judgement.open.map(({ fact }) => fact);
  const suggested: WrittenCase = {
    name: nameOf(rule, change),
    given: Object.fromEntries(given),
    expect: judgement.outcome,
    missing: missing.length > 0 ? missing : null,
  };
  return { yaml: caseLine(suggested), written: suggested };
}

/** A case as a line of YAML below `cases`. */
export function caseLine({ name, given, expect, missing }: WrittenCase): string {
  const parts = [
    `name: ${JSON.stringify(name)}`,
    `given: ${flowYaml(given)}`,
    `expect: ${expect}`,
    ...(missing === null ? [] : [`missing: ${flowYaml(missing)}`]),
  ];
  return `  - { ${parts.join(", ")} }`;
}

function nameOf(rule: Rule, { asOf, stage, changes, judgement }: CaseChange): string {
  const facts = [...changes].map(
    ([fact, state]) => `${factName(fact)} ${state.known ? shown(written(fact, state)) : "not known"}`,
  );
  const name = [...(facts.length > 0 ? facts : [`on ${asOf}`]), judgement.outcome].join(", ");
  const isTaken = (text: string): boolean => rule.cases.some((one) => one.name.toLowerCase() === text.toLowerCase());
  if (!isTaken(name)) return name;
  const more = `${name}, ${stage}`;
  for (let number = 2; ; number++) {
    const numbered = `${more} ${number}`;
    if (!isTaken(numbered)) return numbered;
  }
}

/** A fact as cases give it: a number with its unit, a choice, yes and no, null for one that is not there. */
export function written(fact: string, state: FactState): unknown {
  if (!state.known) return null;
  const { value } = state;
  if (typeof value !== "object") return value;
  const { kind, unit } = factOf(fact);
  return kind === "count" ? value.lowest : `${value.lowest} ${unit}`;
}

function shown(value: unknown): string {
  return value === true ? "yes" : value === false ? "no" : String(value);
}
