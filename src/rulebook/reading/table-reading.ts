import { type FactValue, factOf } from "../../facts/index.js";
import type { TableRow, ValueTable } from "../book/table.js";
import type { RawTable, RawTableRow } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { checkCites, checkDates, checkReview, readCitations } from "./dated.js";
import { factValueOf, readScalar } from "./fact-values.js";
import { checkPlausible } from "./plausible.js";
import { checkRows } from "./table-rows-check.js";

/**
 * Checks what one table file means, its form being checked already.
 *
 * @returns the table; of use only if nothing was reported
 */
export function readTable(raw: RawTable, report: Report): ValueTable {
  const fits = checkKeys(raw, report);
  checkDates(raw.entries, "/entries", report);
  const entries = raw.entries.map((entry, index) => {
    const pointer = below("/entries", index);
    checkReview(entry, pointer, report);
    const rows = fits ? readRows(raw, entry.rows, below(pointer, "rows"), report) : [];
    const { from, until, reviewBy = null, cites } = entry;
    return { from, until, reviewBy, rows, cites, at: report.placeOf(pointer) };
  });
  const uses = raw.entries.map(({ cites }, index) => ({ pointer: below("/entries", index, "cites"), cites }));
  checkCites(raw.citations, uses, report);
  return {
    id: raw.id,
    title: raw.title,
    by: raw.by,
    gives: raw.gives,
    entries,
    citations: readCitations(raw.citations),
    at: report.placeOf("/id"),
  };
}

/** Reports facts that are looked up by other facts than the table is; where none fits, it is said once, of `by`. */
function checkKeys({ by, gives }: RawTable, report: Report): boolean {
  const needed = gives.map((id) => factOf(id).needs ?? []);
  const [first = []] = needed;
  if (!isSameList(first, by) && needed.every((needs) => isSameList(needs, first))) {
    const text = `what the table gives is looked up by ${inWords(first)}, and by names ${inWords(by)}; correct by or gives`;
    report.atValue("/by", "looked-up-otherwise", text);
    return false;
  }
  let fits = true;
  for (const [index, id] of gives.entries()) {
    const needs = needed[index] ?? [];
    if (isSameList(needs, by)) continue;
    const text = `"${id}" is looked up by ${inWords(needs)}, and this table by ${inWords(by)}; move it to another table`;
    report.atValue(below("/gives", index), "looked-up-otherwise", text);
    fits = false;
  }
  return fits;
}

function isSameList(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((item, index) => item === b[index]);
}

function inWords(facts: readonly string[]): string {
  return facts.length === 0 ? "nothing" : facts.map((id) => `"${id}"`).join(", then ");
}

function readRows(table: RawTable, raw: readonly RawTableRow[], pointer: string, report: Report): readonly TableRow[] {
  const rows: TableRow[] = [];
  for (const [index, written] of raw.entries()) {
    const row = readRow(table, written, below(pointer, index), report);
    if (row) rows.push(row);
  }
  // A row that could not be read has been reported; whether its choices are covered cannot be said.
  if (rows.length === raw.length) checkRows(table.by, rows, pointer, report);
  return rows;
}

function readRow({ by, gives }: RawTable, raw: RawTableRow, pointer: string, report: Report): TableRow | null {
  const wanted = [...by, ...gives];
  const missing = wanted.filter((id) => raw[id] === undefined);
  if (missing.length > 0) {
    const text = `the row has no ${missing.map((id) => `"${id}"`).join(", ")}; add it, a value that nobody has as null`;
    report.atValue(pointer, "incomplete-row", text);
  }
  const surplus = Object.keys(raw).filter((id) => !wanted.includes(id));
  for (const id of surplus) {
    const text = `the table is neither looked up by "${id}" nor gives it; leave it out, or add it to by or gives`;
    report.atKey(below(pointer, id), "not-of-the-table", text);
  }
  if (missing.length > 0 || surplus.length > 0) return null;
  const keys = by.map((id) => readKey(raw[id], id, below(pointer, id), report));
  const values = new Map<string, FactValue | null>();
  for (const id of gives) {
    const value = readValue(raw[id], id, below(pointer, id), report);
    if (value !== undefined) values.set(id, value);
  }
  const read = keys.filter((key) => key !== null);
  if (read.length < by.length || values.size < gives.length) return null;
  return { keys: read, values, at: report.placeOf(pointer) };
}

function readKey(written: unknown, id: string, pointer: string, report: Report): string | boolean | null {
  const reading = readScalar(written, factOf(id));
  if (reading.ok && typeof reading.value !== "number") return reading.value;
  if (!reading.ok) report.atValue(pointer, reading.mistake.code, reading.mistake.text);
  return null;
}

/** Undefined after something was reported. */
function readValue(written: unknown, id: string, pointer: string, report: Report): FactValue | null | undefined {
  if (written === null) return null;
  const definition = factOf(id);
  const reading = readScalar(written, definition);
  if (!reading.ok) {
    report.atValue(pointer, reading.mistake.code, reading.mistake.text);
    return undefined;
  }
  const value = factValueOf(reading.value);
  if (typeof value === "object") checkPlausible(value, definition, pointer, report);
  return value;
}
