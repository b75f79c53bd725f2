import type { Said } from "../facts/index.js";
import { type CellAt, type FactSlots, RecordFacts } from "./record-facts.js";

/** The facts of one row while they are put together. */
export class RowDraft {
  readonly row: number;
  readonly #slots: FactSlots;
  readonly #said: (Said | undefined)[] = [];
  #elsewhere: Map<number, readonly CellAt[]> | null = null;

  constructor(row: number, slots: FactSlots) {
    this.row = row;
    this.#slots = slots;
  }

  has(fact: string): boolean {
    return this.get(fact) !== undefined;
  }

  get(fact: string): Said | undefined {
    const slot = this.#slots.find(fact);
    return slot === undefined ? undefined : this.#said[slot];
  }

  /** Sets what one cell says. */
  setFrom(fact: string, said: Said, row: number, column: number): void {
    const slot = this.#slots.slotOf(fact, column);
    this.#said[slot] = said;
    if (row !== this.row || column !== this.#slots.usualColumn(slot)) this.#place(slot, [{ row, column }]);
    else this.#elsewhere?.delete(slot);
  }

  /** Sets what several cells say together. */
  setFromAll(fact: string, said: Said, cells: readonly CellAt[]): void {
    const [first] = cells;
    if (!first) throw new RangeError(`no cell says anything of ${fact}`);
    this.setFrom(fact, said, first.row, first.column);
    if (cells.length > 1) this.#place(this.#slots.slotOf(fact, first.column), cells);
  }

  /** Sets a statement of the site, which carries its own origin. */
  state(fact: string, statement: Said): void {
    this.#said[this.#slots.slotOf(fact, 0)] = statement;
  }

  /** The cells that a fact was read from. */
  cellsOf(fact: string): readonly CellAt[] {
    const slot = this.#slots.find(fact);
    if (slot === undefined || this.#said[slot] === undefined || "origin" in this.#said[slot]) return [];
    return this.#elsewhere?.get(slot) ?? [{ row: this.row, column: this.#slots.usualColumn(slot) }];
  }

  /** The facts as a record keeps them. */
  finish(sheet: string | null): RecordFacts {
    return new RecordFacts(sheet, this.row, this.#slots, this.#said, this.#elsewhere);
  }

  #place(slot: number, cells: readonly CellAt[]): void {
    this.#elsewhere ??= new Map();
    this.#elsewhere.set(slot, cells);
  }
}
