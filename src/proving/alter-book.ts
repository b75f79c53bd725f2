import type { Rule, Rulebook } from "../rulebook/index.js";
import { alterCondition } from "./alter-conditions.js";
import { alterationsOf } from "./alter-rule.js";
import { ALTERATION_KINDS, type Alteration, type AlterationKind } from "./alteration.js";
import { isNoticed, type ReadyCase, RuleOnDays, readyCases } from "./proven-cases.js";
import type { SuggestedCase } from "./suggested-case.js";
import { type Books, tellingCase } from "./telling-case.js";

/** An alteration that no case noticed. */
export interface Unnoticed {
  readonly rule: string;
  readonly alteration: Omit<Alteration, "rule">;
  /** The case that would notice it; null where none was found: as far as was tried, it changes nothing. */
  readonly suggestion: SuggestedCase | null;
}

/** How many alterations there were of a kind, and how many a case noticed. */
export interface Noticed {
  readonly kind: AlterationKind;
  readonly altered: number;
  readonly noticed: number;
  /** Unnoticed ones for which no case was found that tells them apart. */
  readonly alike: number;
}

/** What altering a whole rulebook showed. */
export interface AlterationReport {
  readonly counts: readonly Noticed[];
  readonly unnoticed: readonly Unnoticed[];
}

/** Alters every rule and named condition of a rulebook in turn, one thing at a time, and sees whether a case notices. */
export function alterBook(rulebook: Rulebook): AlterationReport {
  const cases = new Map(rulebook.rules.map((rule) => [rule.id, readyCases(rule, rulebook)]));
  const casesOf = (rule: Rule): readonly ReadyCase[] => cases.get(rule.id) ?? [];
  const counts = new Map(ALTERATION_KINDS.map((kind) => [kind, { kind, altered: 0, noticed: 0, alike: 0 }]));
  const unnoticed: Unnoticed[] = [];
  const count = (alteration: Alteration, rules: readonly Rule[], books: Books): void => {
    const counted = counts.get(alteration.kind);
    if (!counted) return;
    counted.altered += 1;
    const alteredOf = (rule: Rule): Rule => (rule.id === alteration.rule.id ? alteration.rule : rule);
    if (rules.some((rule) => isNoticed(new RuleOnDays(alteredOf(rule), books.after), casesOf(rule)))) {
      counted.noticed += 1;
      return;
    }
    let suggestion: SuggestedCase | null = null;
    let owner = alteration.rule;
    for (const rule of rules) {
      suggestion = tellingCase(rule, alteredOf(rule), casesOf(rule), books);
      owner = rule;
      if (suggestion) break;
    }
    if (suggestion === null) counted.alike += 1;
    const { kind, what, at } = alteration;
    unnoticed.push({ rule: owner.id, alteration: { kind, what, at }, suggestion });
  };
  for (const rule of rulebook.rules) {
    for (const alteration of alterationsOf(rule)) count(alteration, [rule], { before: rulebook, after: rulebook });
  }
  for (const [alteration, rules, books] of alteredConditions(rulebook)) count(alteration, rules, books);
  return { counts: [...counts.values()], unnoticed };
}

/** Each named condition, altered, with the rules that are judged by it; the first of them says where. */
function* alteredConditions(rulebook: Rulebook): Iterable<readonly [Alteration, readonly Rule[], Books]> {
  for (const [name, condition] of rulebook.conditions) {
    const rules = rulebook.rules.filter((rule) =>
      JSON.stringify([rule.appliesWhen, rule.limits]).includes(`"${name}"`),
    );
    const [first] = rules;
    if (!first) continue;
    for (const { kind, what, thing } of alterCondition(condition)) {
      const conditions = new Map(rulebook.conditions).set(name, thing);
      const books = { before: rulebook, after: { ...rulebook, conditions } };
      yield [{ kind, what: `condition "${name}": ${what}`, at: first.at, rule: first }, rules, books];
    }
  }
}
