import type { CellValue, RawSheet } from "../../workbook/index.js";

const NARROWEST = 6;
const WIDEST = 16;
const KEPT_WHOLE = 13;
const ROWS_LOOKED_AT = 500;

/** Widths, in characters, in which most of a survey can be read; longer texts are wrapped. */
export function columnWidths(sheet: RawSheet, lastHeading: number): readonly number[] {
  const widths: number[] = [];
  const wider = (column: number, width: number) => {
    widths[column - 1] = Math.max(widths[column - 1] ?? NARROWEST, Math.min(WIDEST, width));
  };
  for (const row of sheet.rows.slice(0, ROWS_LOOKED_AT)) {
    // Titles above the headings run over; they must not make their column wide. Dates and numbers do not run over.
    const titles = row.row < lastHeading - 1;
    for (const cell of row.cells) {
      if (titles && cell.value.kind === "text") continue;
      wider(cell.column, lengthOf(cell.value, row.row <= lastHeading) + 1);
    }
  }
  return Array.from(widths, (width) => width ?? NARROWEST);
}

function lengthOf(value: CellValue, heading: boolean): number {
  switch (value.kind) {
    case "text":
      if (heading) return longestWord(value.text);
      // Tags and short words stay on one line.
      if (value.text.length <= KEPT_WHOLE) return value.text.length;
      return Math.max(longestWord(value.text), Math.ceil(value.text.length / 2));
    case "number":
      if (value.format === "general") return Math.min(10, String(value.number).length);
      return value.format === "date" && !Number.isInteger(value.number) ? 15 : 10;
    case "date":
      return value.iso.length > 10 ? 15 : 10;
    default:
      return 8;
  }
}

function longestWord(text: string): number {
  return Math.max(
    ...text
      .slice(0, 500)
      .split(/[\s/-]+/)
      .map((word) => word.length),
  );
}
