import { foldText, sha256OfData, showText, type TextFile } from "../../base/index.js";
import {
  type ColumnFile,
  type ColumnWord,
  type FactDefinition,
  factOf,
  type MeasuringWays,
  type Settled,
  type SheetWord,
  type StatedAccuracy,
} from "../../facts/index.js";
import type { FileFinding } from "../book/rulebook.js";
import { readAccuracy, readWayNamed } from "../reading/accuracy-reading.js";
import { unitOfColumn, valueOfColumn } from "../reading/column-meaning.js";
import { COLUMNS_SCHEMA, IGNORE } from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import { COLUMN_FILE_LIMITS } from "../text/file-limits.js";
import { checkQuotes } from "../text/quotes.js";
import type { RawColumn, RawColumnFile, RawSheetWord } from "../text/raw.js";
import { readYaml } from "../text/read-yaml.js";
import { below, Report } from "../text/source.js";

/** What a column file says, or what is wrong with it. */
export type ColumnFileReading =
  | { readonly ok: true; readonly columns: ColumnFile }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

const FREE_TEXT = /^(?:\/sheets\/[^/]+)?\/columns\/\d+\/heading$/;

/**
 * Reads a column file: which heading means what, in surveys that come again.
 *
 * @param ways - ways of measuring that it may name
 */
export function readColumnFile(file: TextFile, ways: MeasuringWays = new Map()): ColumnFileReading {
  const reading = readYaml(file, COLUMN_FILE_LIMITS);
  if (!reading.ok) return reading;
  const findings: FileFinding[] = [];
  const report = new Report(reading.source, findings);
  if (!checkSchema(reading.source, COLUMNS_SCHEMA, report)) return { ok: false, findings };
  checkQuotes(report, FREE_TEXT);
  const raw = reading.source.data as RawColumnFile;
  const sheets = Object.entries(raw.sheets ?? {}).map(([name, sheet]) => sheetWord(name, sheet, report, ways));
  checkSheetNames(sheets, report);
  const columns: ColumnFile = {
    file: file.path,
    digest: sha256OfData(raw),
    ...settings(raw, "", report),
    columns: columnWords(raw.columns ?? [], "/columns", report, ways),
    sheets,
  };
  return findings.length > 0 ? { ok: false, findings } : { ok: true, columns };
}

function saidAt(pointer: string, report: Report): string {
  const { file, line } = report.placeOfKey(pointer);
  return `column file ${file} line ${line}`;
}

function settings(
  raw: RawSheetWord,
  pointer: string,
  report: Report,
): Pick<SheetWord, "language" | "decimalSign" | "headingRows"> {
  const settled = <T>(key: string, value: T | undefined): Settled<T> | null =>
    value === undefined ? null : { value, by: saidAt(below(pointer, key), report) };
  return {
    language: settled("language", raw.language),
    decimalSign: settled("decimalSign", raw.decimalSign),
    headingRows: settled("headingRows", raw.headingRows),
  };
}

function sheetWord(name: string, raw: RawSheetWord | string | null, report: Report, ways: MeasuringWays): SheetWord {
  const pointer = below("/sheets", name);
  const by = saidAt(pointer, report);
  const plain = raw === null || typeof raw === "string" ? {} : raw;
  return {
    name,
    leftOut: raw === IGNORE,
    ...settings(plain, pointer, report),
    columns: columnWords(plain.columns ?? [], below(pointer, "columns"), report, ways),
    by,
  };
}

/** Sheets are found folded, so two names that differ in case alone would mean one sheet. */
function checkSheetNames(sheets: readonly SheetWord[], report: Report): void {
  const seen = new Map<string, string>();
  for (const { name } of sheets) {
    const known = seen.get(foldText(name));
    if (known !== undefined) {
      const text = `the sheet "${showText(name)}" stands above as "${showText(known)}"; keep one of them`;
      report.atKey(below("/sheets", name), "said-twice", text);
    }
    seen.set(foldText(name), name);
  }
}

function columnWords(
  columns: readonly RawColumn[],
  pointer: string,
  report: Report,
  ways: MeasuringWays,
): readonly ColumnWord[] {
  const seen = new Map<string, number>();
  return columns.map((raw, i) => {
    const at = below(pointer, i);
    const { heading = null, column: letters = null } = raw;
    if (heading === null && letters === null) {
      report.atValue(at, "no-column", "the column has neither heading nor letters; write which column is meant");
    }
    const key = JSON.stringify([heading === null ? null : foldText(heading), letters]);
    const before = seen.get(key);
    if (before !== undefined) {
      const { line } = report.placeOf(below(pointer, before));
      const which = heading === null ? `column ${letters}` : `the heading "${showText(heading)}"`;
      report.atValue(
        at,
        "said-twice",
        `${which} is named in line ${line} already; keep one, or tell them apart by "column"`,
      );
    }
    seen.set(key, before ?? i);
    return columnWord(raw, at, report, ways);
  });
}

function columnWord(raw: RawColumn, pointer: string, report: Report, ways: MeasuringWays): ColumnWord {
  const by = saidAt(pointer, report);
  const { heading = null, column: letters = null, language = null, decimalSign = null } = raw;
  const word = { heading, letters, language, decimalSign, by };
  if (raw.fact === IGNORE) {
    for (const key of ["unit", "language", "decimalSign", "values", "accuracy", "measuredBy"] as const) {
      if (raw[key] === undefined) continue;
      report.atKey(below(pointer, key), "not-needed", `the column is not read, so it needs no "${key}"; leave it out`);
    }
    return { ...word, fact: null, unit: null, values: new Map() };
  }
  const definition = factOf(raw.fact);
  const unit = raw.unit === undefined ? null : unitOfColumn(raw.unit, definition);
  if (typeof unit === "object" && unit !== null) report.atValue(below(pointer, "unit"), unit.code, unit.text);
  const values = new Map<string, string | boolean>();
  for (const [text, written] of Object.entries(raw.values ?? {})) {
    const meaning = valueOfColumn(written, definition);
    if ("value" in meaning) values.set(text, meaning.value);
    else report.atValue(below(pointer, "values", text), meaning.code, meaning.text);
  }
  const accuracy = accuracyOf(raw, definition, ways, pointer, report);
  return { ...word, fact: raw.fact, unit: typeof unit === "string" ? unit : null, values, accuracy };
}

/** The accuracy that a column is said to have; null where nothing is said, or something wrong. */
function accuracyOf(
  { accuracy, measuredBy }: RawColumn,
  definition: FactDefinition,
  ways: MeasuringWays,
  pointer: string,
  report: Report,
): StatedAccuracy | null {
  if (accuracy !== undefined && measuredBy !== undefined) {
    const text = "the column has an accuracy of its own, so the way of measuring counts for nothing; keep one of them";
    report.atKey(below(pointer, "measuredBy"), "said-twice", text);
    return null;
  }
  if (accuracy === undefined && measuredBy === undefined) return null;
  const [key, read] =
    accuracy === undefined
      ? (["measuredBy", readWayNamed(measuredBy ?? "", definition, ways)] as const)
      : (["accuracy", readAccuracy(accuracy, definition, null)] as const);
  if (!("code" in read)) return read;
  report.atValue(below(pointer, key), read.code, read.text);
  return null;
}
