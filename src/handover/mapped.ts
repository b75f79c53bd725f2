/** One target file of a mapping, filled: what will be written, before quoting and encoding. */
export interface MappedFile {
  readonly target: string;
  readonly columns: readonly MappedColumn[];
  readonly rows: readonly MappedRow[];
}

export interface MappedColumn {
  readonly heading: string;
  /** Its values name the row on the other side; they are never cut, and no two rows have the same. */
  readonly key: boolean;
}

export interface MappedRow {
  /** Stable id of the point, of the machine, or of the order. */
  readonly id: string;
  /** Ids of the points that it speaks of. */
  readonly points: readonly string[];
  /** By column, as written; null where the column is left empty. */
  readonly values: readonly (string | null)[];
}

/** How a target file says that what a row stands for is there no more. */
export interface WithdrawnWord {
  /** Heading of the column that says so. */
  readonly column: string;
  readonly value: string;
}
