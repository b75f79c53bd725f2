import type { Worksheet } from "exceljs";
import { cellName } from "../../base/index.js";
import type { RawRow, RawSheet } from "../../workbook/index.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { spelledForParts } from "./cell-text.js";
import { columnWidths } from "./column-widths.js";
import { placeMerges } from "./merges.js";
import { type CellMark, commentOn } from "./offending.js";
import { freezeRows, layOutPages, printColumns, repeatRows } from "./pages.js";
import type { ResultColumns, ResultRow } from "./result-columns.js";
import { fitRowHeights } from "./row-heights.js";
import type { Look, styleBook } from "./styles.js";
import { writtenText, writtenValue } from "./survey-value.js";

/** What one sheet of a survey is written from. */
export interface SheetSource {
  readonly raw: RawSheet;
  /** Ours, to the right of the survey's own. */
  readonly columns: ResultColumns;
  readonly dateSystem: 1900 | 1904;
  readonly writtenDateSystem: 1900 | 1904;
  /** Rows of the headings; empty for a sheet that was not read as points. */
  readonly headingRows: readonly number[];
  /** By row; empty for a sheet that was not read as points. */
  readonly results: ReadonlyMap<number, ResultRow>;
  /** By cell. */
  readonly marks: ReadonlyMap<string, CellMark>;
}

const GAP_WIDTH = 2;
/** A taller block of titles would leave no room for the rows under it. */
const MOST_FROZEN_ROWS = 15;

type Styles = ReturnType<typeof styleBook>;

/**
 * Copies a survey sheet, cell by cell at the same addresses, and writes our columns to its right.
 *
 * @param takeComment - asked before each comment; false where no more may be written
 * @returns what could not be shown, in words
 */
export function writeSurveySheet(
  sheet: Worksheet,
  source: SheetSource,
  rules: RuleIndex,
  styles: Styles,
  takeComment: () => boolean,
): readonly string[] {
  const lastColumn = source.raw.rows.reduce((most, row) => Math.max(most, row.cells.at(-1)?.column ?? 0), 1);
  const lastHeading = Math.max(0, ...source.headingRows);
  for (const row of source.raw.rows) writeRow(sheet, row, source, lastHeading, styles);
  markCells(sheet, source, lastColumn, rules, styles, takeComment);
  if (source.results.size > 0 || source.headingRows.length > 0) {
    writeResults(sheet, source, lastColumn + 2, Math.max(1, lastHeading), styles);
  }
  columnWidths(source.raw, lastHeading).forEach((width, index) => {
    sheet.getColumn(index + 1).width = width;
  });
  setUpPages(sheet, source.headingRows, lastHeading);
  if (source.results.size > 0) printColumns(sheet, lastColumn + 1 + source.columns.printed);
  const remarks = placeMerges(sheet, source.raw, lastColumn);
  fitRowHeights(sheet);
  return remarks;
}

function lookOf(row: number, source: SheetSource, lastHeading: number): Pick<Look, "part" | "wrap"> {
  if (source.headingRows.includes(row)) return { part: "heading", wrap: true };
  // Titles and notes around the table run over the empty cells beside them.
  return { part: "survey", wrap: row > lastHeading && source.results.has(row) };
}

function writeRow(sheet: Worksheet, row: RawRow, source: SheetSource, lastHeading: number, styles: Styles): void {
  const look = lookOf(row.row, source, lastHeading);
  const written = sheet.getRow(row.row);
  for (const cell of row.cells) {
    const { value, format } = writtenValue(cell.value, source.dateSystem, source.writtenDateSystem);
    const mark = source.marks.get(cellName(row.row, cell.column))?.outcome;
    const target = written.getCell(cell.column);
    target.value = typeof value === "string" ? spelledForParts(value) : value;
    target.style = styles({
      ...look,
      isNumber: typeof value === "number",
      ...(format === undefined ? {} : { format }),
      ...(mark ? { mark } : {}),
    });
  }
}

function markCells(
  sheet: Worksheet,
  source: SheetSource,
  lastColumn: number,
  rules: RuleIndex,
  styles: Styles,
  takeComment: () => boolean,
): void {
  for (const mark of source.marks.values()) {
    const cell = sheet.getCell(mark.cell);
    // A cell outside the survey's own columns would lie in ours.
    if (Number(cell.col) > lastColumn) continue;
    if (cell.value === null) cell.style = styles({ part: "survey", wrap: true, mark: mark.outcome });
    if (takeComment()) cell.note = { texts: [{ text: spelledForParts(commentOn(mark, rules)) }] };
  }
}

function writeResults(
  sheet: Worksheet,
  source: SheetSource,
  firstColumn: number,
  headingRow: number,
  styles: Styles,
): void {
  sheet.getColumn(firstColumn - 1).width = GAP_WIDTH;
  source.columns.columns.forEach((column, index) => {
    const cell = sheet.getCell(headingRow, firstColumn + index);
    cell.value = column.heading;
    cell.style = styles({ part: "our-heading", wrap: true });
    sheet.getColumn(firstColumn + index).width = column.width;
  });
  for (const [row, result] of source.results) {
    const written = sheet.getRow(row);
    source.columns.textsOf(result).forEach((text, index) => {
      const { value, format } = writtenText(text);
      const cell = written.getCell(firstColumn + index);
      if (value !== "") cell.value = spelledForParts(String(value));
      const part = index === 0 ? "verdict" : "ours";
      cell.style = styles({ part, wrap: true, ...(format === undefined ? {} : { format }) });
    });
  }
}

function setUpPages(sheet: Worksheet, headingRows: readonly number[], lastHeading: number): void {
  if (lastHeading > 0 && lastHeading <= MOST_FROZEN_ROWS) freezeRows(sheet, lastHeading);
  layOutPages(sheet);
  if (lastHeading > 0) repeatRows(sheet, Math.min(...headingRows), lastHeading);
}
