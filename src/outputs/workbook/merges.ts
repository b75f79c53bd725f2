import type { Worksheet } from "exceljs";
import type { MergedRange, RawSheet } from "../../workbook/index.js";
import { countOf } from "../wording/numbers.js";

/** Each merge is compared with all before it, so that their number is bounded, and so is the area they fill. */
const MOST_MERGES = 4_000;
const MOST_CELLS = 200_000;

/**
 * Repeats the merged ranges of a survey, cut to the columns that the survey fills, so that a title merged across
 * the whole sheet does not cover our columns.
 *
 * @returns what was left out, in words
 */
export function placeMerges(sheet: Worksheet, raw: RawSheet, lastColumn: number): readonly string[] {
  const lastRow = raw.rows.at(-1)?.row ?? 0;
  const merges = raw.merges.map((merge) => clipped(merge, lastRow, lastColumn)).filter((merge) => cellsOf(merge) > 1);
  let area = 0;
  let left = 0;
  merges.forEach((merge, index) => {
    area += cellsOf(merge);
    if (index >= MOST_MERGES || area > MOST_CELLS || !placed(sheet, merge)) left += 1;
  });
  return left === 0 ? [] : [`sheet "${sheet.name}": ${countOf(left, "merged range")} shown as single cells`];
}

function placed(sheet: Worksheet, { top, left, bottom, right }: MergedRange): boolean {
  try {
    sheet.mergeCellsWithoutStyle(top, left, bottom, right);
    return true;
  } catch {
    // Ranges that overlap cannot both be merged; the file is damaged there, its values are not.
    return false;
  }
}

function clipped({ top, left, bottom, right }: MergedRange, lastRow: number, lastColumn: number): MergedRange {
  return { top, left, bottom: Math.min(bottom, lastRow), right: Math.min(right, lastColumn) };
}

function cellsOf({ top, left, bottom, right }: MergedRange): number {
  return Math.max(0, bottom - top + 1) * Math.max(0, right - left + 1);
}
