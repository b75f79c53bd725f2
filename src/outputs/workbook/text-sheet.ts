import type { Worksheet } from "exceljs";
import { spelledForParts } from "./cell-text.js";
import { fitRowHeights } from "./row-heights.js";
import type { Look, styleBook } from "./styles.js";
import { writtenText } from "./survey-value.js";

/** One row of a sheet of our own. */
export interface TextRow {
  readonly part: Look["part"];
  readonly cells: readonly (string | number)[];
}

export function titleRow(text: string): TextRow {
  return { part: "title", cells: [text] };
}

export function headingRow(...cells: readonly string[]): TextRow {
  return { part: "our-heading", cells };
}

export function bodyRow(...cells: readonly (string | number)[]): TextRow {
  return { part: "ours", cells };
}

/** An empty row between two blocks. */
export const BLANK_ROW: TextRow = { part: "ours", cells: [] };

/** Writes rows from the top; texts never become formulas, numbers stay numbers. */
export function writeTextSheet(
  sheet: Worksheet,
  widths: readonly number[],
  rows: readonly TextRow[],
  styles: ReturnType<typeof styleBook>,
): void {
  widths.forEach((width, index) => {
    sheet.getColumn(index + 1).width = width;
  });
  rows.forEach((row, index) => {
    const written = sheet.getRow(index + 1);
    row.cells.forEach((content, column) => {
      if (content === "" && row.part === "ours") return;
      const cell = written.getCell(column + 1);
      const { value, format } = typeof content === "string" ? writtenText(content) : { value: content };
      if (value !== "") cell.value = typeof value === "string" ? spelledForParts(value) : value;
      // A title runs over the cells beside it.
      const wrap = row.part !== "title";
      cell.style = styles({ part: row.part, wrap, ...(format === undefined ? {} : { format }) });
    });
  });
  fitRowHeights(sheet);
}
