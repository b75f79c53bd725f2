import type { ImportProblem } from "../../../records/index.js";

/** A remark on reading, said once for all cells of which the same is said. */
export interface ProblemLine {
  /** Cells, those that follow each other in a column as one ("Pumps!F12:F40, F44"); empty for a whole file. */
  readonly where: string;
  readonly text: string;
}

/** Remarks of one kind on one file; in the order in which each was first made. */
export function problemLines(problems: readonly ImportProblem[]): readonly ProblemLine[] {
  const lines = new Map<string, { readonly sheet: string | null; readonly text: string; readonly cells: string[] }>();
  for (const { sheet, cell, heading, found, text } of problems) {
    const said = `${heading === null ? "" : `(${heading}) `}${found === null ? "" : `found “${found}”; `}${text}`;
    const key = JSON.stringify([sheet, said]);
    const line = lines.get(key) ?? { sheet, text: said, cells: [] };
    lines.set(key, line);
    if (cell !== null) line.cells.push(cell);
  }
  return [...lines.values()].map(({ sheet, text, cells }) => ({
    where: [...(sheet === null ? [] : [sheet]), ...(cells.length === 0 ? [] : [stretchesOf(cells).join(", ")])].join(
      "!",
    ),
    text,
  }));
}

/** Cells of one column in rows that follow each other become one stretch. */
function stretchesOf(cells: readonly string[]): readonly string[] {
  const stretches: { readonly column: string; readonly first: number; last: number }[] = [];
  for (const cell of cells) {
    const [, column = cell, digits = ""] = /^([A-Z]+)(\d+)$/.exec(cell) ?? [];
    const row = Number(digits);
    const before = stretches.at(-1);
    if (before && before.column === column && before.last + 1 === row) before.last = row;
    else stretches.push({ column, first: row, last: row });
  }
  return stretches.map(({ column, first, last }) =>
    first === last ? `${column}${first}` : `${column}${first}:${column}${last}`,
  );
}
