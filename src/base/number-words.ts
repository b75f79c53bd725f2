const SHOWN_DIGITS = 6;

/**
 * A number for people: at most `digits` significant digits, decimal point, no grouping, the same on every machine.
 * Not for data that a program reads.
 *
 * @param unit - id of the unit, written behind the number; null or empty for none
 */
export function formatNumber(value: number, unit: string | null = null, digits: number = SHOWN_DIGITS): string {
  if (!Number.isFinite(value)) return value > 0 ? "without end" : "not a number";
  const shown = String(Number(value.toPrecision(digits)) + 0);
  if (unit === null || unit === "") return shown;
  if (unit === "deg") return `${shown}°`;
  return `${shown} ${shown === "1" && COUNTED.test(unit) ? unit.replace(/(?<=ch)es$|s$/, "") : unit}`;
}

/** What is counted stands in the plural (points, spectral lines). */
const COUNTED = /^[a-z ]{3,}s$/;
