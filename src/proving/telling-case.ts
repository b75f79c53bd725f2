import { STAGES } from "../base/index.js";
import type { FactState, Facts } from "../facts/index.js";
import { differenceOf, type Judgement, type Rule } from "../rulebook/index.js";
import { ChangedFacts } from "./changed-facts.js";
import { probesOf } from "./probes.js";
import { type Book, type ReadyCase, RuleOnDays } from "./proven-cases.js";
import { type SuggestedCase, suggestedCase } from "./suggested-case.js";

/** Judgements spent on one alteration before it is given up. */
const MOST_TRIES = 20_000;

/**
 * Looks for a case that a rule and its altered form judge differently, near the cases that are written: other days
 * first, then one fact changed, then two.
 *
 * @returns null if none was found; the two are then alike as far as was tried
 */
export function tellingCase(
  rule: Rule,
  altered: Rule,
  cases: readonly ReadyCase[],
  books: Books,
): SuggestedCase | null {
  const before = new RuleOnDays(rule, books.before);
  const after = new RuleOnDays(altered, books.after);
  const probes = probesOf([rule, altered], books.before);
  let tries = 0;
  const told = (base: ReadyCase, asOf: string, changes: ReadonlyMap<string, FactState>): SuggestedCase | null => {
    const facts = new ChangedFacts(base, changes);
    for (const stage of STAGES) {
      if (!base.stages.includes(stage)) continue;
      tries += 1;
      const [one, other] = [before.at(stage, asOf)?.judge(facts), after.at(stage, asOf)?.judge(facts)];
      if (!one || !other || isSame(one, other)) continue;
      return suggestedCase(rule, base.written, { asOf, stage, changes, judgement: one });
    }
    return null;
  };
  const bases = distinct(cases);
  for (const base of bases) {
    for (const asOf of [base.asOf, ...probes.days]) {
      const found = told(base, asOf, new Map());
      if (found) return found;
    }
  }
  for (const depth of [1, 2]) {
    for (const base of bases) {
      for (const changes of changesOf(base, factsOf(before, after, base), probes.valuesOf, depth)) {
        const found = told(base, base.asOf, changes);
        if (found || tries > MOST_TRIES) return found;
      }
    }
  }
  return null;
}

/** The rulebook as it is and as it is altered; they differ only where a named condition is altered. */
export interface Books {
  readonly before: Book;
  readonly after: Book;
}

function isSame(one: Judgement, other: Judgement): boolean {
  return differenceOf(other, { expect: one.outcome, missing: one.open.map(({ fact }) => fact) }) === null;
}

/** Cases that give the same facts are tried once. */
function distinct(cases: readonly ReadyCase[]): readonly ReadyCase[] {
  const seen = new Map(cases.map((one) => [JSON.stringify([one.asOf, one.stages, one.written.given]), one]));
  return [...seen.values()];
}

function factsOf(before: RuleOnDays, after: RuleOnDays, { stages, asOf }: ReadyCase): readonly string[] {
  const named = stages.flatMap((stage) => [
    ...(before.at(stage, asOf)?.factsNamed ?? []),
    ...(after.at(stage, asOf)?.factsNamed ?? []),
  ]);
  return [...new Set(named)].filter((fact) => fact !== "stage");
}

/** Facts of a case changed to each of their values, as many at a time as `depth` says. */
export function* changesOf(
  base: ReadyCase,
  facts: readonly string[],
  valuesOf: (fact: string, facts: Facts) => readonly FactState[],
  depth: number,
  from: ReadonlyMap<string, FactState> = new Map(),
): Iterable<ReadonlyMap<string, FactState>> {
  for (const [index, fact] of facts.entries()) {
    for (const state of valuesOf(fact, new ChangedFacts(base, from))) {
      const changes = new Map([...from, [fact, state]]);
      if (depth === 1) yield changes;
      else yield* changesOf(base, facts.toSpliced(index, 1), valuesOf, depth - 1, changes);
    }
  }
}
