import type { CellValue, RawCell } from "../../workbook/index.js";
import { type Grid, shownText } from "../cells/grid.js";
import type { ColumnPlan } from "../headings/columns.js";
import { NAMING_FIELDS } from "../headings/naming-fields.js";
import { rememberedTexts } from "../words/remembered.js";
import type { Vocabulary } from "../words/vocabulary.js";

/** What a row below the headings is: a point, or something that is left out and said so. */
export type RowKind = { readonly point: true } | { readonly point: false; readonly why: string };

const POINT: RowKind = { point: true };

/**
 * Tells rows of points from section rows, totals and notes.
 *
 * @param used - the columns that are read
 * @returns a function of a row and its filled cells, in the order of their columns
 */
export function rowKinds(
  grid: Grid,
  used: readonly ColumnPlan[],
  vocabulary: Vocabulary,
): (row: number, filled: readonly RawCell[]) => RowKind {
  const columnsOf = (test: (field: string) => boolean): ReadonlySet<number> =>
    new Set(used.filter(({ field }) => test(field?.id ?? "")).map(({ column }) => column));
  const readColumns = columnsOf(() => true);
  const idColumns = columnsOf((id) => id === "point_id" || id === "asset_tag");
  const nameColumns = columnsOf((id) => NAMING_FIELDS.has(id));
  const startsTotal = rememberedTexts(vocabulary.startsTotal);
  return (row, filled) => {
    let read = 0;
    for (const { column } of filled) if (readColumns.has(column)) read += 1;
    const [first] = filled;
    if (!first || read === 0) return { point: false, why: "no cell in a column that is read" };
    const { column, value } = first;
    const taken = (what: string): RowKind => ({
      point: false,
      why: `taken as ${what}: "${shownText(value).slice(0, 40)}"`,
    });
    if (value.kind === "text" && startsTotal(value.text) && isTotal(filled, read, readColumns.size)) {
      return taken("a row of totals");
    }
    if (read === 1 && filled.length > 1 && isNameless(grid, row, nameColumns)) {
      return { point: false, why: "one cell that is read, and no name of a point or a machine" };
    }
    if (isColumnNumbers(filled, readColumns.size)) {
      return { point: false, why: "taken as a row that numbers the columns" };
    }
    if (filled.length <= 2 && isNoteMark(value)) return taken("a note");
    if (filled.length === 1 && isSection(grid, row, column, value, readColumns, idColumns)) {
      return taken("a section heading or a note");
    }
    return POINT;
  };
}

/** The lines of a legend beside the table, reaching further down than it. */
function isNameless(grid: Grid, row: number, nameColumns: ReadonlySet<number>): boolean {
  return nameColumns.size > 0 && [...nameColumns].every((column) => grid.seen(row, column, 0) === undefined);
}

/** A word for total in front, numbers behind it; a row with more texts than one beside it tells of a machine. */
function isTotal(filled: readonly RawCell[], read: number, columns: number): boolean {
  const words = filled.slice(1).filter(({ value }) => value.kind === "text" && /\p{L}/u.test(value.text));
  return words.length === 0 || (words.length === 1 && read <= Math.max(2, columns / 2));
}

/** 1, 2, 3, … across the columns, as forms have it under their headings. */
function isColumnNumbers(filled: readonly RawCell[], columns: number): boolean {
  if (filled.length < 3 || filled.length < columns / 2) return false;
  let wanted: number | null = null;
  for (const { value } of filled) {
    const number = Number(shownText(value).replace(/^\((\d{1,3})\)$/, "$1") || Number.NaN);
    if (wanted === null ? number !== 0 && number !== 1 : number !== wanted) return false;
    wanted = number + 1;
  }
  return true;
}

/** "Surveyed by:", "*", "1)": what opens a note or a legend, and no code of a point. */
function isNoteMark(value: CellValue): boolean {
  return value.kind === "text" && /^(?:.{2,60}[:：]|\*{1,3}\)?|[†‡]|\(?[\da-z]\))$/iu.test(value.text.trim());
}

/** One text alone in its row; a code in a column of codes is a point of which nothing else is known. */
function isSection(
  grid: Grid,
  row: number,
  column: number,
  value: CellValue,
  readColumns: ReadonlySet<number>,
  idColumns: ReadonlySet<number>,
): boolean {
  if (value.kind !== "text" || readColumns.size < 3) return false;
  const range = grid.coveredBy(row, column);
  if (range && range.right - range.left >= 2) return true;
  const code = /^\S*\d\S*$/.test(value.text.trim());
  return !(code && idColumns.has(column));
}
