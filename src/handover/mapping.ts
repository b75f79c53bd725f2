import type { TextPlace, Unit } from "../base/index.js";
import type { FactValue } from "../facts/index.js";
import type { WithdrawnWord } from "./mapped.js";

/** How lengths are counted on the other side. */
export const COUNTED_IN = ["characters", "utf-16-units", "utf-8-bytes"] as const;
export type CountedIn = (typeof COUNTED_IN)[number];

export const ENCODINGS = ["utf-8", "utf-8-bom", "windows-1252"] as const;
export type Encoding = (typeof ENCODINGS)[number];

export const SEPARATORS = ["comma", "semicolon", "tab", "pipe"] as const;
export const LINE_ENDS = ["crlf", "lf"] as const;
export const DECIMAL_SIGNS_WRITTEN = ["point", "comma"] as const;

/** Day patterns that the metadata beside a text table can describe. */
export const DAY_PATTERNS = [
  "YYYY-MM-DD",
  "YYYYMMDD",
  "DD-MM-YYYY",
  "MM-DD-YYYY",
  "DD/MM/YYYY",
  "MM/DD/YYYY",
  "DD.MM.YYYY",
  "MM.DD.YYYY",
] as const;
export type DayPattern = (typeof DAY_PATTERNS)[number];

/** text: read by people; number; date; code: an identifier that the other side knows or is to know, never cut. */
export const COLUMN_TYPES = ["text", "number", "date", "code"] as const;
export type ColumnType = (typeof COLUMN_TYPES)[number];

export const CHARACTER_CLASSES = ["upper", "lower", "digits", "blank"] as const;

/** What becomes of an empty value: no cell at all, an empty text, or a word that says "clear this". */
export type WhenEmpty = "omit" | "blank" | { readonly clear: string };

/** How a file is written. */
export interface FileForm {
  readonly kind: "csv" | "xlsx";
  readonly encoding: Encoding;
  readonly separator: (typeof SEPARATORS)[number];
  readonly lineEnd: (typeof LINE_ENDS)[number];
  readonly decimalSign: (typeof DECIMAL_SIGNS_WRITTEN)[number];
  readonly days: DayPattern;
  readonly whenEmpty: WhenEmpty;
  /** What becomes of a separator within a value. */
  readonly separatorInValues: "quote" | "stop" | { readonly replaceBy: string };
}

/** What a value is taken from: a field of the results, or a fact of the catalogue in a unit. */
export type Name =
  | { readonly of: "field"; readonly name: string }
  | { readonly of: "fact"; readonly id: string; readonly unit: Unit | null };

/** A text with names in it; a part in brackets is left out where one of its names is empty. */
export type Template = readonly TemplatePart[];

export type TemplatePart =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "name"; readonly name: Name }
  | { readonly kind: "optional"; readonly parts: Template };

export type ColumnSource =
  | { readonly from: "name"; readonly name: Name }
  | { readonly from: "constant"; readonly text: string }
  | { readonly from: "template"; readonly template: Template }
  /** For each point that a row speaks of. */
  | { readonly from: "each"; readonly template: Template; readonly join: string };

export interface Length {
  readonly most: number;
  readonly counted: CountedIn;
  readonly tooLong: "stop" | "shorten";
  /** Stands at the end of a shortened text. */
  readonly mark: string;
}

/** Which end of a number that is not one single value is written. */
export const TAKES = ["value", "lowest", "highest"] as const;

export interface Column {
  readonly heading: string;
  readonly source: ColumnSource;
  readonly type: ColumnType;
  readonly key: boolean;
  readonly required: boolean;
  /** By the word that the source has; null: no list, anything may stand there. */
  readonly values: ReadonlyMap<string, string> | null;
  readonly length: Length | null;
  /** Classes and single characters; null: any. */
  readonly characters: readonly string[] | null;
  readonly lines: "one" | "many";
  readonly whenEmpty: WhenEmpty;
  readonly days: DayPattern;
  /** Of numbers: digits behind the decimal sign; null: as many as it takes. */
  readonly decimals: number | null;
  readonly takes: (typeof TAKES)[number];
  /** Id of the target whose key its values must be among. */
  readonly references: string | null;
}

/** What a row speaks of: a point, or all points that have the same values. */
export type RowsOf =
  | { readonly one: "point" }
  | {
      /** The word for it ("order"), part of the id of each row. */
      readonly one: string;
      readonly per: readonly { readonly name: Name; readonly whenEmpty: "stop" | "together" }[];
    };

/** Which points are taken; all parts must hold. */
export interface Filter {
  readonly verdicts: readonly string[] | null;
  /** Only those on which work may be planned. */
  readonly released: boolean;
  /** Rules that must have said one of these of the point. */
  readonly rulesSay: ReadonlyMap<string, readonly string[]>;
  /** Rules that must not have. */
  readonly rulesDoNotSay: ReadonlyMap<string, readonly string[]>;
  readonly facts: ReadonlyMap<string, readonly FactValue[]>;
}

/** One file to be filled, as the mapping describes it. */
export interface Target {
  readonly id: string;
  /** Its place in the order of loads, from 1. */
  readonly number: number;
  /** With {number}, {target}, {part} and {asOf}. */
  readonly file: string;
  readonly rows: RowsOf;
  readonly filter: Filter;
  /** Rows of one file; null: all in one. */
  readonly rowLimit: number | null;
  readonly form: FileForm;
  readonly columns: readonly Column[];
  /** Null where the mapping says nothing of rows that are gone. */
  readonly withdrawn: WithdrawnWord | null;
  readonly at: TextPlace;
}

/** A mapping file, checked. */
export interface Mapping {
  readonly file: string;
  /** SHA-256 of the canonical JSON of the file's data. */
  readonly digest: string;
  readonly id: string;
  readonly version: string;
  readonly title: string;
  /** In the order in which the files are to be loaded. */
  readonly targets: readonly Target[];
  /** Sample rows that were tried in reading it. */
  readonly checks: number;
}
