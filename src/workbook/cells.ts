/** What a number format says about the number in a cell, as far as that decides a meaning. */
export type NumberFormat = "general" | "date" | "time" | "percent" | "scientific";

/** What a cell holds. A formula gives its saved result; nothing is ever computed. */
export type CellValue =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "number"; readonly number: number; readonly format: NumberFormat }
  | { readonly kind: "boolean"; readonly boolean: boolean }
  /** ISO form of a day or moment that the file itself marks as a date. */
  | { readonly kind: "date"; readonly iso: string }
  /** An error of the spreadsheet program, as written (#N/A, #REF!). */
  | { readonly kind: "error"; readonly text: string }
  /** A formula that was saved without a result. */
  | { readonly kind: "no-result" }
  /** A cell that breaks a limit or cannot be understood; `why` says so to a person. */
  | { readonly kind: "unusable"; readonly why: string };

/** A cell that holds something; row and column count from 1. */
export interface RawCell {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
}

/** A row with at least one filled cell. */
export interface RawRow {
  /** As the spreadsheet program shows it; for CSV the line on which the record starts. */
  readonly row: number;
  readonly hidden: boolean;
  /** Filled cells in order of their columns; a list made anew at each access, since cells are kept packed. */
  readonly cells: readonly RawCell[];
  /** The value in a column; undefined where the cell is empty. Cells that share a text give the same object. */
  at(column: number): CellValue | undefined;
  /** The text in a column; undefined where the cell is empty or holds something else. */
  textAt(column: number): string | undefined;
}

/** A merged range, ends included. Its value is that of the top left cell; values that a file keeps under it are delivered too. */
export interface MergedRange {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** One sheet in the order of the workbook; blank rows are left out. */
export interface RawSheet {
  /** Null for CSV. */
  readonly name: string | null;
  readonly visibility: "visible" | "hidden" | "very-hidden";
  readonly rows: readonly RawRow[];
  readonly merges: readonly MergedRange[];
  readonly hiddenColumns: ReadonlySet<number>;
}

/** A survey file as cells, before anyone asks what they mean. */
export interface RawWorkbook {
  readonly kind: "xlsx" | "csv";
  readonly sheets: readonly RawSheet[];
  readonly dateSystem: 1900 | 1904;
  /** Things worth saying about the file that did not stop the reading (encoding found, separator found). */
  readonly remarks: readonly string[];
}

/** Why a file could not be read at all; `text` is one sentence that says what the file is or lacks and what to do. */
export interface UnreadableFile {
  readonly code: string;
  readonly text: string;
}

export type WorkbookReading =
  | { readonly ok: true; readonly workbook: RawWorkbook }
  | { readonly ok: false; readonly error: UnreadableFile };

/** Packs data as raw deflate while they come in. */
export interface Packing {
  /** Takes bytes, which whoever gave them may use again at once. */
  push(data: Uint8Array): void;
  /** No more will come. */
  end(): void;
  /**
   * What has been packed since the last call. Waits while more is on its way than should be in memory, and after the
   * end until all is packed.
   */
  packed(): Promise<readonly Uint8Array[]>;
}

/** What the reader needs from the machine it runs on; Node and the browser each hand in their own. */
export interface Inflating {
  /**
   * Raw deflate data to bytes, stopping at `mostBytes`.
   *
   * @throws Error with `name` "TooLarge" past the limit, any other Error for damaged data
   */
  inflateRaw(data: Uint8Array, mostBytes: number): Promise<Uint8Array>;
  /**
   * The same piece by piece, so that the whole is never in memory. A piece is not touched again by who gave it.
   *
   * @throws Error as `inflateRaw` does, from the iteration
   */
  inflateRawPieces(data: Uint8Array, mostBytes: number): AsyncIterable<Uint8Array>;
  /**
   * CRC-32 as zip files use it.
   *
   * @param before - CRC-32 of the bytes before these, 0 if there are none
   */
  crc32(data: Uint8Array, before?: number): number;
  /** A packer for one part; without it a slower one is used, which packs the same everywhere. */
  packing?(): Packing;
}

/** Bounds of what a file may ask of the machine. */
export interface ReadingLimits {
  readonly fileBytes: number;
  readonly sheetPartBytes: number;
  readonly otherPartBytes: number;
  readonly rows: number;
  readonly cells: number;
  readonly columns: number;
  readonly merges: number;
  readonly cellCharacters: number;
}
