import type { ReadingLimits } from "./cells.js";

const MEBIBYTE = 1_048_576;

/** What a file may ask of the machine unless the caller says otherwise; every count includes its last allowed value. */
export const DEFAULT_LIMITS: ReadingLimits = {
  fileBytes: 100 * MEBIBYTE,
  sheetPartBytes: 256 * MEBIBYTE,
  otherPartBytes: 64 * MEBIBYTE,
  rows: 1_048_576,
  cells: 20_000_000,
  columns: 1_024,
  merges: 100_000,
  cellCharacters: 32_767,
};

/** The limits by the names that people give them. */
export const LIMIT_NAMES: Readonly<Record<keyof ReadingLimits, string>> = {
  fileBytes: "file-bytes",
  sheetPartBytes: "sheet-part-bytes",
  otherPartBytes: "other-part-bytes",
  rows: "rows",
  cells: "cells",
  columns: "columns",
  merges: "merges",
  cellCharacters: "cell-characters",
};

/** How a person allows more, for the end of a refusal. */
export function orAllowMore(limit: keyof ReadingLimits): string {
  return `, or allow more with --limit ${LIMIT_NAMES[limit]}=NUMBER`;
}

/** Entries that a package may list; a workbook with a photograph per point stays well below. */
export const ENTRY_LIMIT = 5_000;

/** Sheets that a workbook may list. */
export const SHEET_LIMIT = 1_024;

/** Bytes that all parts read from one package may inflate to. */
export const TOTAL_PART_BYTES = 1_024 * MEBIBYTE;

/** Levels to which the elements of a part may nest; a workbook needs about ten. */
export const DEPTH_LIMIT = 200;

/** Bytes of one tag with its attributes, or of one XML declaration. */
export const TAG_BYTES = 8 * MEBIBYTE;

/** Columns that can be asked for at most; a spreadsheet has 16,384. */
const MOST_COLUMNS = 65_535;

/** Characters of a cell that can be asked for at most; a spreadsheet allows 32,767. */
export const MOST_CELL_CHARACTERS = 500_000;

/** What some limits can be set to at most; the others have no end. */
export const HIGHEST_LIMITS: Readonly<Partial<ReadingLimits>> = {
  columns: MOST_COLUMNS,
  cellCharacters: MOST_CELL_CHARACTERS,
};

/**
 * Bytes of text inside one element that are kept. Even if every character is written as an escape of seven bytes,
 * more than these are more than a cell can be allowed.
 */
export const TEXT_BYTES = 4 * MEBIBYTE;

/** The usual limits with those that are asked for, as far as they can be asked for. */
export function limitsOf(asked: Partial<ReadingLimits> = {}): ReadingLimits {
  const limits = { ...DEFAULT_LIMITS, ...asked };
  return {
    ...limits,
    columns: Math.min(limits.columns, MOST_COLUMNS),
    cellCharacters: Math.min(limits.cellCharacters, MOST_CELL_CHARACTERS),
  };
}
