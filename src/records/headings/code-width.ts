import type { Grid } from "../cells/grid.js";

/** Codes with leading zeros that make a width. */
const FEWEST_CODES = 2;

/**
 * How many digits the codes of a column have, where they are written with leading zeros (0012, 0013); null where they
 * are not, or not alike.
 */
export function codeWidth(grid: Grid, rows: readonly number[], column: number): number | null {
  let width: number | null = null;
  let found = 0;
  for (const row of rows) {
    const digits = /^\s*(0\d+)\s*$/.exec(grid.ownText(row, column) ?? "")?.[1];
    if (digits === undefined) continue;
    if (width !== null && width !== digits.length) return null;
    width = digits.length;
    found += 1;
  }
  return found >= FEWEST_CODES ? width : null;
}
