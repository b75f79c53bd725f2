/** Row and column of an address, both from 1; the greatest the format can write is XFD1048576. */
export interface CellAddress {
  readonly row: number;
  readonly column: number;
}

const ADDRESS = /^\$?([A-Za-z]{1,4})\$?([0-9]{1,9})$/;

/** Reads "F17"; null for anything else. Beyond the grid is not checked here. */
export function readAddress(text: string): CellAddress | null {
  const parts = ADDRESS.exec(text);
  if (!parts) return null;
  const [, letters = "", digits = ""] = parts;
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  const row = Number(digits);
  return row > 0 ? { row, column } : null;
}
