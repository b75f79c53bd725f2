import type { CellValue } from "../workbook/index.js";
import { type Grid, shownText } from "./grid.js";
import type { Vocabulary } from "./vocabulary.js";

/** What a row below the headings is: a point, or something that is left out and said so. */
export type RowKind = { readonly point: true } | { readonly point: false; readonly why: string };

const POINT: RowKind = { point: true };

/**
 * Tells rows of points from section rows, totals and notes.
 *
 * @param readColumns - columns that are read for a field
 * @param idColumns - columns of point ids and asset tags
 * @param nameColumns - columns that name points or machines
 */
export function rowKind(
  grid: Grid,
  row: number,
  readColumns: ReadonlySet<number>,
  idColumns: ReadonlySet<number>,
  nameColumns: ReadonlySet<number>,
  vocabulary: Vocabulary,
): RowKind {
  const filled = grid.filled(row);
  const read = [...filled.keys()].filter((column) => readColumns.has(column));
  if (read.length === 0) return { point: false, why: "no cell in a column that is read" };
  const [first] = filled;
  if (!first) return { point: false, why: "empty" };
  const [column, value] = first;
  const text = shownText(value);
  if (isTotal([...filled.values()], read.length, readColumns.size, vocabulary)) {
    return { point: false, why: `taken as a row of totals: "${text.slice(0, 40)}"` };
  }
  if (read.length === 1 && filled.size > 1 && isNameless(grid, row, nameColumns)) {
    return { point: false, why: "one cell that is read, and no name of a point or a machine" };
  }
  if (isColumnNumbers(filled, readColumns.size))
    return { point: false, why: "taken as a row that numbers the columns" };
  if (filled.size <= 2 && isNoteMark(value)) {
    return { point: false, why: `taken as a note: "${text.slice(0, 40)}"` };
  }
  if (filled.size === 1 && isSection(grid, row, column, value, readColumns, idColumns)) {
    return { point: false, why: `taken as a section heading or a note: "${text.slice(0, 40)}"` };
  }
  return POINT;
}

/** The lines of a legend beside the table, reaching further down than it. */
function isNameless(grid: Grid, row: number, nameColumns: ReadonlySet<number>): boolean {
  return nameColumns.size > 0 && [...nameColumns].every((column) => grid.seen(row, column, 0) === undefined);
}

/** A word for total in front, numbers behind it; a row with more texts than one beside it tells of a machine. */
function isTotal(values: readonly CellValue[], filled: number, columns: number, vocabulary: Vocabulary): boolean {
  const [first, ...others] = values;
  if (first?.kind !== "text" || !vocabulary.startsTotal(first.text)) return false;
  const words = others.filter((value) => value.kind === "text" && /\p{L}/u.test(value.text));
  return words.length === 0 || (words.length === 1 && filled <= Math.max(2, columns / 2));
}

/** 1, 2, 3, … across the columns, as forms have it under their headings. */
function isColumnNumbers(filled: ReadonlyMap<number, CellValue>, columns: number): boolean {
  if (filled.size < 3 || filled.size < columns / 2) return false;
  let wanted: number | null = null;
  for (const value of filled.values()) {
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
