/** One mistake in one file of the small book. */
export interface Broken {
  readonly name: string;
  readonly file: string;
  readonly from: string;
  /** With ▶ where the finding must stand. */
  readonly to: string;
  readonly code: string;
  /** A part of the finding's text. */
  readonly says?: string;
  /** Text at which the finding must stand, where that is not in `to`. */
  readonly at?: string;
}

/** One row of a table of mistakes. */
export type Row = readonly [name: string, from: string, to: string, code: string, says?: string | null, at?: string];

/** The rows of a table as mistakes in one file. */
export function mistakesIn(file: string, rows: readonly Row[]): readonly Broken[] {
  return rows.map(([name, from, to, code, says, at]) => ({
    name,
    file,
    from,
    to,
    code,
    ...(says ? { says } : {}),
    ...(at ? { at } : {}),
  }));
}
