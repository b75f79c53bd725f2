import type { DataValidation, Style, Worksheet } from "exceljs";
import { columnLetters, type Stage } from "../../base/index.js";
import { isNumeric, type Language } from "../../facts/index.js";
import { layOutPages, pagesWide, repeatRows } from "../workbook/pages.js";
import { fitRowHeights } from "../workbook/row-heights.js";
import type { styleBook } from "../workbook/styles.js";
import type { BlankColumn } from "./columns.js";
import { inputCheck } from "./input-checks.js";
import type { BlankTexts } from "./texts/blank-texts.js";

/** Rows that are ready to be filled in. */
const READY_ROWS = 500;
const PAGES_WIDE = 2;
/** Columns that stay in sight, on paper too: point and machine. */
const KEPT_IN_SIGHT = 2;
const NARROWEST = 8;
const WIDEST = 32;
const TEXT_WIDTHS: Readonly<Record<string, number>> = { text: 16, identifier: 14, designation: 12, date: 12 };
/** Room for the arrow of a drop-down list. */
const ARROW = 3;

type ReadyLook = "text" | "date" | "number" | "word";
const FORMATS: Readonly<Record<ReadyLook, string | undefined>> = {
  text: "@",
  date: "yyyy-mm-dd",
  number: undefined,
  word: undefined,
};
const LINE = { style: "thin", color: { argb: "FFB4B4B0" } } as const;
const GROUP_LINE = { style: "medium", color: { argb: "FF6E6E6A" } } as const;

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

/** The library has checks of whole ranges, but does not say so in its types. */
function checksOf(sheet: Worksheet): { add(range: string, check: DataValidation): void } {
  return (sheet as Worksheet & { readonly dataValidations: { add(range: string, check: DataValidation): void } })
    .dataValidations;
}

/** Texts are kept as typed ("1-2" is no day, "0017" no number); words and numbers are not forced into anything. */
function lookOf({ field, words }: BlankColumn): ReadyLook {
  if (field.kind === "date") return "date";
  if (isNumeric(field)) return "number";
  return words.size > 0 ? "word" : "text";
}

function readyStyles(): (look: ReadyLook, opensGroup: boolean) => Partial<Style> {
  const made = new Map<string, Partial<Style>>();
  return (look, opensGroup) => {
    const key = `${look}|${opensGroup}`;
    const known = made.get(key);
    if (known) return known;
    const numFmt = FORMATS[look];
    const style: Partial<Style> = {
      font: { name: "Calibri", family: 2, size: 10 },
      alignment: {
        vertical: "top",
        ...(look === "number" || look === "date" ? { horizontal: "right", indent: 1 } : { wrapText: true }),
      },
      border: { top: LINE, bottom: LINE, right: LINE, left: opensGroup ? GROUP_LINE : LINE },
      ...(numFmt === undefined ? {} : { numFmt }),
    };
    made.set(key, style);
    return style;
  };
}

function widthOf({ field, heading, words }: BlankColumn): number {
  const longestWord = Math.max(...heading.split(/[\s/]+/).map((word) => word.length)) + 3;
  const longestChoice = Math.max(0, ...[...words.values()].map((word) => word.length + ARROW));
  const wanted = Math.max(NARROWEST, longestWord, longestChoice, TEXT_WIDTHS[field.kind] ?? 0);
  return Math.min(WIDEST, wanted);
}
