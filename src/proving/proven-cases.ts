import type { PlainDay, Stage } from "../base/index.js";
import {
  type CompiledRule,
  compileRule,
  differenceOf,
  type PreparedCase,
  prepareCase,
  type Rule,
  type Rulebook,
  type RuleCase,
} from "../rulebook/index.js";

/** The parts of a rulebook by which rules are judged. */
export type Book = Pick<Rulebook, "conditions" | "models" | "tables">;

/** A case of a rule, ready to be judged by altered forms of the rule. */
export interface ReadyCase extends PreparedCase {
  readonly written: RuleCase;
}

/** The cases of a rule, each prepared once. */
export function readyCases(rule: Rule, book: Book): readonly ReadyCase[] {
  return rule.cases.map((written) => ({ written, ...prepareCase(rule, written, book) }));
}

/** A rule, compiled once for each stage and day at which it is asked. */
export class RuleOnDays {
  readonly #rule: Rule;
  readonly #book: Book;
  readonly #compiled = new Map<string, CompiledRule | null>();

  constructor(rule: Rule, book: Book) {
    this.#rule = rule;
    this.#book = book;
  }

  /** Null where the rule is not for the stage. */
  at(stage: Stage, asOf: PlainDay): CompiledRule | null {
    const key = `${stage} ${asOf}`;
    const known = this.#compiled.get(key);
    if (known !== undefined) return known;
    const fresh = compileRule(this.#rule, this.#book, { stage, asOf });
    this.#compiled.set(key, fresh);
    return fresh;
  }
}

/** Whether any case comes out otherwise than it expects. */
export function isNoticed(rule: RuleOnDays, cases: readonly ReadyCase[]): boolean {
  return cases.some(({ stages, asOf, facts, written }) =>
    stages.some((stage) => {
      const compiled = rule.at(stage, asOf);
      return compiled === null || differenceOf(compiled.judge(facts), written) !== null;
    }),
  );
}
