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
  // A merged cell has the room of the others too.
  return cell.isMerged ? 1 : linesOfText(value, width);
}

function linesOfText(text: string, width: number): number {
  if (text.length <= width && !text.includes("\n") && displayWidth(text) <= width) return 1;
  return text.split("\n").reduce((sum, line) => sum + wrapText(line, width).length, 0);
}

/** Height, points, in which wrapped texts can be read in columns of these widths, characters; null for one line. */
export function heightOf(texts: readonly (string | number)[], widths: readonly number[]): number | null {
  let lines = 1;
  texts.forEach((text, i) => {
    const width = Math.max(1, Math.floor((widths[i] ?? 9) * CHARACTERS_PER_WIDTH));
    if (typeof text === "string") lines = Math.max(lines, linesOfText(text, width));
  });
  return lines > 1 ? Math.min(MOST_POINTS, lines * LINE_POINTS + 2) : null;
}
