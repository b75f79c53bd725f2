import { cellName, columnLetters } from "../base/index.js";
import type { CellValue, RawCell, RawRow, ReadingLimits } from "./cells.js";
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

interface OpenRow {
  readonly row: number;
  hidden: boolean;
  readonly cells: RawCell[];
}

/**
 * Gathers the filled cells of one sheet. Rows and cells may come in any order; rows between them cost nothing,
 * and only filled cells are held against the limits, since programs write formats far beyond the data.
 */
export class SheetRows {
  readonly #rows = new Map<number, OpenRow>();
  readonly #sheet: string;
  readonly #limits: ReadingLimits;
  readonly #count: CellCount;
  #current: OpenRow | null = null;
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
    const open = this.#rowAt(row);
    open.hidden ||= hidden;
    const before = open.cells.at(-1)?.column ?? 0;
    if (column <= before) this.#inOrder = false;
    open.cells.push({ row, column, value });
  }

  /** @throws Unreadable if a cell stands in the sheet twice */
  finish(): readonly RawRow[] {
    const rows = [...this.#rows.values()];
    if (!this.#inOrder) {
      rows.sort((a, b) => a.row - b.row);
      for (const row of rows) this.#sortCells(row);
    }
    return rows;
  }

  #rowAt(row: number): OpenRow {
    if (this.#current?.row === row) return this.#current;
    if (row < (this.#current?.row ?? 0)) this.#inOrder = false;
    const open = this.#rows.get(row) ?? { row, hidden: false, cells: [] };
    this.#rows.set(row, open);
    this.#current = open;
    return open;
  }

  #sortCells(row: OpenRow): void {
    row.cells.sort((a, b) => a.column - b.column);
    const twice = row.cells.find((cell, i) => cell.column === row.cells[i - 1]?.column);
    if (!twice) return;
    refuse(
      "duplicate-cell",
      `the sheet ${quoted(this.#sheet)} holds cell ${cellName(row.row, twice.column)} twice, so it cannot be said which one counts; open the workbook in a spreadsheet program, check it and save it again`,
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
