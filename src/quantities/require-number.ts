/**
 * Hands a number on if it is finite and above zero.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requirePositive(name: string, value: number): number {
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`${name} must be a number above 0, got ${value}`);
  return value;
}

/**
 * Hands a number on if it is finite and not below zero.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requireNotNegative(name: string, value: number): number {
  if (!Number.isFinite(value) || value < 0) throw new RangeError(`${name} must be 0 or above, got ${value}`);
  return value;
}

/**
 * Hands a number on if it lies from `lowest` to `highest`, both ends included.
 *
 * @param name - name of the argument, for the message
 * @throws RangeError otherwise
 */
export function requireWithin(name: string, value: number, lowest: number, highest: number): number {
  if (!(value >= lowest && value <= highest)) {
    throw new RangeError(`${name} must lie from ${lowest} to ${highest}, got ${value}`);
  }
  return value;
}

/** An interval with both ends finite and in order, as the calculations with scatter need it. */
export function requireBounded(name: string, interval: { readonly lowest: number; readonly highest: number }): void {
  const { lowest, highest } = interval;
  if (!Number.isFinite(lowest) || !Number.isFinite(highest) || lowest > highest) {
    throw new RangeError(`${name} must be an interval with two finite ends, got ${lowest} to ${highest}`);
  }
}
