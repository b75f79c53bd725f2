import type { Worksheet } from "exceljs";
import type { FactKind, Language } from "../../facts/index.js";
import { layOutPages } from "../workbook/pages.js";
import type { styleBook } from "../workbook/styles.js";
import { BLANK_ROW, bodyRow, headingRow, type TextRow, titleRow, writeTextSheet } from "../workbook/text-sheet.js";
import { type BlankColumn, placesOf } from "./columns.js";
import { exampleOf } from "./example.js";
import { adviceOn } from "./input-checks.js";
import { type BlankTexts, filled } from "./texts/blank-texts.js";

const WIDTHS = [34, 78, 50];

/**
 * Writes the legend: every column, an example and the cautions. The importer must not take it for a table of points,
 * nor the example for a point. It takes a row for headings where its cells name two fields; a row here has at most
 * three texts, and a heading stands with its place behind it, so that none of them is a listed heading as a whole.
 */
export function writeLegend(
  sheet: Worksheet,
  columns: readonly BlankColumn[],
  language: Language,
  texts: BlankTexts,
  styles: ReturnType<typeof styleBook>,
): void {
  const { legend } = texts;
  const named = columns.map((column) => ({
    column,
    name: filled(legend.place, placesOf(column, language)),
  }));
  const rows: TextRow[] = [
    titleRow(legend.title),
    BLANK_ROW,
    ...texts.howTo.map((line) => bodyRow("", line)),
    BLANK_ROW,
    headingRow(...legend.columns),
    ...named.map(({ column, name }) => bodyRow(name, adviceOn(column, texts), takenBy(column, language, texts))),
    BLANK_ROW,
    titleRow(legend.examples),
    ...named.map(({ column, name }) => bodyRow(name, exampleOf(column, language, texts))),
    BLANK_ROW,
    titleRow(legend.cautions),
    ...texts.cautions.map((caution, i) => bodyRow(`${i + 1}`, caution)),
  ];
  writeTextSheet(sheet, WIDTHS, rows, styles);
  layOutPages(sheet);
}

function takenBy(column: BlankColumn, language: Language, texts: BlankTexts): string {
  const places = placesOf(column, language);
  if (column.words.size > 0) return filled(texts.takes.words, places);
  const bounded = column.field.plausible !== undefined;
  const byKind: Partial<Record<FactKind, string>> = {
    ...(bounded ? { quantity: texts.takes.number, count: texts.takes.count } : {}),
    date: texts.takes.date,
  };
  return filled(byKind[column.field.kind] ?? texts.takes.text, places);
}
