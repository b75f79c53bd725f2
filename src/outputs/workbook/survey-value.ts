import { looksLikeFormula, round12 } from "../../base/index.js";
import type { CellValue, NumberFormat, RawWorkbook } from "../../workbook/index.js";
import { cellText } from "./cell-text.js";

/** What is written into a cell: the value and, where it needs one, its number format. */
export interface WrittenValue {
  readonly value: string | number | boolean;
  readonly format?: string;
}

/** Text format; `fixedPackage` gives cells of this format the mark that they are text, whatever they look like. */
const TEXT_FORMAT = "@";

/** Days between the first days of the two date systems. */
const DAYS_TO_1904 = 1462;
const MOMENT = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?)?Z?$/;
/** The first day from which the serial numbers of the 1900 system are right. */
const FIRST_SAFE_SERIAL = 61;
const DAY_MS = 86_400_000;

/** A text as written; one that could be taken for a formula is marked as text. */
export function writtenText(text: string): WrittenValue {
  const value = cellText(text);
  return looksLikeFormula(value) ? { value, format: TEXT_FORMAT } : { value };
}

/**
 * The value of a survey cell as the screened workbook shows it. A formula is never written: its saved result is.
 *
 * @param from - date system of the survey
 * @param to - date system of the screened workbook
 */
export function writtenValue(
  value: CellValue,
  from: RawWorkbook["dateSystem"],
  to: RawWorkbook["dateSystem"],
): WrittenValue {
  switch (value.kind) {
    case "text":
    case "error":
      return writtenText(value.text);
    case "boolean":
      return { value: value.boolean };
    case "date":
      return writtenMoment(value.iso, to);
    case "number":
      return writtenNumber(value.number, value.format, from === to ? 0 : from - to);
    case "no-result":
      return { value: "[formula without a saved result]" };
    case "unusable":
      return { value: cellText(`[cannot be shown: ${value.why}]`) };
  }
}

function writtenNumber(number: number, format: NumberFormat, years: number): WrittenValue {
  if (!Number.isFinite(number)) return { value: `[not a number: ${number}]` };
  if (format === "general") return { value: number };
  if (format === "percent") return { value: number, format: Number.isInteger(round12(number * 100)) ? "0%" : "0.0##%" };
  if (format === "scientific") return { value: number, format: "0.00E+00" };
  if (format === "time") return { value: number, format: "hh:mm:ss" };
  const serial = number + Math.sign(years) * DAYS_TO_1904;
  return { value: serial, format: dateFormat(serial) };
}

function dateFormat(serial: number): string {
  return Number.isInteger(serial) ? "yyyy-mm-dd" : "yyyy-mm-dd hh:mm";
}

function writtenMoment(iso: string, to: RawWorkbook["dateSystem"]): WrittenValue {
  const parts = MOMENT.exec(iso);
  const start = Date.parse(`${parts?.[1]}T00:00:00Z`);
  if (!parts || Number.isNaN(start)) return writtenText(iso);
  const seconds = Number(parts[2] ?? 0) * 3600 + Number(parts[3] ?? 0) * 60 + Number(parts[4] ?? 0);
  const days = (start - Date.UTC(1899, 11, 30)) / DAY_MS + seconds / 86_400;
  const serial = to === 1904 ? days - DAYS_TO_1904 : days;
  if (days < FIRST_SAFE_SERIAL || serial < 0) return writtenText(iso);
  return { value: serial, format: dateFormat(serial) };
}
