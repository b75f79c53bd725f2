import type { ColumnUnderstood, SheetUnderstood, SurveyUnderstood } from "../../records/index.js";
import { jsonText } from "../json/json-text.js";

/** How a survey is understood, as one JSON document that ends in a line break. */
export function columnsJson({ file, sheets, reading }: SurveyUnderstood): string {
  return `${jsonText({
    file,
    digest: reading.ok ? reading.survey.digest : null,
    points: reading.ok ? reading.survey.records.length : 0,
    unreadable: reading.ok ? null : reading.text,
    sheets: sheets.map(sheetShape),
    problems: reading.ok ? reading.survey.problems : [],
  })}\n`;
}

function sheetShape(sheet: SheetUnderstood): { readonly [K in keyof SheetUnderstood]: unknown } {
  return {
    sheet: sheet.sheet,
    hidden: sheet.hidden,
    why: sheet.why,
    leftOut: sheet.leftOut,
    language: sheet.language,
    languageWhy: sheet.languageWhy,
    tables: sheet.tables.map((table) => ({ ...table, columns: table.columns.map(columnShape) })),
    likely: sheet.likely === null ? null : { row: sheet.likely.row, columns: sheet.likely.columns.map(columnShape) },
  };
}

/** Everything but the names, which only serve to find the column again. */
function columnShape({ names: _, ...column }: ColumnUnderstood): { readonly [key: string]: unknown } {
  return { ...column, accuracy: accuracyShape(column.accuracy), ownWords: Object.fromEntries(column.ownWords) };
}

function accuracyShape(accuracy: ColumnUnderstood["accuracy"]): { readonly [key: string]: unknown } | null {
  if (accuracy === null) return null;
  const { stated, why } = accuracy;
  return {
    plusMinus: stated?.accuracy.plusMinus ?? null,
    percent: stated?.accuracy.percent ?? null,
    way: stated?.way ?? null,
    words: stated?.words ?? null,
    why,
  };
}
