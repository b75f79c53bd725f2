import type { Cell, Worksheet } from "exceljs";
import { displayWidth, wrapText } from "../wording/wrap.js";

const LINE_POINTS = 13;
const MOST_POINTS = 400;
/** Texts are a little narrower than digits, and break at words; a line too many reads better than one cut off. */
const CHARACTERS_PER_WIDTH = 1;

/** Makes rows as high as their wrapped texts need; not every program does so by itself on opening. */
export function fitRowHeights(sheet: Worksheet): void {
  const widths: number[] = [];
  const widthOf = (column: number) => {
    widths[column] ??= Math.max(1, Math.floor((sheet.getColumn(column).width ?? 9) * CHARACTERS_PER_WIDTH));
    return widths[column];
  };
  sheet.eachRow((row) => {
    let lines = 1;
    row.eachCell((cell, column) => {
      lines = Math.max(lines, linesOf(cell, widthOf(column)));
    });
    if (lines > 1) row.height = Math.min(MOST_POINTS, lines * LINE_POINTS + 2);
  });
}

function linesOf(cell: Cell, width: number): number {
  const { value } = cell;
  if (typeof value !== "string" || cell.alignment?.wrapText !== true) return 1;
  if (value.length <= width && !value.includes("\n") && displayWidth(value) <= width) return 1;
  // A merged cell has the room of the others too.
  if (cell.isMerged) return 1;
  return value.split("\n").reduce((sum, line) => sum + wrapText(line, width).length, 0);
}
