import { cellName, columnLetters, showText } from "../../base/index.js";
import type { RawSheet } from "../../workbook/index.js";
import type { ColumnPlan } from "../headings/columns.js";
import type { PlannedSheet, PlannedTable } from "../headings/plan-sheet.js";
import { note, type SheetContext } from "./sheet-context.js";
import type { ColumnReading, SheetReading } from "./survey.js";

/** What the columns of a table were taken for; says which are not read and which are hidden. */
export function columnReadings(
  raw: RawSheet,
  { table, plan }: PlannedTable,
  read: boolean,
  context: SheetContext,
): readonly ColumnReading[] {
  const row = table.headingRows[table.headingRows.length - 1] ?? 1;
  return plan.map((column) => {
    const hidden = raw.hiddenColumns.has(column.column);
    const cell = cellName(row, column.column);
    if (!column.field && column.word === null)
      note(context, raw, "unknown-heading", cell, `${column.why}; the column is not read`, column.heading);
    if (hidden)
      note(context, raw, "hidden-column", cell, "the column is hidden; it is read like the others", column.heading);
    const numbers = column.field?.kind === "quantity" ? `; numbers: ${column.style.why}` : "";
    return {
      sheet: raw.name,
      column: columnLetters(column.column),
      heading: showText(column.heading, 200),
      facts: read && column.field ? [column.field, ...column.also].map((field) => field.id) : [],
      unit: column.unit?.id ?? column.field?.unit ?? null,
      hidden,
      why: read ? column.why + numbers + accuracyInWhy(column) : "its table names no points and is not read",
    };
  });
}

function accuracyInWhy({ accuracy }: ColumnPlan): string {
  if (!accuracy) return "";
  return accuracy.stated === null ? `; ${accuracy.why}` : `; ${accuracy.stated.words} (${accuracy.why})`;
}

/** How a sheet with headings was taken. */
export function usedSheet({ raw, hidden, tables, language, guide }: PlannedSheet, pointRows: number): SheetReading {
  const headingRows = tables.flatMap(({ table }) => table.headingRows);
  return {
    sheet: raw.name,
    used: true,
    why: guide.headingRows
      ? `headings in row ${headingRows.join(", ")}, by ${guide.headingRows.by}`
      : `headings found in row ${headingRows.join(", ")}`,
    headingRows,
    pointRows,
    hidden,
    language: language.language,
    languageWhy: language.why,
  };
}

/** A sheet from which nothing is read. */
export function unusedSheet({ raw, hidden, guide }: PlannedSheet): SheetReading {
  const empty = raw.rows.length === 0 ? "the sheet is empty" : "no row of headings was found";
  return {
    sheet: raw.name,
    used: false,
    why: guide.leftOut === null ? empty : `left out by ${guide.leftOut}`,
    headingRows: [],
    pointRows: 0,
    hidden,
    language: null,
    languageWhy: "not looked for",
  };
}
