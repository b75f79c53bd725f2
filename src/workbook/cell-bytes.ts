const ZERO = 48;
const NINE = 57;
const POINT = 46;
const MINUS = 45;
/** Any whole number of so many digits is exact in a double, and so is any power of ten with which it is divided. */
const EXACT_DIGITS = 15;
const POWERS_OF_TEN = Array.from({ length: EXACT_DIGITS + 1 }, (_, exponent) => 10 ** exponent);

/**
 * The number that plain decimal digits spell, with a sign and a point or without: exactly what JavaScript reads, since
 * one division of two exact numbers is rounded once (W. D. Clinger, How to read floating point numbers accurately,
 * PLDI 1990, the case that needs no more).
 *
 * @returns NaN for anything longer, with an exponent, or that is no number; the text then decides
 */
export function plainNumber(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  const isNegative = bytes[at] === MINUS;
  if (isNegative) at += 1;
  let whole = 0;
  let digits = 0;
  let decimals = -1;
  for (; at < to; at++) {
    const byte = bytes[at] ?? 0;
    if (byte >= ZERO && byte <= NINE) {
      whole = whole * 10 + byte - ZERO;
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if (byte === POINT && decimals < 0) decimals = 0;
    else return Number.NaN;
  }
  if (digits === 0 || digits > EXACT_DIGITS) return Number.NaN;
  const number = decimals > 0 ? whole / (POWERS_OF_TEN[decimals] ?? 1) : whole;
  return isNegative ? -number : number;
}

/** The number that up to nine digits and nothing else spell; -1 for anything else. */
export function plainIndex(bytes: Uint8Array, from: number, to: number): number {
  if (to === from || to - from > 9) return -1;
  let index = 0;
  for (let at = from; at < to; at++) {
    const byte = bytes[at] ?? 0;
    if (byte < ZERO || byte > NINE) return -1;
    index = index * 10 + byte - ZERO;
  }
  return index;
}

/**
 * The column of an address such as AB17 in the row that it must name.
 *
 * @returns 0 for an address of another row or form; the text then decides
 */
export function columnInRow(bytes: Uint8Array, from: number, to: number, row: number): number {
  let column = 0;
  let at = from;
  for (; at < to && at < from + 3; at++) {
    const byte = bytes[at] ?? 0;
    if (byte < 65 || byte > 90) break;
    column = column * 26 + byte - 64;
  }
  return column > 0 && plainIndex(bytes, at, to) === row ? column : 0;
}
