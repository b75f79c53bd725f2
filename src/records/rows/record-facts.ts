import { type CellPlace, cellName } from "../../base/index.js";
import type { AskedFacts, FactState, Facts, Said } from "../../facts/index.js";
import type { CellAt } from "../cells/grid.js";
import type { FactStore } from "./fact-store.js";

/** Cells by slot, where they are not the one of the row in the usual column of the fact. */
export type Elsewhere = ReadonlyMap<number, readonly CellAt[]>;

/** The facts of one row. States with names of cells are made when they are asked for. */
export class RecordFacts implements Facts {
  readonly #store: FactStore;
  readonly #at: number;
  readonly #slots: number;
  readonly #sheet: string | null;
  readonly #row: number;
  readonly #elsewhere: Elsewhere | null;

  /** @param said - by slot; a statement of the site stands there with its origin */
  constructor(
    store: FactStore,
    said: readonly (Said | undefined)[],
    place: { readonly sheet: string | null; readonly row: number; readonly elsewhere: Elsewhere | null },
  ) {
    this.#store = store;
    this.#at = store.keep(said);
    this.#slots = store.facts.length;
    this.#sheet = place.sheet;
    this.#row = place.row;
    this.#elsewhere = place.elsewhere;
  }

  has(id: string): boolean {
    return this.said(id) !== undefined;
  }

  get family(): number {
    return this.#store.id;
  }

  sameness(id: string): number {
    const slot = this.#store.find(id);
    return slot === undefined || slot >= this.#slots ? 0 : this.#store.number(this.#at + slot);
  }

  samenesses(asked: AskedFacts, into: Int32Array, at: number): number {
    const slots = this.#store.slotsOf(asked);
    for (let i = 0; i < slots.length; i++) {
      const slot = slots[i] as number;
      into[at + i] = slot < this.#slots ? this.#store.number(this.#at + slot) : 0;
    }
    return at + slots.length;
  }

  said(id: string): Said | undefined {
    const slot = this.#store.find(id);
    return slot === undefined ? undefined : this.#saidIn(slot);
  }

  get(id: string): FactState | undefined {
    const slot = this.#store.find(id);
    return slot === undefined ? undefined : this.#stateOf(slot);
  }

  cells(id: string): readonly CellPlace[] {
    const slot = this.#store.find(id);
    const said = slot === undefined ? undefined : this.#saidIn(slot);
    return slot === undefined || said === undefined || "origin" in said ? [] : this.#cells(slot);
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    for (const [slot, fact] of this.#store.facts.entries()) {
      const state = this.#stateOf(slot);
      if (state) yield [fact, state];
    }
  }

  #saidIn(slot: number): Said | undefined {
    return slot < this.#slots ? this.#store.said(this.#at + slot) : undefined;
  }

  #stateOf(slot: number): FactState | undefined {
    const said = this.#saidIn(slot);
    if (said === undefined || "origin" in said) return said as FactState | undefined;
    const origin = { kind: "cells", cells: this.#cells(slot) } as const;
    if (!said.known) return { known: false, reason: said.reason, origin };
    const { value, accuracy, assumed } = said;
    return {
      known: true,
      value,
      ...(accuracy === undefined ? {} : { accuracy }),
      ...(assumed === undefined ? {} : { assumed }),
      origin,
    };
  }

  #cells(slot: number): readonly CellPlace[] {
    const cells = this.#elsewhere?.get(slot);
    if (cells) return cells.map(({ row, column }) => ({ sheet: this.#sheet, cell: cellName(row, column) }));
    return [{ sheet: this.#sheet, cell: cellName(this.#row, this.#store.usualColumn(slot)) }];
  }
}
