import type { Worksheet } from "exceljs";
import { columnLetters } from "../../base/index.js";

const A4 = 9;
// The type of the library does not list this size; the file format does (ISO/IEC 29500-1, paperSize).
const A3 = 8;
/** Wider sheets, in characters, would be too small to read on A4. */
const WIDEST_ON_A4 = 300;

/** Landscape A4 (A3 for a very wide sheet), as wide as one page, with a footer that says what the sheet is not. */
export function layOutPages(sheet: Worksheet): void {
  Object.assign(sheet.pageSetup, {
    paperSize: widthOf(sheet) > WIDEST_ON_A4 ? A3 : A4,
    orientation: "landscape",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
  });
  sheet.headerFooter.oddFooter = "&L&8a screening, not a permission&C&8&A&R&8&P / &N";
}

/** Keeps the rows down to `last` in sight. */
export function freezeRows(sheet: Worksheet, last: number): void {
  sheet.views = [{ state: "frozen", xSplit: 0, ySplit: last }];
}

/** Repeats rows on every printed page. */
export function repeatRows(sheet: Worksheet, first: number, last: number): void {
  // The writing library does not escape an apostrophe in the reference that this needs.
  if (!sheet.name.includes("'")) sheet.pageSetup.printTitlesRow = `${first}:${last}`;
}

/** Prints the columns down to `last` only; what stands further right is for the screen. */
export function printColumns(sheet: Worksheet, last: number): void {
  // The library puts a dollar sign before the columns alone; rows without one would move with the cursor.
  const area = `A$1:${columnLetters(last)}$${Math.max(1, sheet.rowCount)}`;
  if (!sheet.name.includes("'")) sheet.pageSetup.printArea = area;
  if (widthOf(sheet, last) <= WIDEST_ON_A4) sheet.pageSetup.paperSize = A4;
}

/** How many pages side by side show a very wide sheet in letters that can be read. */
export function pagesWide(sheet: Worksheet): number {
  return Math.ceil(widthOf(sheet) / WIDEST_ON_A4);
}

function widthOf(sheet: Worksheet, last: number = sheet.columnCount): number {
  let width = 0;
  for (let column = 1; column <= last; column++) width += sheet.getColumn(column).width ?? 9;
  return width;
}
