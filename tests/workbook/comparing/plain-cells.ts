import { columnLetters } from "../../../src/base/index.js";

/**
 * What a cell holds, said alike for every reader: a moment is its serial number, an error its name. Why a cell is of no
 * use is said by our reader in words that are no value.
 */
export type PlainValue = string | number | boolean | { readonly error: string } | { readonly unusable: true };

/** The filled cells of a file by sheet name (empty for text files) and address. */
export type PlainCells = ReadonlyMap<string, ReadonlyMap<string, PlainValue>>;

/** A cell as one reader gives it, before it is put under its address. */
export interface PlacedValue {
  readonly row: number;
  readonly column: number;
  readonly value: PlainValue | null;
}

/** A text as it counts here: line ends are one, blanks alone are nothing. */
export function plainText(text: string): string | null {
  return /\S/.test(text) ? text.replace(/\r\n?/g, "\n") : null;
}

/** The cells of one sheet; what holds nothing is left out. */
export function placed(cells: Iterable<PlacedValue>): ReadonlyMap<string, PlainValue> {
  const found = new Map<string, PlainValue>();
  for (const { row, column, value } of cells) {
    if (value !== null) found.set(`${columnLetters(column)}${row}`, value);
  }
  return found;
}

/** The filled rows of a text table counted from 1: readers number blank lines and broken lines in ways of their own. */
export function withoutBlankRows(cells: Iterable<PlacedValue>): readonly PlacedValue[] {
  const filled = [...cells].filter(({ value }) => value !== null);
  const numbers = new Map([...new Set(filled.map(({ row }) => row))].map((row, i) => [row, i + 1]));
  return filled.map((cell) => ({ ...cell, row: numbers.get(cell.row) ?? 0 }));
}
