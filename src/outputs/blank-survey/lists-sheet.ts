import type { Worksheet } from "exceljs";
import type { BlankColumn } from "./columns.js";

/**
 * Writes the words of the drop-down lists, all in one column: a row with one cell is never taken for headings.
 *
 * @returns the range that holds the words of a column, by fact id
 */
export function writeLists(
  sheet: Worksheet,
  columns: readonly BlankColumn[],
  title: string,
): ReadonlyMap<string, string> {
  sheet.getColumn(1).width = 40;
  sheet.getCell(1, 1).value = title;
  const ranges = new Map<string, string>();
  let row = 3;
  for (const { field, words } of columns) {
    if (words.size === 0) continue;
    const first = row;
    for (const word of words.values()) sheet.getCell(row++, 1).value = word;
    ranges.set(field.id, `${sheet.name}!$A$${first}:$A$${row - 1}`);
    row += 1;
  }
  return ranges;
}
