import type { FactState, Facts } from "../facts/index.js";
import type { PreparedCase } from "../rulebook/index.js";

/** Facts of a case with some of them changed; what tables give follows the change. */
export class ChangedFacts implements Facts {
  readonly #base: Pick<PreparedCase, "given" | "tables">;
  readonly #changes: ReadonlyMap<string, FactState>;

  constructor(base: Pick<PreparedCase, "given" | "tables">, changes: ReadonlyMap<string, FactState>) {
    this.#base = base;
    this.#changes = changes;
  }

  get(id: string): FactState | undefined {
    return this.#changes.get(id) ?? this.#base.given.get(id) ?? this.#base.tables.get(id, this);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    yield* new Map([...this.#base.given, ...this.#changes]);
  }
}
