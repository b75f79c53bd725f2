/** Where a value stood in a survey, spelled as the spreadsheet program shows it; `sheet` is null for CSV. */
export interface CellPlace {
  readonly sheet: string | null;
  readonly cell: string;
  /** The survey file, where it is another one than that of the point. */
  readonly file?: string;
}

/** A line of a file that people write (rule, model, site, word list); lines and columns count from 1. */
export interface TextPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** A file as handed to the core: its path as the user gave it (with `/`) and its text. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** Letters of a column, "A" for 1; `column` counts from 1. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

const LETTERS: string[] = [];

/** "F17" for row 17, column 6; both count from 1. */
export function cellName(row: number, column: number): string {
  LETTERS[column] ??= columnLetters(column);
  return LETTERS[column] + row;
}

/** The number of a column, 1 for "A"; letters as a spreadsheet program writes them. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}
