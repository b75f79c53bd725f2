import { cellName, columnLetters } from "../base/index.js";
import type { CellValue, NumberFormat, RawCell, RawRow, ReadingLimits } from "./cells.js";
import type { KeptValues } from "./kept-values.js";
import { orAllowMore } from "./limits.js";
import { PackedCells, PackedRow } from "./packed-cells.js";
import { grouped, quoted, refuse } from "./unreadable.js";

/** Counts the filled cells of a whole workbook against the limit. */
export class CellCount {
  #cells = 0;
  readonly #limit: number;

  constructor(limit: number) {
    this.#limit = limit;
  }

  /** @throws Unreadable past the limit */
  add(): void {
    this.#cells += 1;
    if (this.#cells > this.#limit) {
      refuse(
        "too-many-cells",
        `the workbook holds more than ${grouped(this.#limit)} filled cells, the limit; save the survey sheet alone as a new workbook${orAllowMore("cells")}`,
      );
    }
  }
}

/** Where the rows begin among the cells, as they come in: a row per stretch of cells. */
class Stretches {
  rows = new Int32Array(64);
  starts = new Int32Array(64);
  hidden = new Uint8Array(64);
  length = 0;

  add(row: number, start: number): void {
    if (this.length === this.rows.length) {
      this.rows = widened(this.rows, new Int32Array(2 * this.length));
      this.starts = widened(this.starts, new Int32Array(2 * this.length));
      this.hidden = widened(this.hidden, new Uint8Array(2 * this.length));
    }
    this.rows[this.length] = row;
    this.starts[this.length] = start;
    this.length += 1;
  }

  /** Where the stretch ends, among so many cells. */
  end(index: number, cells: number): number {
    return index + 1 < this.length ? (this.starts[index + 1] ?? 0) : cells;
  }

  /** The stretches by the number of their row; those of one row in the order in which they came. */
  byRow(): Uint32Array {
    const order = Uint32Array.from({ length: this.length }, (_, i) => i);
    return order.sort((a, b) => (this.rows[a] ?? 0) - (this.rows[b] ?? 0) || a - b);
  }
}

function widened<T extends Int32Array | Uint8Array>(from: T, to: T): T {
  to.set(from);
  return to;
}

/**
 * Gathers the filled cells of one sheet. Rows and cells may come in any order; rows between them cost nothing,
 * and only filled cells are held against the limits, since programs write formats far beyond the data.
 */
export class SheetRows {
  readonly #kept: KeptValues;
  readonly #cells: PackedCells;
  readonly #stretches = new Stretches();
  readonly #sheet: string;
  readonly #limits: ReadingLimits;
  readonly #count: CellCount;
  readonly #mostColumns: number;
  #row = 0;
  #lastColumn = 0;
  #hidden = false;
  #inOrder = true;

  constructor(sheet: string, limits: ReadingLimits, count: CellCount, kept: KeptValues) {
    this.#sheet = sheet;
    this.#limits = limits;
    this.#mostColumns = limits.columns;
    this.#count = count;
    this.#kept = kept;
    this.#cells = new PackedCells(kept);
  }

  /** @throws Unreadable if the place is beyond the limits */
  add(row: number, column: number, hidden: boolean, value: CellValue): void {
    this.#take(row, column, hidden);
    this.#cells.push(column, value);
  }

  /** As `add`, for a number. */
  addNumber(row: number, column: number, hidden: boolean, number: number, format: NumberFormat): void {
    this.#take(row, column, hidden);
    this.#cells.pushNumber(column, number, format);
  }

  /** As `add`, for a value by the number under which it is kept. */
  addReference(row: number, column: number, hidden: boolean, reference: number): void {
    this.#take(row, column, hidden);
    this.#cells.pushReference(column, reference);
  }

