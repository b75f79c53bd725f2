import type { CellTables } from "./cell-value.js";
import type { NumberFormat } from "./cells.js";
import type { SheetRows } from "./sheet-rows.js";

const QUOTE = 34;
const BLANK = 32;
const POINT = 46;
const SLASH = 47;
const ZERO = 48;
const NINE = 57;
const LESS = 60;
const EQUALS = 61;
const GREATER = 62;
const MINUS = 45;
const LETTER_A = 65;
const LETTER_Z = 90;
const LETTER_C = 99;
const LETTER_R = 114;
const LETTER_S = 115;
const LETTER_T = 116;
const LETTER_V = 118;
/** A plain cell is never longer; with so many bytes in hand no end needs to be looked for while it is read. */
const LONGEST_CELL = 96;
const MOST_INDEX_DIGITS = 9;
const MOST_LETTERS = 3;
const EXACT_DIGITS = 15;
const POWERS_OF_TEN = Array.from({ length: EXACT_DIGITS + 1 }, (_, exponent) => 10 ** exponent);

/**
 * Takes cells that are written as programs write nearly all of them, such as `<c r="B7" s="2" t="s"><v>14</v></c>`,
 * straight from the bytes: plain numbers, references to shared texts, empty cells. Every byte is compared, so that
 * nothing else passes; whatever differs in any way is left to the scanner.
 */
export class PlainCells {
  /** Column of the last cell that was taken. */
  column = 0;
  readonly #tables: CellTables;
  readonly #rows: SheetRows;
  #at = 0;
  #number = 0;
  #isShared = false;
  #format: NumberFormat = "general";

  constructor(tables: CellTables, rows: SheetRows) {
    this.#tables = tables;
    this.#rows = rows;
  }

  /**
   * Takes the cells of a row that follow each other.
   *
   * @returns where the first cell begins that was not taken
   * @throws Unreadable if a value lies beyond the limits
   */
  pass(bytes: Uint8Array, from: number, to: number, row: number, hidden: boolean): number {
    let at = from;
    while (at + LONGEST_CELL <= to) {
      const content = this.#openingEnd(bytes, at, row);
      if (content === 0) return at;
      if (bytes[content - 2] === SLASH) {
        at = content;
        continue;
      }
      if (!this.#readContent(bytes, content)) return at;
      if (!this.#isShared) this.#rows.addNumber(row, this.column, hidden, this.#number, this.#format);
      else if (!this.#tables.sharedTexts.isBlank(this.#number)) {
        this.#rows.addReference(row, this.column, hidden, this.#number);
      }
      at = this.#at;
    }
    return at;
  }

  /** Behind the opening tag, or 0 if it is not plain. */
  #openingEnd(bytes: Uint8Array, from: number, row: number): number {
    if (bytes[from] !== LESS || bytes[from + 1] !== LETTER_C || bytes[from + 2] !== BLANK) return 0;
    if (bytes[from + 3] !== LETTER_R || bytes[from + 4] !== EQUALS || bytes[from + 5] !== QUOTE) return 0;
    let at = from + 6;
    let column = 0;
    for (let letter = bytes[at] ?? 0; letter >= LETTER_A && letter <= LETTER_Z; letter = bytes[at] ?? 0) {
      column = column * 26 + letter - 64;
      at += 1;
      if (at > from + 6 + MOST_LETTERS) return 0;
    }
    if (column === 0 || this.#index(bytes, at) !== row) return 0;
    at = this.#at;
    this.#isShared = false;
    this.#format = "general";
    if (bytes[at] === BLANK && bytes[at + 1] === LETTER_S) {
      if (!this.#readStyle(bytes, at + 2)) return 0;
      at = this.#at;
    }
    if (bytes[at] === BLANK && bytes[at + 1] === LETTER_T) {
      if (bytes[at + 2] !== EQUALS || bytes[at + 3] !== QUOTE || bytes[at + 4] !== LETTER_S) return 0;
      if (bytes[at + 5] !== QUOTE) return 0;
      this.#isShared = true;
      at += 6;
    }
    const end = bytes[at] === SLASH ? at + 2 : at + 1;
    if (bytes[end - 1] !== GREATER) return 0;
    this.column = column;
    return end;
  }

  #readStyle(bytes: Uint8Array, at: number): boolean {
    if (bytes[at] !== EQUALS || bytes[at + 1] !== QUOTE) return false;
    const style = this.#index(bytes, at + 2);
    if (style < 0) return false;
    const { formats } = this.#tables;
    const format = formats === null ? "general" : formats[style];
    if (format === undefined) return false;
    this.#format = format;
    return true;
  }

  /** The digits up to a quote as a number, moving behind it; -1 if there is anything else. */
  #index(bytes: Uint8Array, from: number): number {
    let at = from;
    let index = 0;
    for (let byte = bytes[at] ?? 0; byte >= ZERO && byte <= NINE; byte = bytes[at] ?? 0) {
      index = index * 10 + byte - ZERO;
      at += 1;
      if (at > from + MOST_INDEX_DIGITS) return -1;
    }
    if (at === from || bytes[at] !== QUOTE) return -1;
    this.#at = at + 1;
    return index;
  }

  /** Reads the value element and the closing tag of the cell, moving behind them. */
  #readContent(bytes: Uint8Array, from: number): boolean {
    if (bytes[from] !== LESS || bytes[from + 1] !== LETTER_V || bytes[from + 2] !== GREATER) return false;
    const end = this.#isShared ? this.#readReference(bytes, from + 3) : this.#readNumber(bytes, from + 3);
    if (end === 0 || bytes[end] !== LESS || bytes[end + 1] !== SLASH || bytes[end + 2] !== LETTER_V) return false;
    if (bytes[end + 3] !== GREATER || bytes[end + 4] !== LESS || bytes[end + 5] !== SLASH) return false;
    if (bytes[end + 6] !== LETTER_C || bytes[end + 7] !== GREATER) return false;
    this.#at = end + 8;
    return true;
  }

  /** Where the digits end, or 0. */
  #readReference(bytes: Uint8Array, from: number): number {
    let at = from;
    let index = 0;
    for (let byte = bytes[at] ?? 0; byte >= ZERO && byte <= NINE; byte = bytes[at] ?? 0) {
      index = index * 10 + byte - ZERO;
      at += 1;
      if (at > from + MOST_INDEX_DIGITS) return 0;
    }
    this.#number = index;
    return at === from || index >= this.#tables.sharedTexts.length ? 0 : at;
  }

  /** Where the number ends, or 0; see `plainNumber` for why it is exact. */
  #readNumber(bytes: Uint8Array, from: number): number {
    const isNegative = bytes[from] === MINUS;
    const first = isNegative ? from + 1 : from;
    let at = first;
    let whole = 0;
    let point = -1;
    for (let byte = bytes[at] ?? 0; byte !== LESS; byte = bytes[at] ?? 0) {
      if (byte >= ZERO && byte <= NINE) whole = whole * 10 + byte - ZERO;
      else if (byte === POINT && point < 0) point = at;
      else return 0;
      at += 1;
      if (at > first + EXACT_DIGITS) return 0;
    }
    const decimals = point < 0 ? 0 : at - point - 1;
    if (at - first - (point < 0 ? 0 : 1) === 0) return 0;
    const number = decimals > 0 ? whole / (POWERS_OF_TEN[decimals] ?? 1) : whole;
    this.#number = isNegative ? -number : number;
    return at;
  }
}
