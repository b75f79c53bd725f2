import type { FactState, Facts } from "../facts/index.js";

/** Facts of a case with some of them changed. */
export class ChangedFacts implements Facts {
  readonly #facts: Facts;
  readonly #changes: ReadonlyMap<string, FactState>;

  constructor(facts: Facts, changes: ReadonlyMap<string, FactState>) {
    this.#facts = facts;
    this.#changes = changes;
  }

  get(id: string): FactState | undefined {
    return this.#changes.get(id) ?? this.#facts.get(id);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    yield* new Map([...this.#facts, ...this.#changes]);
  }
}
