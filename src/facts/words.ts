import type { MeasuringWays } from "./measuring-way.js";

/** Languages whose headings and words the shipped lists know; a variant decides how numbers are written. */
export type Language = "en" | "de" | "es" | "fr";
export type Locale = Language | "de-CH" | "es-MX";

export const LANGUAGES: readonly Language[] = ["en", "de", "es", "fr"];

/** A cell and what reading it must give; kept beside the words as their test. */
export interface WordExample {
  readonly heading: string;
  readonly cell: string | number | boolean;
  readonly locale: Locale | null;
  readonly expect: Readonly<Record<string, unknown>>;
}

/** What people write for one field: headings by language, and words for each of its choices. */
export interface FieldWords {
  readonly headings: Readonly<Partial<Record<Language, readonly string[]>>>;
  readonly choices?: Readonly<Record<string, readonly string[]>>;
  /** Words that leave open which choice is meant (a cover of what, next to what); a phrase with one is none of them. */
  readonly unclear?: readonly string[];
  /** Words beside which a name of the field means another thing (motor voltage, foundation bolt torque). */
  readonly otherThings?: readonly string[];
  /** Words that say that the field itself is meant all the same (tightening torque, motor side). */
  readonly itsOwn?: readonly string[];
  /**
   * Words beside a name, or in brackets beside a number, by which it is not what the field asks for: it is demanded, not
   * there (hole depth required), or measured otherwise (16 mm with the drill point).
   */
  readonly notMeant?: readonly string[];
  /** Words beside a number that change nothing in it (24 V DC nom.); kept as a remark. */
  readonly asides?: readonly string[];
  readonly examples?: readonly WordExample[];
}

/** Words that mean the same in every column. */
export interface CommonWords {
  readonly yes: readonly string[];
  readonly no: readonly string[];
  readonly missing: readonly string[];
  readonly about: readonly string[];
  /** "or" between two words: the cell says two things. */
  readonly or: readonly string[];
  /** "to" between the ends of a range. */
  readonly to: readonly string[];
  /** "from" and "between" in front of a range. */
  readonly from: readonly string[];
  /** Words that turn the word after them round (not painted); such a phrase is never read as that word. */
  readonly not: readonly string[];
  /** Words by which the surveyor says that an answer is not certain (probably). */
  readonly doubt: readonly string[];
  /** Maximum and minimum in front of a number. */
  readonly most: readonly string[];
  readonly least: readonly string[];
  /** Marks that stand for the cell above. */
  readonly ditto: readonly string[];
  /** Words that open a row of totals. */
  readonly total: readonly string[];
  /** Words that tell a language where they stand in a title, a note or a cell. */
  readonly marks: Readonly<Record<Language, readonly string[]>>;
}

/** All words of a rulebook, handed to the importer as plain data. */
export interface WordLists {
  readonly common: CommonWords;
  /** By fact id. */
  readonly fields: ReadonlyMap<string, FieldWords>;
  /** Ways of measuring in force; left out where none are to be known. */
  readonly ways?: MeasuringWays;
}
