import type { Said } from "../../facts/index.js";
import type { CellAt } from "../cells/grid.js";
import type { FactStore } from "./fact-store.js";
import { RecordFacts } from "./record-facts.js";

/** The facts of one row while they are put together; used anew for every row of a table. */
export class RowDraft {
  #row = 0;
  readonly #store: FactStore;
  readonly #said: (Said | undefined)[] = [];
  #elsewhere: Map<number, readonly CellAt[]> | null = null;

  constructor(store: FactStore) {
    this.#store = store;
  }

  /** Starts over for another row. */
  begin(row: number): void {
    this.#row = row;
    this.#said.fill(undefined);
    this.#elsewhere = null;
  }

  has(fact: string): boolean {
    return this.get(fact) !== undefined;
  }

  get(fact: string): Said | undefined {
    const slot = this.#store.find(fact);
    return slot === undefined ? undefined : this.#said[slot];
  }

  /** Sets what one cell says. */
  setFrom(fact: string, said: Said, row: number, column: number): void {
    const slot = this.#store.slotOf(fact, column);
    this.#said[slot] = said;
    if (row !== this.#row || column !== this.#store.usualColumn(slot)) this.#place(slot, [{ row, column }]);
    else this.#elsewhere?.delete(slot);
  }

  /** Sets what several cells say together. */
  setFromAll(fact: string, said: Said, cells: readonly CellAt[]): void {
    const [first] = cells;
    if (!first) throw new RangeError(`no cell says anything of ${fact}`);
    this.setFrom(fact, said, first.row, first.column);
    if (cells.length > 1) this.#place(this.#store.slotOf(fact, first.column), cells);
  }

  /** Sets a statement of the site, which carries its own origin. */
  state(fact: string, statement: Said): void {
    this.#said[this.#store.slotOf(fact, 0)] = statement;
  }

  /** Says the same fact otherwise, from the same cells. */
  restate(fact: string, said: Said): void {
    const slot = this.#store.find(fact);
    if (slot !== undefined) this.#said[slot] = said;
  }

  /** The cells that a fact was read from. */
  cellsOf(fact: string): readonly CellAt[] {
    const slot = this.#store.find(fact);
    if (slot === undefined || this.#said[slot] === undefined || "origin" in this.#said[slot]) return [];
    return this.#elsewhere?.get(slot) ?? [{ row: this.#row, column: this.#store.usualColumn(slot) }];
  }

  /** The facts as a record keeps them. */
  finish(sheet: string | null): RecordFacts {
    return new RecordFacts(this.#store, this.#said, { sheet, row: this.#row, elsewhere: this.#elsewhere });
  }

  #place(slot: number, cells: readonly CellAt[]): void {
    this.#elsewhere ??= new Map();
    this.#elsewhere.set(slot, cells);
  }
}
