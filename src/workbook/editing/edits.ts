/** The line around a cell that is marked; the format's own names. */
export type FrameLine = "thick" | "mediumDashed" | "dotted";

/** A cell to frame. */
export interface FramedCell {
  readonly row: number;
  readonly column: number;
  readonly line: FrameLine;
}

/** How cells of our own look. Colour is left to the neutral fill alone. */
export interface CellLook {
  /** Size of the letters, points. */
  readonly points: number;
  readonly bold: boolean;
  readonly wrap: boolean;
  /** A light grey behind the cell. */
  readonly filled: boolean;
  readonly bottomLine: "none" | "hair" | "thin";
  /** Marks a text that could be taken for a formula, so that it stays text when a person edits it. */
  readonly staysText: boolean;
}

/** A cell of our own: a text or a number, never a formula. */
export interface EditCell {
  readonly content: string | number;
  /** Place of its look in the list of looks. */
  readonly look: number;
}

/** What is added to one sheet that is there. */
export interface SheetEdit {
  /** Name of the sheet, as the workbook lists it. */
  readonly sheet: string;
  /** Widths of the columns that are added, in characters; empty for none. */
  readonly widths: readonly number[];
  /** Rows that get cells in these columns. */
  readonly rows: ReadonlySet<number>;
  /** Cells of a row, one for each added column; null leaves it empty. Asked once for each row while writing, from the top down. */
  readonly cellsOf: (row: number) => readonly (EditCell | null)[];
  /** How many of the added columns are printed, where the sheet does not say itself what is printed. */
  readonly printed: number;
  /** Cells to frame; the first word on a cell counts. */
  readonly frames: readonly FramedCell[];
}

/** A row of a sheet of our own, with its height in points, or null to leave that to the program. */
export interface AddedRow {
  readonly height: number | null;
  readonly cells: readonly (EditCell | null)[];
}

/** A sheet of our own, put behind those that are there. */
export interface AddedSheet {
  /** At most 31 characters; a number is added where the workbook has a sheet of that name. */
  readonly name: string;
  readonly widths: readonly number[];
  /** What stands at the foot of each printed page. */
  readonly footer: string;
  /** Rows that stay in sight. */
  readonly frozenRows: number;
  /** From the top; asked once, when the sheet is written. */
  readonly rows: () => Iterable<AddedRow>;
}

/** All that is to be done to a workbook. */
export interface WorkbookEdits {
  /** The looks that cells of our own have. */
  readonly looks: readonly CellLook[];
  readonly sheets: readonly SheetEdit[];
  readonly added: readonly AddedSheet[];
}
