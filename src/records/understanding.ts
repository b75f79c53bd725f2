import type { ColumnWord, DecimalSign, Language } from "../facts/index.js";
import type { ColumnAccuracy } from "./headings/heading-accuracy.js";
import type { Survey } from "./rows/survey.js";

/** A survey, or one sentence that says why the file holds none. */
export type SurveyReading =
  | { readonly ok: true; readonly survey: Survey }
  | { readonly ok: false; readonly text: string };

/** How the cells of a column were read, counted over the points. */
export interface CellCounts {
  readonly read: number;
  readonly unreadable: number;
  /** Empty, or holding a word for "nothing stated". */
  readonly missing: number;
}

/** A fact that a heading nobody knows might mean. */
export interface Candidate {
  readonly fact: string;
  /** The listed heading that is near; null where words of the heading itself may name the fact. */
  readonly heading: string | null;
}

/** What a column was taken for, with all that led to it. */
export interface ColumnUnderstood {
  readonly letters: string;
  /** As typed, the parts of two heading rows joined by " / ". */
  readonly heading: string;
  /** The ways in which a person may name it. */
  readonly names: readonly string[];
  /** Facts read from it, that of the column first; empty where it is not read. */
  readonly facts: readonly string[];
  /** Unit of bare numbers as heading, title or a person says it; null where nobody does. */
  readonly unit: string | null;
  readonly language: Language | null;
  /** How accurate its numbers are that do not say so themselves, and why; null where nobody says. */
  readonly accuracy: ColumnAccuracy | null;
  /** The column may hold numbers, so that the decimal sign matters. */
  readonly numbers: boolean;
  /** Null where it stays open, or where a number with three digits behind the sign does. */
  readonly decimalSign: DecimalSign | null;
  readonly decimalWhy: string;
  readonly why: string;
  /** A person says that it is not to be read. */
  readonly ignored: boolean;
  readonly ownWords: ColumnWord["values"];
  readonly counts: CellCounts;
  /** The first cell that was read (else the first that is filled), as it stands there. */
  readonly example: { readonly cell: string; readonly text: string } | null;
  /** Of a column that is not understood. */
  readonly candidates: readonly Candidate[];
}

/** Several columns of a table that are read for one fact; their cells are compared row by row. */
export interface Clash {
  readonly fact: string;
  readonly letters: readonly string[];
  /** Rows in which they contradict each other. */
  readonly contradictions: number;
}

/** A table of a sheet. */
export interface TableUnderstood {
  /** The row of headings itself. */
  readonly headingRow: number;
  /** With the rows of headings above it and of units below it. */
  readonly headingRows: readonly number[];
  readonly points: number;
  /** Its rows are taken for points. */
  readonly read: boolean;
  readonly columns: readonly ColumnUnderstood[];
  readonly clashes: readonly Clash[];
}

/** A sheet as it is understood. */
export interface SheetUnderstood {
  readonly sheet: string | null;
  readonly hidden: boolean;
  readonly why: string;
  /** A person says that it is not to be read. */
  readonly leftOut: boolean;
  readonly language: Language | null;
  readonly languageWhy: string;
  readonly tables: readonly TableUnderstood[];
  /** Where no row of headings was found: the row that looks most like one. Nothing is read by it. */
  readonly likely: { readonly row: number; readonly columns: readonly ColumnUnderstood[] } | null;
}

/** A survey as it is understood. */
export interface SurveyUnderstood {
  readonly file: string;
  readonly sheets: readonly SheetUnderstood[];
  /** The survey that comes of it, or why there is none. */
  readonly reading: SurveyReading;
}
