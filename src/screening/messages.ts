import { formatNumber, type Outcome } from "../base/index.js";
import { type FactState, type Facts, factName, plainWords, stateInWords } from "../facts/index.js";
import type { CompiledRule, Judgement } from "../rulebook/index.js";
import type { MissingFact } from "./result.js";

const REASON_WORDS: Readonly<Record<MissingFact["reason"], string>> = {
  missing: "is missing",
  doubtful: "is marked as doubtful",
  unreadable: "cannot be read",
  conflicting: "contradicts itself",
  "too-close": "is too close to the limit for its accuracy",
};

/** The sentence that says why: the rule's own with its values filled in, or what is missing. */
export function messageOf(
  rule: CompiledRule,
  judgement: Judgement,
  missing: readonly MissingFact[],
  facts: Facts,
): string | null {
  const { outcome } = judgement;
  if (outcome === "fail" || outcome === "warn") {
    const template = rule.messages[outcome];
    return template === null ? null : fillMessage(template, facts);
  }
  if (outcome === "no-limit-in-force") return "no limit is in force on this day";
  if (outcome !== "undecided") return null;
  const reasons = missing.map(({ fact, reason }) => `${factName(fact)} ${REASON_WORDS[reason]}`);
  const best = judgement.atBest === null ? "" : `; at best ${plainWords(judgement.atBest)}`;
  const what = rule.judged === null ? "this" : factName(rule.judged);
  return `${what} cannot be judged: ${reasons.join(", ")}${best}`;
}

const TODO_WORDS: Readonly<Record<MissingFact["reason"], string>> = {
  missing: "find out",
  doubtful: "make sure of",
  unreadable: "write down clearly",
  conflicting: "settle",
  "too-close": "measure more accurately",
};

/** What to do: the rule's remedy where it is broken; where it is open, what to find out, measure or settle. */
export function remedyOf(outcome: Outcome, remedy: string, missing: readonly MissingFact[]): string | null {
  if (outcome === "fail" || outcome === "warn") return remedy;
  if (outcome === "no-limit-in-force") return "put a limit in force for this day, or screen as of another day";
  if (outcome !== "undecided") return null;
  const todo = new Map<string, string[]>();
  const again: string[] = [];
  for (const { fact, reason, measureTo } of missing) {
    if (measureTo) {
      again.push(
        `measure the ${factName(fact)} again, to ± ${formatNumber(measureTo.accuracy, measureTo.unit)} or better`,
      );
      continue;
    }
    const words = TODO_WORDS[reason];
    todo.set(words, [...(todo.get(words) ?? []), factName(fact)]);
  }
  return [...again, ...[...todo].map(([words, names]) => `${words}: ${names.join(", ")}`)].join("; ");
}

/**
 * A message template with every {fact} replaced by its value and unit. Within brackets, parts between commas whose
 * facts are not known are left out, so that a message can name what is planned and what was measured.
 */
export function fillMessage(template: string, facts: Facts): string {
  const fill = (text: string): string => text.replace(PLACE, (_, id: string) => stateInWords(id, facts.get(id)));
  const shortened = template.replace(/ ?\(([^()]*)\)/g, (all, inside: string) => {
    const parts = inside.split(", ").filter((part) => isSaid(part, facts));
    if (parts.length === 0) return "";
    return `${all.startsWith(" ") ? " " : ""}(${parts.join(", ")})`;
  });
  return fill(shortened);
}

const PLACE = /\{([a-z][a-z0-9_.]*)\}/g;

/** The facts that a message template names. */
export function factsInMessage(template: string | null): readonly string[] {
  return [...(template ?? "").matchAll(PLACE)].map((match) => match[1] ?? "");
}

function isSaid(part: string, facts: Facts): boolean {
  const ids = factsInMessage(part);
  return ids.length === 0 || ids.some((id) => isKnown(facts.get(id)));
}

function isKnown(state: FactState | undefined): boolean {
  return state?.known === true && state.value !== "absent";
}
