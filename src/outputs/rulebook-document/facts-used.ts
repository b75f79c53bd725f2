import { type FactDefinition, findFact } from "../../facts/index.js";
import { factsInCondition, factsNamedBy, type Rule, type Rulebook } from "../../rulebook/index.js";
import { factsInMessage } from "../../screening/index.js";

/** The facts that rules name themselves, at any stage and by any of their limits; the judged ones first. */
export function factsOfRule(rule: Rule, rulebook: Pick<Rulebook, "conditions">): readonly string[] {
  const entries = rule.limits.length === 0 ? [null] : rule.limits;
  const named = rule.stages.flatMap((stage) =>
    entries.flatMap((entry) => factsNamedBy(rule, entry, stage, rulebook.conditions)),
  );
  return [...new Set(named)];
}

/** The facts that the messages and the remedy of a rule speak of. */
export function factsSpokenOf({ messages, remedy }: Rule): readonly string[] {
  const { fail, warn } = messages;
  return [...new Set([fail, warn].flatMap((message) => factsInMessage(message ?? null)).concat(remedy.change))];
}

/** Every fact that rules rest on or speak of, with all that those are computed, looked up or gathered from. */
export function factsUsed(rules: readonly Rule[], rulebook: Rulebook): ReadonlySet<string> {
  const used = new Set<string>();
  const add = (id: string): void => {
    if (used.has(id)) return;
    used.add(id);
    for (const need of findFact(id)?.needs ?? []) add(need);
    for (const { key, members } of rulebook.groups.values()) {
      const member = members.get(id);
      if (member === undefined) continue;
      for (const one of key) add(one);
      if (member.fact !== null) add(member.fact);
      if (member.where !== null) for (const one of factsInCondition(member.where, rulebook.conditions)) add(one);
    }
  };
  for (const rule of rules) {
    const given = [rule.casesGive, ...rule.cases.map((one) => one.given)].flatMap((one) => Object.keys(one));
    const group = rule.group === null ? [] : (rulebook.groups.get(rule.group)?.key ?? []);
    const all = [...factsOfRule(rule, rulebook), ...factsSpokenOf(rule), ...group, ...given];
    for (const id of all) if (findFact(id)) add(id);
  }
  return used;
}

/** The part of the catalogue that is used, in its order. */
export function definitionsUsed(
  catalogue: readonly FactDefinition[],
  used: ReadonlySet<string>,
): readonly FactDefinition[] {
  return catalogue.filter(({ id }) => used.has(id));
}
