import { type Facts, factName, plainWords, stateInWords } from "../facts/index.js";
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
  return `cannot be decided: ${reasons.join(", ")}${best}`;
}

/** A message template with every {fact} replaced by its value and unit. */
export function fillMessage(template: string, facts: Facts): string {
  return template.replace(/\{([a-z][a-z0-9_.]*)\}/g, (_, id: string) => stateInWords(id, facts.get(id)));
}
