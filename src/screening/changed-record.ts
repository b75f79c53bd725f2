import type { CellPlace } from "../base/index.js";
import type { FactState, Facts, FactValue, Said } from "../facts/index.js";

/** A fact as it would be if somebody changed it: certain, and standing in no cell. */
export function supposed(value: FactValue): FactState {
  return { known: true, value, origin: { kind: "none" } };
}

/**
 * What a record would say if some of its facts were others: the ground for "would another method do?" and "how deep
 * would be deep enough?". Everything else of the record stays as it is, cells included.
 */
export class ChangedRecord implements Facts {
  readonly #record: Facts;
  readonly #changes: ReadonlyMap<string, FactState>;

  /** @param changes - by id of a survey fact */
  constructor(record: Facts, changes: ReadonlyMap<string, FactState>) {
    this.#record = record;
    this.#changes = changes;
  }

  get(id: string): FactState | undefined {
    return this.#changes.get(id) ?? this.#record.get(id);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  said(id: string): Said | undefined {
    return this.#changes.get(id) ?? (this.#record.said ? this.#record.said(id) : this.#record.get(id));
  }

  cells(id: string): readonly CellPlace[] {
    if (this.#changes.has(id)) return [];
    if (this.#record.cells) return this.#record.cells(id);
    const origin = this.#record.get(id)?.origin;
    return origin?.kind === "cells" ? origin.cells : [];
  }

  get family(): number | undefined {
    return this.#record.family;
  }

  sameness(id: string): number {
    const change = this.#changes.get(id);
    return change ? samenessOf(change) : (this.#record.sameness?.(id) ?? 0);
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    for (const [id, state] of this.#record) yield [id, this.#changes.get(id) ?? state];
    for (const [id, state] of this.#changes) if (!this.#record.has(id)) yield [id, state];
  }
}

/** Supposed values are few; the numbers of a record are above 0, so that those below it are free for them. */
const numbers = new Map<string, number>();

function samenessOf({ origin: _, ...said }: FactState): number {
  const key = JSON.stringify(said);
  const known = numbers.get(key) ?? -1 - numbers.size;
  numbers.set(key, known);
  return known;
}
