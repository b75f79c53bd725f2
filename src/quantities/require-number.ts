// Every quantity a survey or a rule can state lies far inside these ends, in any unit used here. Within them no formula
// of this folder overflows, underflows to zero or gives NaN, so results need no guard of their own.
const SMALLEST = 1e-12;
const LARGEST = 1e12;

/**
 * Hands a number on if it is finite, above zero, and of a size that can be meant.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requirePositive(name: string, value: number): number {
  if (!(value >= SMALLEST && value <= LARGEST)) refuse(name, "a number above 0, at most 1e12", value);
  return value;
}

/**
 * Hands a number on if it is zero or above, and of a size that can be meant. Never a divisor: it may be tiny.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requireNotNegative(name: string, value: number): number {
  if (!(value >= 0 && value <= LARGEST)) refuse(name, "a number from 0 to 1e12", value);
  return value;
}

/**
 * Hands a number on if it lies from `lowest` to `highest`, both ends included.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requireWithin(name: string, value: number, lowest: number, highest: number): number {
  if (!(value >= lowest && value <= highest)) refuse(name, `a number from ${lowest} to ${highest}`, value);
  return value;
}

/**
 * Hands a whole number on if it is not less than `least`.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requireCount(name: string, value: number, least: number): number {
  if (!(Number.isSafeInteger(value) && value >= least && value <= LARGEST)) {
    refuse(name, `a whole number of at least ${least}`, value);
  }
  return value;
}

/**
 * Passes an interval with both ends finite and in order, as the calculations with scatter need it.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requireBounded(name: string, interval: { readonly lowest: number; readonly highest: number }): void {
  const { lowest, highest } = interval;
  if (!Number.isFinite(lowest) || !Number.isFinite(highest) || lowest > highest) {
    throw new RangeError(`${name} must be an interval with two finite ends, got ${lowest} to ${highest}`);
  }
}

function refuse(name: string, wanted: string, found: number): never {
  throw new RangeError(`${name} must be ${wanted}, got ${found}`);
}
