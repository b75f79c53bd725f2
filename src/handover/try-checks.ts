import { didYouMean, isPlainDay, showText } from "../base/index.js";
import { findFact } from "../facts/index.js";
import { below, type Report, readGiven } from "../rulebook/index.js";
import { FIELDS } from "./fields.js";
import { type Found, foundOfFact, foundOfField, type Lookup } from "./found.js";
import { groupLookup } from "./group-lookup.js";
import type { Mapping, Target } from "./mapping.js";
import type { RawCheck, RawGiven, RawMapping } from "./raw.js";
import { keyOfRow } from "./row-maker.js";
import { type RowLookups, writeColumn } from "./write-value.js";

/** Tries the sample rows that a mapping brings: what each column would write of them, beside what is expected. */
export function tryChecks(raw: RawMapping, mapping: Mapping, report: Report): void {
  for (const [index, check] of (raw.checks ?? []).entries()) {
    const pointer = below("/checks", index);
    const target = mapping.targets.find(({ id }) => id === check.target);
    if (target) tryCheck(check, target, pointer, report);
    else {
      const near =
        didYouMean(
          check.target,
          mapping.targets.map(({ id }) => id),
        ) || "; use the id of a target of this mapping";
      report.atValue(
        below(pointer, "target"),
        "unknown-target",
        `there is no target "${showText(check.target)}"${near}`,
      );
    }
  }
}

function tryCheck(check: RawCheck, target: Target, pointer: string, report: Report): void {
  const lookups = lookupsOf(check, target, pointer, report);
  if (lookups === null) return;
  const { expect = {}, refuses = [] } = check;
  const headings = target.columns.map(({ heading }) => heading);
  for (const [key, named] of [
    ["expect", Object.keys(expect)],
    ["refuses", refuses],
  ] as const) {
    for (const heading of named.filter((heading) => !headings.includes(heading))) {
      const at = key === "expect" ? below(pointer, key, heading) : below(pointer, key);
      const near = didYouMean(heading, headings) || "; use a heading of the target";
      report.atKey(at, "unknown-heading", `"${target.id}" has no column "${showText(heading)}"${near}`);
    }
  }
  for (const column of target.columns) {
    const { heading } = column;
    const wanted = expect[heading];
    const refused = refuses.includes(heading);
    if (wanted === undefined && !refused) continue;
    const written = writeColumn(column, target.form, lookups);
    const [first] = written.refused;
    if (refused) {
      if (!first)
        report.atValue(
          below(pointer, "refuses"),
          "not-refused",
          `${check.name}: "${heading}" is written as ${shown(written.value)}, not refused`,
        );
    } else if (first) {
      report.atValue(
        below(pointer, "expect", heading),
        "refused",
        `${check.name}: "${heading}" is refused: ${first.text}`,
      );
    } else if (written.value !== wanted) {
      const text = `${check.name}: "${heading}" is written as ${shown(written.value)}, expected ${shown(wanted ?? null)}`;
      report.atValue(below(pointer, "expect", heading), "not-as-expected", text);
    }
  }
}

function lookupsOf(check: RawCheck, target: Target, pointer: string, report: Report): RowLookups | null {
  const { rows } = target;
  const isList = Array.isArray(check.given);
  const given = (isList ? check.given : [check.given]) as readonly RawGiven[];
  const points = given.map((values, index) =>
    givenLookup(values, isList ? below(pointer, "given", index) : below(pointer, "given"), report),
  );
  const [first] = points;
  if (first === undefined || points.includes(null)) return null;
  const lookups = points.filter((lookup) => lookup !== null);
  if (first === null) return null;
  const named = lookups.map((lookup, index) => ({ name: `point ${index + 1}`, lookup }));
  if (!("per" in rows)) {
    if (named.length === 1) return { row: first, points: named };
    report.atValue(below(pointer, "given"), "one-point", `a row of "${target.id}" speaks of one point; give one`);
    return null;
  }
  const key = keyOfRow(rows.one, rows.per, first);
  return { row: groupLookup({ id: key.ok ? key.id : null, run: first, points: named }), points: named };
}

/** Looks up the values that a check gives; what it does not give is empty. */
function givenLookup(given: RawGiven, pointer: string, report: Report): Lookup | null {
  const fields = new Map<string, Found | null>();
  const facts = new Map<string, Parameters<typeof foundOfFact>[2]>();
  let fine = true;
  const wrong = (name: string, code: string, text: string): void => {
    fine = false;
    report.atValue(below(pointer, name), code, text);
  };
  for (const [name, written] of Object.entries(given)) {
    const definition = findFact(name);
    if (FIELDS[name] !== undefined) {
      const mistake = fieldMistake(name, written);
      if (mistake === null) fields.set(name, foundOfField(name, written as string | number | boolean | null));
      else wrong(name, "wrong-kind", mistake);
    } else if (definition === undefined) {
      const near = didYouMean(name, Object.keys(FIELDS)) || "; give fields of the results and facts of the catalogue";
      wrong(name, "unknown-name", `"${showText(name)}" is no field and no fact${near}`);
    } else {
      const reading = readGiven(written, definition);
      if (reading.ok) facts.set(name, reading.value);
      else wrong(name, reading.mistake.code, reading.mistake.text);
    }
  }
  if (!fine) return null;
  return (name) =>
    name.of === "field"
      ? { ok: true, found: fields.get(name.name) ?? null }
      : foundOfFact(name.id, name.unit?.id ?? null, facts.get(name.id));
}

function fieldMistake(name: string, written: unknown): string | null {
  const { kind, choices } = FIELDS[name] ?? {};
  if (written === null) return null;
  if (kind === "yes-no") return typeof written === "boolean" ? null : `"${name}" is true or false, without quotes`;
  if (kind === "count") return Number.isInteger(written) ? null : `"${name}" is a whole number`;
  if (typeof written !== "string") return `"${name}" is a text; put it in quotes`;
  if (kind === "date")
    return isPlainDay(written) ? null : `"${showText(written)}" is not a day that exists; write it YYYY-MM-DD`;
  if (choices === undefined || choices.includes(written)) return null;
  return `"${showText(written)}" is no word of "${name}"${didYouMean(written, choices) || `; it has ${choices.join(", ")}`}`;
}

function shown(value: string | null): string {
  return value === null ? "nothing" : `"${showText(value, 400)}"`;
}
