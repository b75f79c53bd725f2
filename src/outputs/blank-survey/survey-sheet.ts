import type { Worksheet } from "exceljs";
import { columnLetters, type Stage } from "../../base/index.js";
import type { Language } from "../../facts/index.js";
import { layOutPages, pagesWide, repeatRows } from "../workbook/pages.js";
import { fitRowHeights } from "../workbook/row-heights.js";
import type { styleBook } from "../workbook/styles.js";
import type { BlankColumn } from "./columns.js";
import { inputCheck } from "./input-checks.js";
import { checksOf, lookOf, readyStyles, widthOf } from "./ready-cells.js";
import type { BlankTexts } from "./texts/blank-texts.js";

/** Rows that are ready to be filled in. */
const READY_ROWS = 500;
const PAGES_WIDE = 2;
/** Columns that stay in sight, on paper too: point and machine. */
const KEPT_IN_SIGHT = 2;

/** What the survey sheet is written from. */
export interface SurveySource {
  readonly columns: readonly BlankColumn[];
  /** Range that holds the words of a column, by fact id. */
  readonly lists: ReadonlyMap<string, string>;
  readonly language: Language;
  readonly stage: Stage;
  readonly texts: BlankTexts;
}

/** Writes title, headings and the empty rows with their formats, lists, checks and messages. */
export function writeSurvey(sheet: Worksheet, source: SurveySource, styles: ReturnType<typeof styleBook>): void {
  const { columns, texts, stage } = source;
  const lines = [texts.title[stage], ...texts.howTo];
  lines.forEach((line, i) => {
    // Right of the columns that stay in sight: on every further page these would show a torn-off beginning.
    const cell = sheet.getCell(i + 1, KEPT_IN_SIGHT + 1);
    cell.value = line;
    cell.style = styles({ part: i === 0 ? "title" : "survey", wrap: false });
  });
  const headingRow = lines.length + 2;
  const first = headingRow + 1;
  const last = headingRow + READY_ROWS;
  columns.forEach((column, i) => {
    sheet.getColumn(i + 1).width = widthOf(column);
    const cell = sheet.getCell(headingRow, i + 1);
    cell.value = column.heading;
    cell.style = styles({ part: "our-heading", wrap: true });
  });
  fitRowHeights(sheet);
  const ready = readyStyles();
  for (let row = first; row <= last; row++) {
    columns.forEach((column, i) => {
      const opensGroup = i > 0 && columns[i - 1]?.field.group !== column.field.group;
      sheet.getCell(row, i + 1).style = ready(lookOf(column), opensGroup);
    });
  }
  for (const column of columns) {
    const check = inputCheck(
      column,
      `${column.letter}${first}`,
      source.lists.get(column.field.id) ?? null,
      source.language,
      texts,
    );
    checksOf(sheet).add(`${column.letter}${first}:${column.letter}${last}`, check);
  }
  sheet.views = [{ state: "frozen", xSplit: KEPT_IN_SIGHT, ySplit: headingRow }];
  layOutPages(sheet);
  // All columns beside each other on one page would be too small to write in.
  sheet.pageSetup.fitToWidth = Math.max(PAGES_WIDE, pagesWide(sheet));
  sheet.pageSetup.printTitlesColumn = `A:${columnLetters(KEPT_IN_SIGHT)}`;
  repeatRows(sheet, headingRow, headingRow);
}
