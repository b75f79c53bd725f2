import { nice, tickIncrement } from "d3-array";
import { round12 } from "../base/index.js";

/** Values that a range without a step of its own is divided into, about. */
const STEPS = 20;
/** Steps of one table; more is a slip in the step. */
export const MOST_STEPS = 1000;

/** What a person asked for; left out where the surveys are to decide. */
export interface RangeAsked {
  readonly from: number | null;
  readonly to: number | null;
  readonly step: number | null;
}

/** The range that is looked at, and the values that a table shows of it, the limit in force among them. */
export interface Steps {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly values: readonly number[];
}

/**
 * The range and the values to look at. Where none is asked for, it goes from the lowest to the highest value that the
 * surveys have between half and twice the limit in force, widened to round numbers.
 *
 * @param met - values of the number at which some point meets the limit
 * @param fits - whether the number can have a value at all
 * @returns a sentence where what was asked for cannot be meant
 */
export function stepsOf(
  asked: RangeAsked,
  inForce: number,
  met: readonly number[],
  fits: (value: number) => boolean,
): Steps | string {
  if (asked.step !== null && asked.step <= 0) return "--step: expected a number above 0";
  const [low, high] = niceRange(inForce, met);
  const from = asked.from ?? trimmed(low, inForce, fits);
  const to = asked.to ?? trimmed(high, inForce, fits);
  if (from >= to) return `--from ${from} does not lie below --to ${to}`;
  const step = asked.step ?? stepOf(from, to);
  const count = Math.floor(round12((to - from) / step));
  if (count > MOST_STEPS)
    return `--step: ${step} makes ${count} steps; at most ${MOST_STEPS} are shown, so take a larger one`;
  const start = asked.from === null && asked.step === null ? Math.ceil(round12(from / step)) * step : from;
  const values = new Set([from, to]);
  for (let i = 0; round12(start + i * step) <= to; i++) values.add(round12(start + i * step));
  if (inForce >= from && inForce <= to) values.add(inForce);
  const inOrder = [...values].sort((a, b) => a - b);
  return { from, to, step, values: inOrder };
}

function niceRange(inForce: number, met: readonly number[]): readonly [number, number] {
  const [half, twice] = [inForce / 2, inForce * 2].sort((a, b) => a - b);
  const near = inForce === 0 ? met : met.filter((value) => value >= (half ?? value) && value <= (twice ?? value));
  let [low, high] = [inForce, inForce];
  for (const value of near) [low, high] = [Math.min(low, value), Math.max(high, value)];
  if (low === high) {
    // Nothing is near; a tenth to both sides shows as much.
    const room = inForce === 0 ? 1 : Math.abs(inForce) / 10;
    [low, high] = [low - room, high + room];
  }
  const [from, to] = nice(low, high, STEPS);
  return [round12(from), round12(to)];
}

function stepOf(from: number, to: number): number {
  const increment = tickIncrement(from, to, STEPS);
  // Steps below 1 come as the number of steps in 1, negative.
  return round12(increment < 0 ? 1 / -increment : increment);
}

/** Half of the way back, again and again, until the number can be meant. */
function trimmed(value: number, inForce: number, fits: (value: number) => boolean): number {
  let fitting = value;
  for (let i = 0; i < 60 && !fits(fitting); i++) fitting = round12(inForce + (fitting - inForce) / 2);
  return fits(fitting) ? fitting : inForce;
}
