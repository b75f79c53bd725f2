import { factOf } from "../../facts/index.js";
import type { TableRow } from "../book/table.js";
import { below, type Report } from "../text/source.js";

/** A choice by which a survey says that there is no such thing; no table has to know it. */
export const ABSENT = "absent";

const MOST_NAMED = 6;

/** Checks the rows of one entry against each other: each choice once, none left out, ranges the right way round. */
export function checkRows(by: readonly string[], rows: readonly TableRow[], pointer: string, report: Report): void {
  const lines = new Map<string, number>();
  for (const [index, row] of rows.entries()) {
    const mark = row.keys.join("|");
    const line = lines.get(mark);
    if (line === undefined) lines.set(mark, row.at.line);
    else {
      const what =
        by.length === 0
          ? `a table that is looked up by nothing has one row, which stands in line ${line}`
          : `"${row.keys.join(", ")}" has a row in line ${line} already`;
      const text = `${what}; keep one of them`;
      report.atValue(below(pointer, index), "row-twice", text);
    }
    checkRanges(row, below(pointer, index), report);
  }
  const lacking = combinations(by).filter((keys) => !lines.has(keys.join("|")));
  if (lacking.length === 0) return;
  const named = lacking.slice(0, MOST_NAMED).map((keys) => keys.join(" with "));
  const more = lacking.length > MOST_NAMED ? ` and ${lacking.length - MOST_NAMED} more` : "";
  const text = `no row has ${named.join("; ")}${more}; add a row for every choice of ${by.join(", ")}, with null for a value that nobody has`;
  report.atKey(pointer, "choice-without-row", text);
}

function combinations(by: readonly string[]): readonly (readonly (string | boolean)[])[] {
  return by.reduce<readonly (readonly (string | boolean)[])[]>(
    (before, id) => before.flatMap((keys) => choicesOf(id).map((choice) => [...keys, choice])),
    [[]],
  );
}

function choicesOf(id: string): readonly (string | boolean)[] {
  const { kind, choices = [] } = factOf(id);
  return kind === "yes-no" ? [true, false] : choices.filter((choice) => choice !== ABSENT);
}

/** Facts named `…_min` and `…_max` are the two ends of one range. */
function checkRanges({ values }: TableRow, pointer: string, report: Report): void {
  for (const [id, high] of values) {
    const low = values.get(id.replace(/_max$/, "_min"));
    if (!id.endsWith("_max") || typeof high !== "object" || typeof low !== "object" || !high || !low) continue;
    if (low.highest <= high.lowest) continue;
    const text = `"${id}" lies below "${id.replace(/_max$/, "_min")}" of the same row; check both`;
    report.atValue(below(pointer, id), "range-upside-down", text);
  }
}
