import { quoted } from "../unreadable.js";
import type { XmlScanner } from "../xml-scan.js";
import type { FramedCell } from "./edits.js";
import { cannotEdit } from "./uneditable.js";

/** What is wanted of a sheet. */
export interface SheetWish {
  readonly sheet: string;
  /** Rows that get cells of ours. */
  readonly rows: ReadonlySet<number>;
  /** By row, then column; all of them stand to the left of our columns. */
  readonly frames: readonly FramedCell[];
  /** First and last of our columns; null while they are not known, or where there are none. */
  readonly columns: { readonly first: number; readonly last: number } | null;
}

/** Local names that are told apart in a sheet part, the frequent ones first; the scanner numbers them from 1. */
export const SHEET_NAMES = [
  "c",
  "v",
  "f",
  "is",
  "row",
  "sheetData",
  "dimension",
  "col",
  "cols",
  "mergeCell",
  "autoFilter",
  "sheetProtection",
  "worksheet",
] as const;

/** Number under which the scanner reports an element. */
export function elementNumber(name: (typeof SHEET_NAMES)[number]): number {
  return SHEET_NAMES.indexOf(name) + 1;
}

/** Gives up a sheet. */
export function cannotEditSheet(sheet: string, code: string, text: string): never {
  return cannotEdit(code, `its sheet ${quoted(sheet)} ${text}`);
}

/** What is added has the prefix of the root element; a sheet that mixes prefixes is not added to. */
export function checkPrefix({ tag }: XmlScanner, prefix: string, sheet: string): void {
  if (tag.nameFrom - tag.fullNameFrom !== prefix.length) {
    cannotEditSheet(sheet, "mixed-prefixes", "mixes names with and without a prefix");
  }
}
