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

const MARK = "▶";

/** A text with one mistake, and where the finding must stand. */
export interface BrokenText {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

/** Breaks one thing; the mark in the new text says where the finding must stand, and is taken out. */
export function breakText(good: string, { file, from, to, at }: Broken): BrokenText {
  if (good.split(from).length !== 2) throw new Error(`"${from}" must stand once in ${file}`);
  const marked = good.replace(from, () => to).replace(at ?? MARK, (found) => (at === undefined ? found : MARK + found));
  if (marked.split(MARK).length !== 2) throw new Error(`the place must be marked once in ${file}`);
  const before = marked.slice(0, marked.indexOf(MARK)).split("\n");
  return { text: marked.replace(MARK, ""), line: before.length, column: (before.at(-1) ?? "").length + 1 };
}
