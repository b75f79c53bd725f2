import type { Facts, Language } from "../../facts/index.js";
import type { ImportProblem } from "../cells/problems.js";

/** How one sheet of a survey file was taken. */
export interface SheetReading {
  /** Null for CSV. */
  readonly sheet: string | null;
  readonly used: boolean;
  /** Why it was used, or not. */
  readonly why: string;
  /** Rows that hold the headings, as the program shows them; empty if none was found. */
  readonly headingRows: readonly number[];
  /** Rows taken as points. */
  readonly pointRows: number;
  readonly hidden: boolean;
  readonly language: Language | null;
  /** What settled the language and the way numbers are written. */
  readonly languageWhy: string;
}

/** What one column was taken for, and why. */
export interface ColumnReading {
  readonly sheet: string | null;
  /** "F" */
  readonly column: string;
  /** As typed, the parts of two heading rows joined by " / ". */
  readonly heading: string;
  /** Ids of the facts read from it; empty if the column is not used. */
  readonly facts: readonly string[];
  /** Unit of bare numbers, null where none applies. */
  readonly unit: string | null;
  readonly hidden: boolean;
  readonly why: string;
}

/** One proposed measurement point as read; facts not in the map are missing. */
export interface PointRecord {
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly facts: Facts;
}

/** One survey file, read. */
export interface Survey {
  /** Path as the user gave it, with `/`. */
  readonly file: string;
  /** SHA-256 of the bytes. */
  readonly digest: string;
  readonly sheets: readonly SheetReading[];
  readonly columns: readonly ColumnReading[];
  readonly records: readonly PointRecord[];
  readonly problems: readonly ImportProblem[];
  /** Facts that some column of the survey is read for, or that the site states. */
  readonly factsAsked: ReadonlySet<string>;
}
