import { cellName, columnLetters } from "../base/index.js";
import type { CellValue, RawCell, RawRow, ReadingLimits } from "./cells.js";
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
        `the workbook holds more than ${grouped(this.#limit)} filled cells, the limit; save the survey sheet alone as a new workbook`,
      );
    }
  }
}

/** A stretch of one row, as it comes in. */
interface Stretch {
  readonly row: number;
  hidden: boolean;
  readonly start: number;
  end: number;
}

/**
 * Gathers the filled cells of one sheet. Rows and cells may come in any order; rows between them cost nothing,
 * and only filled cells are held against the limits, since programs write formats far beyond the data.
 */
export class SheetRows {
  readonly #cells = new PackedCells();
  readonly #stretches: Stretch[] = [];
  readonly #sheet: string;
  readonly #limits: ReadingLimits;
  readonly #count: CellCount;
  #current: Stretch | null = null;
  #lastColumn = 0;
  #inOrder = true;

  constructor(sheet: string, limits: ReadingLimits, count: CellCount) {
    this.#sheet = sheet;
    this.#limits = limits;
    this.#count = count;
  }

  /** @throws Unreadable if the place is beyond the limits */
  add(row: number, column: number, hidden: boolean, value: CellValue): void {
    this.#checkPlace(row, column);
    this.#count.add();
    let current = this.#current;
    if (current?.row !== row) {
      if (row < (current?.row ?? 0)) this.#inOrder = false;
      const start = this.#cells.length;
      current = { row, hidden, start, end: start };
      this.#stretches.push(current);
      this.#current = current;
      this.#lastColumn = 0;
    }
    if (column <= this.#lastColumn) this.#inOrder = false;
    this.#lastColumn = column;
    current.hidden ||= hidden;
    this.#cells.push(column, value);
    current.end += 1;
  }

  /** @throws Unreadable if a cell stands in the sheet twice */
  finish(): readonly RawRow[] {
    if (!this.#inOrder) return this.#inOrderOfPlaces();
    return this.#stretches.map(({ row, hidden, start, end }) => new PackedRow(row, hidden, this.#cells, start, end));
  }

  #inOrderOfPlaces(): readonly RawRow[] {
    const rows = new Map<number, { hidden: boolean; cells: RawCell[] }>();
    for (const { row, hidden, start, end } of this.#stretches) {
      const known = rows.get(row) ?? { hidden: false, cells: [] };
      rows.set(row, known);
      known.hidden ||= hidden;
      known.cells.push(...new PackedRow(row, hidden, this.#cells, start, end).cells);
    }
    const packed = new PackedCells();
    return [...rows]
      .sort(([a], [b]) => a - b)
      .map(([row, { hidden, cells }]) => {
        const start = packed.length;
        for (const { column, value } of this.#sorted(cells)) packed.push(column, value);
        return new PackedRow(row, hidden, packed, start, packed.length);
      });
  }

  #sorted(cells: readonly RawCell[]): readonly RawCell[] {
    const sorted = [...cells].sort((a, b) => a.column - b.column);
    const twice = sorted.find((cell, i) => cell.column === sorted[i - 1]?.column);
    if (!twice) return sorted;
    return refuse(
      "duplicate-cell",
      `the sheet ${quoted(this.#sheet)} holds cell ${cellName(twice.row, twice.column)} twice, so it cannot be said which one counts; open the workbook in a spreadsheet program, check it and save it again`,
    );
  }

  #checkPlace(row: number, column: number): void {
    if (row > this.#limits.rows) {
      refuse(
        "too-many-rows",
        `the sheet ${quoted(this.#sheet)} has a value in row ${grouped(row)}, beyond the limit of ${grouped(this.#limits.rows)} rows; delete what lies beyond the survey and save it again`,
      );
    }
    if (column > this.#limits.columns) {
      refuse(
        "too-many-columns",
        `the sheet ${quoted(this.#sheet)} has a value in cell ${cellName(row, column)}, beyond the limit of ${grouped(this.#limits.columns)} columns (${columnLetters(this.#limits.columns)}); delete what lies beyond the survey and save it again`,
      );
    }
  }
}
