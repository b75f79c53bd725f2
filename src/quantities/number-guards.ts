// Every quantity a survey or a rule can state lies far inside these ends, in any unit used here. Within them no formula
// of this folder overflows, underflows to zero or gives NaN, so results need no guard of their own.
const SMALLEST = 1e-12;
const LARGEST = 1e12;

/** Throws a RangeError unless the value is a finite number above zero, and of a size that can be meant. */
export function mustBePositive(name: string, value: number): void {
  if (!(value >= SMALLEST && value <= LARGEST)) refuse(name, "a number above 0, at most 1e12", value);
}

/** Throws a RangeError unless the value is zero or above, and of a size that can be meant. Never a divisor: it may be tiny. */
export function mustNotBeNegative(name: string, value: number): void {
  if (!(value >= 0 && value <= LARGEST)) refuse(name, "a number from 0 to 1e12", value);
}

/** Throws a RangeError unless lowest ≤ value ≤ highest. */
export function mustBeWithin(name: string, value: number, lowest: number, highest: number): void {
  if (!(value >= lowest && value <= highest)) refuse(name, `a number from ${lowest} to ${highest}`, value);
}

/** Throws a RangeError unless the value is a whole number from `least` up. */
export function mustBeCount(name: string, value: number, least: number): void {
  if (!(Number.isSafeInteger(value) && value >= least && value <= LARGEST)) {
    refuse(name, `a whole number of at least ${least}`, value);
  }
}

function refuse(name: string, wanted: string, found: number): never {
  throw new RangeError(`${name} must be ${wanted}, got ${found}`);
}
