const SHOWN_DIGITS = 6;

/**
 * A number for people: at most `digits` significant digits, decimal point, no grouping, the same on every machine.
 * Not for data that a program reads.
 */
export function formatNumber(value: number, unit: string | null = null, digits: number = SHOWN_DIGITS): string {
  if (!Number.isFinite(value)) return value > 0 ? "without end" : "not a number";
  const shown = String(Number(value.toPrecision(digits)) + 0);
  if (unit === null || unit === "") return shown;
  return unit === "%" || unit === "deg" ? `${shown}${unit === "deg" ? "°" : " %"}` : `${shown} ${unit}`;
}

/** "1 point", "3 points". */
export function countOf(count: number, one: string, many: string = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
