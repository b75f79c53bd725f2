import type { CellValue, MergedRange, RawCell, RawRow, RawSheet } from "../../workbook/index.js";
import { isEmptyCell } from "./read-cell.js";

/** A cell by numbers; its name is made only where somebody asks for it. */
export interface CellAt {
  readonly row: number;
  readonly column: number;
}

/** A filled cell as seen from some cell: itself, or the top of the merged range that covers it. */
export interface SeenCell extends CellAt {
  readonly value: CellValue;
}

const HIDDEN_VALUE: CellValue = {
  kind: "unusable",
  why: "the merged cell shows one value and hides another here; unmerge it and correct the wrong one",
};
const ACROSS_COLUMNS: CellValue = {
  kind: "unusable",
  why: "the cell is merged with the columns to its left; unmerge it and write the value of this column",
};

/** Bound on the work that merged ranges may cause; past it they are left out and the sheet says so. */
const MOST_COVERED_CELLS = 2_000_000;

/** Cells of a sheet by row and column, with merged ranges looked through. */
export class Grid {
  readonly rows: readonly RawRow[];
  readonly #rows: ReadonlyMap<number, RawRow>;
  readonly #covered = new Map<number, Map<number, MergedRange>>();
  /** Merged ranges were too many or too wide to look through. */
  readonly mergesLeftOut: boolean;

  constructor(sheet: RawSheet) {
    this.rows = sheet.rows;
    this.#rows = new Map(sheet.rows.map((row) => [row.row, row]));
    this.mergesLeftOut = !this.#spread(sheet.merges);
  }

  /** The cell at its own address, merged or not. */
  own(row: number, column: number): CellValue | undefined {
    const value = this.#rows.get(row)?.at(column);
    return isEmptyCell(value) ? undefined : value;
  }

  /** The text at an address of its own; undefined for anything else. */
  ownText(row: number, column: number): string | undefined {
    const text = this.#rows.get(row)?.textAt(column);
    return text !== undefined && /\S/.test(text) ? text : undefined;
  }

  /** Filled cells of a row in the order of their columns. */
  filled(row: number): ReadonlyMap<number, CellValue> {
    return new Map(this.filledCells(row).map((cell) => [cell.column, cell.value]));
  }

  /** The same as a list. */
  filledCells(row: number): readonly RawCell[] {
    return this.#rows.get(row)?.cells.filter((cell) => !isEmptyCell(cell.value)) ?? [];
  }

  /** The filled cell of a row without merged ranges. */
  alone(row: number, column: number): SeenCell | undefined {
    const value = this.own(row, column);
    return value && { value, row, column };
  }

  /** Whether any cell of a row below its headings may show another cell than itself. */
  isMerged(row: number): boolean {
    return this.#covered.has(row);
  }

  /**
   * The cell as a reader of the sheet sees it below the given row: a covered cell shows the top of its range.
   * A value merged over several columns belongs to the first of them alone, and a value that a merged range hides
   * is not silently taken for the one that it shows.
   */
  seen(row: number, column: number, below: number): SeenCell | undefined {
    const value = this.own(row, column);
    const range = this.#covered.get(row)?.get(column);
    const headed = range === undefined || range.top <= below || (range.top === row && range.left === column);
    const top = headed ? undefined : this.own(range.top, range.left);
    if (top === undefined) return value === undefined ? undefined : { value, row, column };
    if (value !== undefined && shownText(value) !== shownText(top)) return { value: HIDDEN_VALUE, row, column };
    if (range !== undefined && range.left < column) return { value: ACROSS_COLUMNS, row, column };
    return { value: top, row: range?.top ?? row, column };
  }

  /** The heading over a column in a row of headings: its own, or that of the range merged across it. */
  across(row: number, column: number): CellValue | undefined {
    const range = this.#covered.get(row)?.get(column);
    return this.own(row, column) ?? (range ? this.own(range.top, range.left) : undefined);
  }

  /** The merged range that covers the cell without being headed by it. */
  coveredBy(row: number, column: number): MergedRange | undefined {
    return this.#covered.get(row)?.get(column);
  }

  #spread(merges: readonly MergedRange[]): boolean {
    let budget = MOST_COVERED_CELLS;
    const numbers = this.rows.map((row) => row.row);
    for (const range of merges) {
      const first = firstAtOrAbove(numbers, range.top);
      for (let i = first; i < numbers.length; i++) {
        const row = numbers[i] ?? 0;
        if (row > range.bottom) break;
        const covered = this.#covered.get(row) ?? new Map<number, MergedRange>();
        this.#covered.set(row, covered);
        budget -= range.right - range.left + 1;
        if (budget < 0) return false;
        for (let column = range.left; column <= range.right; column++) covered.set(column, range);
      }
    }
    return true;
  }
}

function firstAtOrAbove(sorted: readonly number[], wanted: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What a cell shows as text, for headings and notes. */
export function shownText(value: CellValue | undefined): string {
  switch (value?.kind) {
    case "text":
    case "error":
      return value.text;
    case "number":
      return String(value.number);
    case "boolean":
      return value.boolean ? "true" : "false";
    case "date":
      return value.iso;
    default:
      return "";
  }
}
