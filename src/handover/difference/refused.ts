import { showText } from "../../base/index.js";
import type { ExportReceipt } from "./receipt.js";

/** A line of a list of errors that the other side returned. */
export interface ReturnedLine {
  /** Row as the spreadsheet program numbers it, or line of a text table. */
  readonly row: number;
  /** What stands in the columns that name the row, in the order in which these were given. */
  readonly key: readonly string[];
}

/** A row that came back. */
export interface RefusedRow {
  readonly target: string;
  readonly id: string;
  readonly line: ReturnedLine;
}

/** The rows that came back, or why a line names none; each problem in one sentence that begins with the row. */
export type RefusedFound =
  | { readonly ok: true; readonly rows: readonly RefusedRow[] }
  | { readonly ok: false; readonly problems: readonly string[] };

/**
 * Finds the rows of an export that a returned list of errors names: by their ids, or by the values of their key columns.
 * A line that names no row, or more than one, is a problem: what is not found would be taken as accepted.
 *
 * @param only - the target that the list speaks of; null: all
 */
export function refusedRows(receipt: ExportReceipt, lines: readonly ReturnedLine[], only: string | null): RefusedFound {
  const targets = receipt.targets.filter(({ target }) => only === null || target === only);
  if (targets.length === 0) {
    const names = receipt.targets.map(({ target }) => showText(target)).join(", ");
    return { ok: false, problems: [`the export has no target "${showText(only ?? "")}"; it has ${names}`] };
  }
  const known = knownRows(targets);
  const rows: RefusedRow[] = [];
  const problems: string[] = [];
  for (const line of lines) {
    const shown = line.key.map((part) => `"${showText(part)}"`).join(", ");
    const found = known.get(JSON.stringify(line.key)) ?? [];
    const [row] = found;
    if (line.key.some((part) => part === "")) {
      problems.push(`row ${line.row}: it does not say which row was refused; fill in the key, or take the line out`);
    } else if (row === undefined) {
      problems.push(
        `row ${line.row}: ${shown} is the key of no row of this export; hand in the list that belongs to this receipt`,
      );
    } else if (found.length > 1) {
      const names = found.map(({ target }) => showText(target)).join(", ");
      problems.push(`row ${line.row}: ${shown} names rows of several targets (${names}); say which with --target`);
    } else rows.push({ ...row, line });
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, rows };
}

type Named = Omit<RefusedRow, "line">;

/** Every row under its id and under its key; a row whose id is its key stands there once. */
function knownRows(targets: ExportReceipt["targets"]): ReadonlyMap<string, readonly Named[]> {
  const known = new Map<string, Named[]>();
  const add = (key: readonly string[], row: Named): void => {
    const word = JSON.stringify(key);
    const rows = known.get(word) ?? [];
    if (!rows.some(({ target, id }) => target === row.target && id === row.id)) rows.push(row);
    known.set(word, rows);
  };
  for (const { target, columns, rows } of targets) {
    const keys = columns.flatMap(({ key }, i) => (key ? [i] : []));
    for (const { id, values } of rows) {
      add([id], { target, id });
      const key = keys.map((i) => values[i]?.trim() ?? "");
      if (key.length > 0 && key.every((part) => part !== "")) add(key, { target, id });
    }
  }
  return known;
}
