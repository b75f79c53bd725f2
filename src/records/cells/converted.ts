import type { CellValue } from "../../workbook/index.js";
import { readDateText } from "./cell-date.js";
import { type CellTrouble, trouble } from "./cell-reading.js";

/** Short months as spreadsheet programs show them, in English and German with a capital, in Spanish and French without. */
const MONTH =
  "(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec|Mrz|Mär|Mai|Okt|Dez" +
  "|ene|feb|mar|abr|may|jun|jul|ago|sep|sept|oct|nov|dic|janv|févr|mars|avr|mai|juin|juil|août|déc)";
/** What a program shows where 10-12 or 1/4-28 was typed: 12-Oct, 12. Okt, Oct-12, janv-28. Capitals (DEC-12) are codes. */
const SHORT_DATE = new RegExp(`^(?:\\d{1,2}(?:-|\\. ?| )${MONTH}\\.?|${MONTH}\\.?[- ]\\d{2})$`);
/** What a program shows for 2E5 and for long runs of digits. */
const SCIENTIFIC = /^\d(?:[.,]\d+)?E\+\d{1,3}$/;
const YEAR = /(?:^|\D)(?:19|20)\d{2}(?:$|\D)/;
/** From here on a program keeps fewer digits than were typed. */
const LOST_DIGITS = 1e15;

/**
 * The spreadsheet program seems to have made a date or another number out of a code.
 *
 * @param into - the day that it made, where it is known
 */
export function looksConverted(into: string | null = null): CellTrouble {
  const made = into === null ? "a date or a number" : `the date ${into}`;
  return trouble(
    "looks-converted",
    `the spreadsheet program seems to have turned a code into ${made}; type it as text`,
  );
}

/** Whether a text is what a spreadsheet program makes of a code or a range of numbers that it takes for a date. */
export function isConvertedText(text: string): boolean {
  const tidy = text.trim();
  if (tidy.length > 30 || !/\d/.test(tidy)) return false;
  if (SHORT_DATE.test(tidy) || SCIENTIFIC.test(tidy)) return true;
  return YEAR.test(tidy) && readDateText(tidy, "de").ok;
}

/** Whether a number that stands for a code has lost digits, or the way in which it was typed. */
export function isConvertedNumber({ number, format }: Extract<CellValue, { kind: "number" }>): boolean {
  return format === "scientific" || !Number.isInteger(number) || number < 0 || number >= LOST_DIGITS;
}

/** The trouble of a code that is shorter than its neighbours, or null. */
export function lostZeros(digits: string, width: number | undefined): CellTrouble | null {
  if (width === undefined || !/^\d+$/.test(digits.trim()) || digits.trim().length >= width) return null;
  return trouble(
    "looks-converted",
    `the codes beside it have ${width} digits; the spreadsheet program seems to have dropped zeros; type it as text`,
  );
}
