/** The line around a cell that is marked; the format's own names. */
export type FrameLine = "thick" | "mediumDashed" | "dotted";

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
  /** Cells of a row, one for each added column; null leaves it empty. Asked once for each row while writing. */
  readonly cellsOf: (row: number) => readonly (EditCell | null)[];
  /** Height that the cells of a row need, points. Asked for each row that states a height which nobody chose. */
  readonly pointsOf: (row: number) => number;
  /** Cells to frame, by address ("F17"). */
  readonly frames: ReadonlyMap<string, FrameLine>;
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
  /** Rows from the top, each with its height in points, or null to leave that to the program. Iterated once. */
  readonly rows: Iterable<{ readonly height: number | null; readonly cells: readonly (EditCell | null)[] }>;
}

/** All that is to be done to a workbook. */
export interface WorkbookEdits {
  /** The looks that cells of our own have. */
  readonly looks: readonly CellLook[];
  readonly sheets: readonly SheetEdit[];
  readonly added: readonly AddedSheet[];
}