  /** @throws Unreadable if a cell stands in the sheet twice */
  finish(): readonly RawRow[] {
    if (!this.#inOrder) return this.#sorted();
    const { rows, starts, hidden, length } = this.#stretches;
    const cells = this.#cells;
    return Array.from({ length }, (_, i) => {
      const end = this.#stretches.end(i, cells.length);
      return new PackedRow(rows[i] ?? 0, hidden[i] === 1, cells, starts[i] ?? 0, end);
    });
  }

  #take(row: number, column: number, hidden: boolean): void {
    this.#count.add();
    // Nearly every cell stands in the row of the last one and to its right.
    const isNext = row === this.#row && column > this.#lastColumn && column <= this.#mostColumns;
    if (!isNext || hidden !== this.#hidden) this.#takeApart(row, column, hidden);
    this.#lastColumn = column;
  }

  #takeApart(row: number, column: number, hidden: boolean): void {
    if (row > this.#limits.rows || column > this.#mostColumns) this.#refusePlace(row, column);
    if (row !== this.#row) {
      if (row < this.#row) this.#inOrder = false;
      this.#stretches.add(row, this.#cells.length);
      this.#row = row;
      this.#lastColumn = 0;
    }
    if (column <= this.#lastColumn) this.#inOrder = false;
    this.#hidden = hidden;
    if (hidden) this.#stretches.hidden[this.#stretches.length - 1] = 1;
  }

  /** Brings rows and cells that came in another order into theirs, joining the pieces of a row. */
  #sorted(): readonly RawRow[] {
    const stretches = this.#stretches;
    const order = stretches.byRow();
    const sorted = new PackedCells(this.#kept);
    const rows: RawRow[] = [];
    for (let i = 0; i < order.length; ) {
      const row = stretches.rows[order[i] ?? 0] ?? 0;
      const cells: RawCell[] = [];
      let hidden = false;
      for (; i < order.length && stretches.rows[order[i] ?? 0] === row; i++) {
        const stretch = order[i] ?? 0;
        hidden ||= stretches.hidden[stretch] === 1;
        this.#gather(stretch, row, cells);
      }
      const start = sorted.length;
      for (const { column, value } of this.#inColumnOrder(cells)) sorted.push(column, value);
      rows.push(new PackedRow(row, hidden, sorted, start, sorted.length));
    }
    return rows;
  }

  #gather(stretch: number, row: number, cells: RawCell[]): void {
    const end = this.#stretches.end(stretch, this.#cells.length);
    // Among more cells than columns two stand in one place, however many more there are.
    for (let k = this.#stretches.starts[stretch] ?? 0; k < end && cells.length <= this.#limits.columns; k++) {
      cells.push({ row, column: this.#cells.column(k), value: this.#cells.value(k) });
    }
  }

  #inColumnOrder(cells: readonly RawCell[]): readonly RawCell[] {
    const sorted = [...cells].sort((a, b) => a.column - b.column);
    const twice = sorted.find((cell, i) => cell.column === sorted[i - 1]?.column);
    if (!twice) return sorted;
    return refuse(
      "duplicate-cell",
      `the sheet ${quoted(this.#sheet)} holds cell ${cellName(twice.row, twice.column)} twice, so it cannot be said which one counts; open the workbook in a spreadsheet program, check it and save it again`,
    );
  }

  #refusePlace(row: number, column: number): never {
    if (row > this.#limits.rows) {
      refuse(
        "too-many-rows",
        `the sheet ${quoted(this.#sheet)} has a value in row ${grouped(row)}, beyond the limit of ${grouped(this.#limits.rows)} rows; delete what lies beyond the survey and save it again${orAllowMore("rows")}`,
      );
    }
    return refuse(
      "too-many-columns",
      `the sheet ${quoted(this.#sheet)} has a value in cell ${cellName(row, column)}, beyond the limit of ${grouped(this.#limits.columns)} columns (${columnLetters(this.#limits.columns)}); delete what lies beyond the survey and save it again${orAllowMore("columns")}`,
    );
  }
}
