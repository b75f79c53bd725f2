import type { PlainDay, Stage } from "../base/index.js";
import { type FactState, factName, factOf } from "../facts/index.js";
import type { Judgement, Rule, RuleCase } from "../rulebook/index.js";

/** A case that is not written yet. */
export interface SuggestedCase {
  /** The case as a line of YAML, to be pasted below `cases`. */
  readonly yaml: string;
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
  const parts = [
    `name: ${JSON.stringify(nameOf(rule, change))}`,
    `given: ${flow(Object.fromEntries(given))}`,
    `expect: ${judgement.outcome}`,
    ...(missing.length > 0 ? [`missing: [${missing.join(", ")}]`] : []),
  ];
  return { yaml: `  - { ${parts.join(", ")} }` };
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
function written(fact: string, state: FactState): unknown {
  if (!state.known) return null;
  const { value } = state;
  if (typeof value !== "object") return value;
  const { kind, unit } = factOf(fact);
  return kind === "count" ? value.lowest : `${value.lowest} ${unit}`;
}

function shown(value: unknown): string {
  return value === true ? "yes" : value === false ? "no" : String(value);
}

/** Data as flow YAML: plain where it reads back as the same text, in quotes elsewhere. */
function flow(data: unknown): string {
  if (Array.isArray(data)) return `[${data.map(flow).join(", ")}]`;
  if (typeof data === "object" && data !== null) {
    const pairs = Object.entries(data).map(([key, value]) => `${key}: ${flow(value)}`);
    return pairs.length === 0 ? "{}" : `{ ${pairs.join(", ")} }`;
  }
  if (typeof data !== "string") return String(data);
  return PLAIN.test(data) && !NOT_TEXT.test(data) ? data : JSON.stringify(data);
}

const PLAIN = /^[\p{L}\d][\p{L}\p{N}\p{M} .·/²³%°µ-]*$/u;
const NOT_TEXT = /^(?:[+-]?[\d.]+(?:e[+-]?\d+)?|true|false|null|yes|no)$/i;
