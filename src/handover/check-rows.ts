import { looksLikeFormula, showText } from "../base/index.js";
import type { Target } from "./mapping.js";
import type { Gathered, MappingProblem, MappingRemark } from "./problems.js";
import type { NamedRow } from "./row-maker.js";

/** Refuses ids and keys that stand twice, and keys that differ by nothing but case. */
export function checkTwice(target: Target, rows: readonly NamedRow[], problems: Gathered<MappingProblem>): void {
  const ids = new Map<string, NamedRow>();
  const keys = new Map<string, NamedRow>();
  const places = keyPlaces(target);
  for (const named of rows) {
    const { row, name } = named;
    const add = (column: string | null, code: string, text: string): void =>
      problems.add({ target: target.id, column, of: name, code, text });
    const same = ids.get(row.id);
    if (same)
      add(null, "id-twice", `its id ${row.id} is that of ${same.name}, too; mend one in the survey, or filter them`);
    else ids.set(row.id, named);
    if (places.length === 0 || same) continue;
    const written = places.map((place) => row.values[place] ?? "");
    if (written.includes("")) continue;
    const key = JSON.stringify(written.map((value) => value.normalize("NFC").toLowerCase()));
    const other = keys.get(key);
    if (!other) {
      keys.set(key, named);
      continue;
    }
    const alike = places.every((place) => other.row.values[place] === row.values[place]);
    const found = `"${showText(written.join(" "))}" ${alike ? "is" : "differs by nothing but case from"} the key of ${other.name}`;
    add(headingsOf(target), "key-twice", `${found}; no two rows may have one key, so mend it in the survey`);
  }
}

/** Refuses values that refer to a row that no target before writes. */
export function checkReferred(
  target: Target,
  rows: readonly NamedRow[],
  keysOf: ReadonlyMap<string, ReadonlySet<string>>,
  problems: Gathered<MappingProblem>,
): void {
  for (const [place, { heading, references }] of target.columns.entries()) {
    const keys = references === null ? undefined : keysOf.get(references);
    if (keys === undefined) continue;
    for (const { row, name } of rows) {
      const value = row.values[place] ?? "";
      if (value === "" || keys.has(value)) continue;
      const text = `"${showText(value)}" is no key that "${references}" writes; what is referred to must be loaded first, so let both targets take the same points`;
      problems.add({ target: target.id, column: heading, of: name, code: "refers-to-nothing", text });
    }
  }
}

/** Rows below the heading that a sheet of a workbook holds. */
const MOST_IN_SHEET = 1_048_575;

/** Refuses more rows than a sheet holds. */
export function checkRoom({ id, form, rowLimit }: Target, rows: number, problems: Gathered<MappingProblem>): void {
  if (form.kind !== "xlsx" || rowLimit !== null || rows <= MOST_IN_SHEET) return;
  const text = `${rows} rows, and a sheet holds ${MOST_IN_SHEET} below its headings; give a rowLimit, and put {part} into the file name`;
  problems.add({ target: id, column: null, of: "all rows", code: "too-many-rows", text });
}

/** Remarks, once for a column, on codes in a text table that a spreadsheet program would take for formulas. */
export function remarkOnCodes(
  { id, form, columns }: Target,
  rows: readonly NamedRow[],
  remarks: Gathered<MappingRemark>,
): void {
  if (form.kind !== "csv") return;
  for (const [place, { heading, type }] of columns.entries()) {
    const count = rows.filter(({ row }) => looksLikeFormula(row.values[place] ?? "")).length;
    if (type !== "code" || count === 0) continue;
    const text =
      "they begin like formulas and are written unchanged; the file is for import by a program, not to be opened in a spreadsheet program (a file name in .xlsx is safe there)";
    remarks.add({ target: id, column: heading, of: `${count} of ${rows.length} codes`, text });
  }
}

/** The keys that a target writes, where it has one key column. */
export function keysWritten(target: Target, rows: readonly NamedRow[]): ReadonlySet<string> {
  const [place, more] = keyPlaces(target);
  if (place === undefined || more !== undefined) return new Set();
  return new Set(rows.flatMap(({ row }) => row.values[place] ?? []));
}

function keyPlaces({ columns }: Target): readonly number[] {
  return columns.flatMap(({ key }, place) => (key ? [place] : []));
}

function headingsOf({ columns }: Target): string {
  return columns.flatMap(({ heading, key }) => (key ? [heading] : [])).join(", ");
}
