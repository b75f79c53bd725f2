import { dayExists, foldText, plainDay } from "../../base/index.js";
import type { Locale } from "../../facts/index.js";
import { type CellReading, type CellTrouble, trouble } from "./cell-reading.js";

/** Day numbers that a bare whole number may stand for: 1954 to 2119, the lives of machines and their dates. */
const FIRST_BARE_DAY = 20_000;
const LAST_BARE_DAY = 80_000;
const LAST_DAY = 2_958_465;
/** Days between the two date systems of spreadsheet programs. */
const DAYS_1904 = 1462;

/** Beginnings of month names, folded, in the four languages; the longest that fits counts. */
const MONTHS: readonly (readonly [string, number])[] = [
  ["jan", 1],
  ["ene", 1],
  ["feb", 2],
  ["fev", 2],
  ["mar", 3],
  ["mrz", 3],
  ["apr", 4],
  ["avr", 4],
  ["abr", 4],
  ["may", 5],
  ["mai", 5],
  ["mayo", 5],
  ["jun", 6],
  ["juin", 6],
  ["jul", 7],
  ["juil", 7],
  ["aug", 8],
  ["ago", 8],
  ["aou", 8],
  ["sep", 9],
  ["oct", 10],
  ["okt", 10],
  ["nov", 11],
  ["dec", 12],
  ["dez", 12],
  ["dic", 12],
];

/**
 * A spreadsheet day number as a day.
 *
 * @param serial - as stored; the fraction is the time of day and is dropped
 * @param dateSystem - year in which the workbook's count starts
 * @param marked - the cell's format says that it is a date
 */
export function readDayNumber(serial: number, dateSystem: 1900 | 1904, marked: boolean): CellReading {
  const day = Math.floor(serial) + (dateSystem === 1904 ? DAYS_1904 : 0);
  const bare = Number.isInteger(serial) && day >= FIRST_BARE_DAY && day <= LAST_BARE_DAY;
  if (!(marked ? day >= 61 && day <= LAST_DAY : bare)) return notADate();
  const date = new Date(Date.UTC(1899, 11, 30) + day * 86_400_000);
  return { ok: true, kind: "word", value: date.toISOString().slice(0, 10), remarks: [] };
}

/**
 * Reads a day as people write it: year-month-day; day first with points; with strokes as the language has it,
 * in English (or without a language) only where one part cannot be a month.
 */
export function readDateText(text: string, locale: Locale | null): CellReading {
  if (text.length > 60) return notADate();
  const tidy = text.trim();
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:?\d{2})?)?$/.exec(
    tidy,
  );
  if (iso) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const years = /^(\d{4})[./](\d{1,2})[./](\d{1,2})$/.exec(tidy);
  if (years) return dayOf(Number(years[1]), Number(years[2]), Number(years[3]));
  const parts = /^(\d{1,2})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{2}|\d{4})$/.exec(tidy);
  if (parts) return numericDate(Number(parts[1]), Number(parts[3]), fullYear(parts[4] ?? ""), parts[2] === ".", locale);
  return namedMonth(tidy) ?? notADate();
}

function numericDate(first: number, second: number, year: number, points: boolean, locale: Locale | null): CellReading {
  const english = locale === null || locale === "en";
  if (points || !english) return dayOf(year, second, first);
  if (first > 12) return dayOf(year, second, first);
  if (second > 12) return dayOf(year, first, second);
  if (first === second) return dayOf(year, second, first);
  return trouble("ambiguous-date", "day and month can be swapped; write the date as year-month-day");
}

function namedMonth(text: string): CellReading | null {
  const folded = foldText(text)
    .replace(/[.,]/g, " ")
    .replace(/\b(?:de|del|den|le)\b/g, " ")
    .replace(/\s+/g, " ")
    .trim();
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th|er)?[ -]?([a-z]{3,10})[ -]?(\d{4}|\d{2})$/.exec(folded);
  const monthFirst = /^([a-z]{3,10}) (\d{1,2})(?:st|nd|rd|th)? (\d{4})$/.exec(folded);
  const name = dayFirst?.[2] ?? monthFirst?.[1];
  const month =
    name && [...MONTHS].sort((a, b) => b[0].length - a[0].length).find(([start]) => name.startsWith(start))?.[1];
  if (!month) return null;
  return dayOf(fullYear(dayFirst?.[3] ?? monthFirst?.[3] ?? ""), month, Number(dayFirst?.[1] ?? monthFirst?.[2]));
}

function fullYear(text: string): number {
  return text.length === 2 ? 2000 + Number(text) : Number(text);
}

function dayOf(year: number, month: number, day: number): CellReading {
  if (!dayExists(year, month, day))
    return trouble("impossible-date", "this day does not exist; write it as year-month-day");
  return { ok: true, kind: "word", value: plainDay(year, month, day), remarks: [] };
}

function notADate(): CellTrouble {
  return trouble("not-a-date", "expected a day, written year-month-day");
}
