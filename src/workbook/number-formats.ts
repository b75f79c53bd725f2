import type { NumberFormat } from "./cells.js";

const DATE_IDS = new Set([14, 15, 16, 17, 22, 27, 28, 29, 30, 31, 34, 35, 36, 50, 51, 52, 53, 54, 55, 56, 57, 58]);
const TIME_IDS = new Set([18, 19, 20, 21, 32, 33, 45, 46, 47]);
const PERCENT_IDS = new Set([9, 10]);
const SCIENTIFIC_IDS = new Set([11, 48]);

/** Quoted text, an escaped, padded or repeated character, and what stands in brackets: none of it is a placeholder. */
const NOT_SHOWN = /"[^"]*"?|[\\_*].|\[(?!(?:h+|m+|s+)\])[^\]]*\]?/gis;
const ELAPSED = /\[(?:h+|m+|s+)\]/i;
const NAMED_FORMAT = /general|standard/gi;
const HALF_DAY = /am\/pm|a\/p|上午\/下午/gi;

/** What a number format that every program knows by number says about a number. */
export function builtInFormat(id: number): NumberFormat {
  if (DATE_IDS.has(id)) return "date";
  if (TIME_IDS.has(id)) return "time";
  if (SCIENTIFIC_IDS.has(id)) return "scientific";
  return PERCENT_IDS.has(id) ? "percent" : "general";
}

/**
 * What a format code says about a number: "date" where it shows a day, month or year, "time" where it shows only
 * hours, minutes or seconds, "percent" where it shows a hundredfold, "scientific" where it shows a power of ten.
 *
 * @param code - format code as the file spells it, always in its English letters
 */
export function formatOfCode(code: string): NumberFormat {
  const shown = code.slice(0, 1_000).replace(NOT_SHOWN, "").replace(NAMED_FORMAT, "");
  // Positive numbers use the first of up to four sections.
  const section = (shown.split(";", 1)[0] ?? "").toLowerCase();
  const clock = section.replace(HALF_DAY, "h");
  const isTime = ELAPSED.test(clock) || /[hs]/.test(clock);
  // Digits belong in a date only as fractions of a second; "0 m" is metres of a careless writer.
  const digits = /[0#?]/.test(clock.replace(/s\]?[.,]0+/g, "s"));
  if (!digits && (/[dy]/.test(clock) || /(^|[^e])e(?![+-])/.test(clock) || (/m/.test(clock) && !isTime))) return "date";
  if (!digits && isTime) return "time";
  if (/[0#?]e[+-]/.test(section)) return "scientific";
  return section.includes("%") ? "percent" : "general";
}
