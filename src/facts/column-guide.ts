import type { StatedAccuracy } from "./accuracy.js";
import type { Language } from "./words.js";

/** The sign in front of the decimals. */
export type DecimalSign = "point" | "comma";

export const DECIMAL_SIGNS: readonly DecimalSign[] = ["point", "comma"];

/** Something that a person has settled, and where it is said ("column file columns.yaml line 3"). */
export interface Settled<T> {
  readonly value: T;
  readonly by: string;
}

/** What a person says of one column: which it is, and what it is read for. */
export interface ColumnWord {
  /** Its heading as written in the file or on the command line; null where its letters alone name it. */
  readonly heading: string | null;
  /** "F"; null where its heading alone names it. */
  readonly letters: string | null;
  /** Id of the fact it is read for; null where it is to be left out. */
  readonly fact: string | null;
  /** Id of the unit of bare numbers; null where heading and cells are to say it. */
  readonly unit: string | null;
  readonly language: Language | null;
  readonly decimalSign: DecimalSign | null;
  /** Words that the column has of its own: a choice of the fact, or true and false of a yes-no. */
  readonly values: ReadonlyMap<string, string | boolean>;
  /** How accurate its numbers are that do not say so themselves; left out where nobody says. */
  readonly accuracy?: StatedAccuracy | null;
  /** Where it is said. */
  readonly by: string;
}

/** What a person says of one sheet. */
export interface SheetWord {
  readonly name: string;
  /** Nothing is read from it. */
  readonly leftOut: boolean;
  readonly language: Settled<Language> | null;
  readonly decimalSign: Settled<DecimalSign> | null;
  /** The row of headings of each table, from the top down; group headings above and units below are found as usual. */
  readonly headingRows: Settled<readonly number[]> | null;
  readonly columns: readonly ColumnWord[];
  readonly by: string;
}

/** What a column file says of surveys that come again. */
export interface ColumnFile {
  readonly file: string;
  /** SHA-256 of the canonical JSON of the file's data. */
  readonly digest: string;
  readonly language: Settled<Language> | null;
  readonly decimalSign: Settled<DecimalSign> | null;
  readonly headingRows: Settled<readonly number[]> | null;
  /** Of all sheets. */
  readonly columns: readonly ColumnWord[];
  readonly sheets: readonly SheetWord[];
}

/**
 * What a person has settled about the reading of surveys. Options of the run come before the column file, a sheet of
 * the column file before the whole of it, and all of them before headings, words and evidence.
 */
export interface ColumnGuide {
  readonly file: ColumnFile | null;
  readonly language: Settled<Language> | null;
  readonly decimalSign: Settled<DecimalSign> | null;
  readonly columns: readonly ColumnWord[];
}
