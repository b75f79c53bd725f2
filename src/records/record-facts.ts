import { type CellPlace, cellName } from "../base/index.js";
import type { FactState, Facts, Said } from "../facts/index.js";

/** A cell by numbers; its name is made only where somebody asks for it. */
export interface CellAt {
  readonly row: number;
  readonly column: number;
}

/** Numbers the facts that the rows of a sheet speak of, and remembers the column in which each usually stands. */
export class FactSlots {
  readonly #slots = new Map<string, number>();
  readonly #facts: string[] = [];
  readonly #columns: number[] = [];

  /** The number of a fact; a new one gets `column` as its usual column. */
  slotOf(fact: string, column: number): number {
    const known = this.#slots.get(fact);
    if (known !== undefined) {
      // A fact that only the site stated so far has no column yet.
      if (this.#columns[known] === 0) this.#columns[known] = column;
      return known;
    }
    this.#slots.set(fact, this.#facts.length);
    this.#columns.push(column);
    return this.#facts.push(fact) - 1;
  }

  find(fact: string): number | undefined {
    return this.#slots.get(fact);
  }

  usualColumn(slot: number): number {
    return this.#columns[slot] ?? 0;
  }

  get facts(): readonly string[] {
    return this.#facts;
  }
}

/**
 * The facts of one row, kept as references to what is said, with the cells that are not where the fact usually
 * stands: a survey of a hundred thousand rows says few different things. States with names of cells are made when
 * they are asked for.
 */
export class RecordFacts implements Facts {
  readonly #sheet: string | null;
  readonly #row: number;
  readonly #slots: FactSlots;
  readonly #said: readonly (Said | undefined)[];
  readonly #elsewhere: ReadonlyMap<number, readonly CellAt[]> | null;

  /**
   * @param said - by slot; a statement of the site stands there with its origin
   * @param elsewhere - cells by slot, where they are not the one of this row in the usual column
   */
  constructor(
    sheet: string | null,
    row: number,
    slots: FactSlots,
    said: readonly (Said | undefined)[],
    elsewhere: ReadonlyMap<number, readonly CellAt[]> | null,
  ) {
    this.#sheet = sheet;
    this.#row = row;
    this.#slots = slots;
    this.#said = said;
    this.#elsewhere = elsewhere;
  }

  has(id: string): boolean {
    return this.said(id) !== undefined;
  }

  said(id: string): Said | undefined {
    const slot = this.#slots.find(id);
    return slot === undefined ? undefined : this.#said[slot];
  }

  get(id: string): FactState | undefined {
    const slot = this.#slots.find(id);
    return slot === undefined ? undefined : this.#stateOf(slot);
  }

  cells(id: string): readonly CellPlace[] {
    const slot = this.#slots.find(id);
    const said = slot === undefined ? undefined : this.#said[slot];
    return slot === undefined || said === undefined || "origin" in said ? [] : this.#cells(slot);
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    for (const [slot, fact] of this.#slots.facts.entries()) {
      const state = this.#stateOf(slot);
      if (state) yield [fact, state];
    }
  }

  #stateOf(slot: number): FactState | undefined {
    const said = this.#said[slot];
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
    return [{ sheet: this.#sheet, cell: cellName(this.#row, this.#slots.usualColumn(slot)) }];
  }
}
