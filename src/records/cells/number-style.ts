import type { Locale } from "../../facts/index.js";

/** What a sign between digits means where three digits follow it, as far as the file settles that. */
export interface NumberStyle {
  readonly point: "decimal" | "group" | null;
  readonly comma: "decimal" | "group" | null;
}

/** Nothing settles it: such numbers are ambiguous. */
export const UNSETTLED: NumberStyle = { point: null, comma: null };

/** How numbers are written in a language; French groups by blanks, so a point before three digits stays open. */
export function styleOfLocale(locale: Locale | null): NumberStyle {
  switch (locale) {
    case "en":
    case "es-MX":
      return { point: "decimal", comma: "group" };
    case "de":
    case "de-CH":
    case "es":
      return { point: "group", comma: "decimal" };
    case "fr":
      return { point: null, comma: "decimal" };
    default:
      return UNSETTLED;
  }
}

/** The style in which the given sign is the decimal one. */
export function styleOfDecimalSign(sign: "." | ","): NumberStyle {
  return sign === "." ? { point: "decimal", comma: "group" } : { point: "group", comma: "decimal" };
}

/**
 * A run of digits and signs as a number.
 *
 * @param digits - digits with points, commas, blanks or apostrophes between them
 * @param style - settles one sign followed by exactly three digits
 * @returns the number, "ambiguous", or null if it is no number in any style
 */
export function readDigits(digits: string, style: NumberStyle): number | "ambiguous" | null {
  const blanksOut = withoutBlanks(digits);
  if (blanksOut === null) return null;
  const signs = blanksOut.match(/[.,]/g) ?? [];
  if (signs.length === 0) return asNumber(blanksOut);
  const last = signs[signs.length - 1] === "." ? "." : ",";
  const bothOccur = new Set(signs).size === 2;
  if (bothOccur) return withDecimalSign(blanksOut, last);
  if (signs.length > 1) return groupsOfThree(blanksOut, last) ? asNumber(blanksOut.replaceAll(last, "")) : null;
  if (!/^(?!0[.,])\d{1,3}[.,]\d{3}$/.test(blanksOut)) return withDecimalSign(blanksOut, last);
  // Blanks already group the thousands, so a sign after them can only be the decimal one.
  if (blanksOut !== digits) return withDecimalSign(blanksOut, last);
  const meaning = last === "." ? style.point : style.comma;
  if (meaning === null) return "ambiguous";
  return meaning === "group" ? asNumber(blanksOut.replace(last, "")) : withDecimalSign(blanksOut, last);
}

/** The decimal sign that a run of digits gives away by itself, or null if it could be written in either style. */
export function decimalSignShown(digits: string): "." | "," | null {
  const text = withoutBlanks(digits);
  const signs = text?.match(/[.,]/g) ?? [];
  if (text === null || signs.length === 0) return null;
  const last = signs[signs.length - 1] === "." ? "." : ",";
  if (new Set(signs).size === 2) return last;
  if (signs.length > 1) return last === "." ? "," : ".";
  return /^(?!0[.,])\d{1,3}[.,]\d{3}$/.test(text) ? null : last;
}

const GROUPING = /[ \u00a0\u202f\u2009'’]/g;

function withoutBlanks(digits: string): string | null {
  if (!/[ \u00a0\u202f\u2009'’]/.test(digits)) return digits;
  return /^\d{1,3}(?:[ \u00a0\u202f\u2009'’]\d{3})+(?:[.,]\d+)?$/.test(digits) ? digits.replace(GROUPING, "") : null;
}

function groupsOfThree(text: string, sign: string): boolean {
  const [first = "", ...rest] = text.split(sign);
  return first.length >= 1 && first.length <= 3 && rest.every((group) => group.length === 3);
}

function withDecimalSign(text: string, decimal: "." | ","): number | null {
  const group = decimal === "." ? "," : ".";
  const cut = text.lastIndexOf(decimal);
  const whole = text.slice(0, cut);
  if (whole.includes(decimal)) return null;
  if (whole.includes(group) && !groupsOfThree(whole, group)) return null;
  return asNumber(`${whole.replaceAll(group, "") || "0"}.${text.slice(cut + 1) || "0"}`);
}

function asNumber(text: string): number | null {
  return /^\d{1,18}(?:\.\d{1,18})?$/.test(text) ? Number(text) : null;
}
