import { type PlainDay, STAGES, type Stage } from "../../base/index.js";
import type { FactState } from "../../facts/index.js";
import type { Rule, Rulebook, RuleCase } from "../../rulebook/index.js";
import { alterBook } from "../alter-book.js";
import { ChangedFacts } from "../changed-facts.js";
import { coverageOfRule, type Shown } from "../coverage.js";
import { probesOf } from "../probes.js";
import { isNoticed, RuleOnDays, readyCases } from "../proven-cases.js";
import { suggestedCase, type WrittenCase, written } from "../suggested-case.js";
import { changesOf } from "../telling-case.js";
import { passingFacts } from "./first-case.js";

/** Cases of a rule, and what they do not show. */
export interface CasesWritten {
  /** The rule with its cases. */
  readonly rule: Rule;
  /** What no case could be found for, in words; the owner of the rule writes these. */
  readonly open: readonly string[];
}

/** Far more cases than a rule of one limit needs. */
const MOST_CASES = 300;
const MOST_ROUNDS = 20;
const MOST_TRIES = 20_000;

/**
 * Writes the cases of a rule: at each limit and just past it, each outcome, each fact missing, each edge of a date, and
 * whatever else it takes to notice every alteration.
 *
 * @param asOf - the day of all cases but those at the edges of dates
 * @returns null if no values were found under which the rule passes
 */
export function completeCases(rule: Rule, book: Rulebook, asOf: PlainDay): CasesWritten | null {
  const stage = STAGES.find((one) => rule.stages.includes(one));
  if (stage === undefined) return null;
  const settings = settingsOf(rule, book, asOf);
  const facts = passingFacts(rule, book, settings, stage, asOf);
  if (facts === null) return null;
  const judged = rule.judges[stage];
  const shared = [...facts].filter(([fact]) => fact !== judged).map(([fact, state]) => [fact, written(fact, state)]);
  const draft = new Draft({ ...rule, casesGive: { ...Object.fromEntries(shared), ...settings }, cases: [] }, book);
  draft.begin(new Map([...facts].filter(([fact]) => fact === judged)), stage, asOf);
  draft.showAll();
  draft.noticeAll();
  return { rule: draft.rule, open: draft.notShown().map(({ what }) => what) };
}

/** The day, and the model of the rulebook where the rule names a fact of models. */
function settingsOf(rule: Rule, book: Rulebook, asOf: PlainDay): Readonly<Record<string, unknown>> {
  const named = JSON.stringify([rule.judges, rule.appliesWhen, rule.limits, [...book.conditions]]);
  return named.includes('"model.') ? { model: book.baselineModel, asOf } : { asOf };
}

class Draft {
  rule: Rule;
  readonly #book: Rulebook;

  constructor(rule: Rule, book: Rulebook) {
    this.rule = rule;
    this.#book = book;
  }

  begin(changes: ReadonlyMap<string, FactState>, stage: Stage, asOf: PlainDay): void {
    const nothing: RuleCase = { name: "", given: {}, expect: "pass", missing: null, at: this.rule.at };
    const [base] = readyCases({ ...this.rule, cases: [nothing] }, this.#book);
    const judgement =
      base && new RuleOnDays(this.rule, this.#book).at(stage, asOf)?.judge(new ChangedFacts(base, changes));
    if (judgement) this.#add(suggestedCase(this.rule, nothing, { asOf, stage, changes, judgement }).written);
  }

  notShown(): readonly Shown[] {
    return coverageOfRule(this.rule, this.#book).filter(({ isShown }) => !isShown);
  }

  /** Adds cases until everything that is asked is shown, as far as that can be found. */
  showAll(): void {
    while (this.rule.cases.length < MOST_CASES) {
      const missing = this.notShown();
      const suggestion = missing.find((one) => one.suggestion !== null)?.suggestion?.written;
      const found = suggestion ?? missing.flatMap((one) => this.#searched(one) ?? [])[0];
      if (!found || !this.#add(found)) return;
    }
  }

  /** Adds cases until every alteration that changes an outcome is noticed. */
  noticeAll(): void {
    for (let round = 0; round < MOST_ROUNDS && this.rule.cases.length < MOST_CASES; round++) {
      const { unnoticed } = alterBook({ ...this.#book, rules: [this.rule] });
      const added = unnoticed.filter(({ suggestion }) => suggestion !== null && this.#add(suggestion.written));
      if (added.length === 0) return;
    }
  }

  /** A case with an outcome that is not shown yet: one fact of a written case changed, then two. */
  #searched({ kind, what }: Shown): WrittenCase | null {
    if (kind !== "outcome") return null;
    const probes = probesOf([this.rule], this.#book);
    const onDays = new RuleOnDays(this.rule, this.#book);
    let tries = 0;
    for (const depth of [1, 2]) {
      for (const base of readyCases(this.rule, this.#book)) {
        const [stage] = base.stages;
        const compiled = stage && onDays.at(stage, base.asOf);
        if (!stage || !compiled) continue;
        const facts = compiled.factsNamed.filter((fact) => fact !== "stage");
        for (const changes of changesOf(base, facts, probes.valuesOf, depth)) {
          if (++tries > MOST_TRIES) return null;
          const judgement = compiled.judge(new ChangedFacts(base, changes));
          if (judgement.outcome !== what) continue;
          return suggestedCase(this.rule, base.written, { asOf: base.asOf, stage, changes, judgement }).written;
        }
      }
    }
    return null;
  }

  /** @returns whether the case is new and holds */
  #add(found: WrittenCase): boolean {
    const one = this.#atEveryStage(found);
    const key = JSON.stringify(Object.entries(one.given).sort());
    if (this.rule.cases.some(({ given }) => JSON.stringify(Object.entries(given).sort()) === key)) return false;
    const named = { ...one, name: this.#freeName(one.name), at: this.rule.at };
    this.rule = { ...this.rule, cases: [...this.rule.cases, named] };
    return true;
  }

  /** A case that comes out alike at every stage of its rule names none. */
  #atEveryStage(found: WrittenCase): WrittenCase {
    const { stage: _, ...given } = found.given;
    const without = { ...found, given, at: this.rule.at };
    const ready = readyCases({ ...this.rule, cases: [without] }, this.#book);
    return isNoticed(new RuleOnDays(this.rule, this.#book), ready) ? found : { ...found, given };
  }

  #freeName(name: string): string {
    const taken = new Set(this.rule.cases.map((one) => one.name.toLowerCase()));
    for (let number = 1; ; number++) {
      const tried = number === 1 ? name : `${name}, ${number}`;
      if (!taken.has(tried.toLowerCase())) return tried;
    }
  }
}
