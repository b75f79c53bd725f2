import type { Truth } from "./truth.js";

/**
 * Where a number can lie: one value (both ends equal), a value with its accuracy, or a bound
 * (`lowest` -Infinity for "at most", `highest` Infinity for "at least"). Never empty, never NaN.
 */
export interface Interval {
  readonly lowest: number;
  readonly highest: number;
}

/** The interval that holds one value alone. */
export function single(value: number): Interval {
  return { lowest: value, highest: value };
}

/** Whether the interval holds one value alone, so that a comparison with it is always decided. */
export function isSingle(interval: Interval): boolean {
  return interval.lowest === interval.highest;
}

/** Is a below b? Decided only when it holds, or fails, wherever in their intervals the two lie. */
export function isBelow(a: Interval, b: Interval): Truth {
  if (a.highest < b.lowest) return true;
  if (a.lowest >= b.highest) return false;
  return null;
}

/** Is a at or below b? */
export function isAtOrBelow(a: Interval, b: Interval): Truth {
  if (a.highest <= b.lowest) return true;
  if (a.lowest > b.highest) return false;
  return null;
}

/** Are a and b the same number? Two wide intervals that meet leave it open. */
export function isSameNumber(a: Interval, b: Interval): Truth {
  if (a.highest < b.lowest || b.highest < a.lowest) return false;
  return isSingle(a) && isSingle(b) ? true : null;
}
