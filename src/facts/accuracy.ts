import { type Interval, round12 } from "../base/index.js";
import type { FactDefinition } from "./definition.js";
import type { KnownFact } from "./state.js";

/** How far a number may be off, to both sides: so much in the unit of its fact, and so many percent of the value. */
export interface Accuracy {
  readonly plusMinus: number;
  readonly percent: number;
}

/** An accuracy, and what says so. */
export interface StatedAccuracy {
  readonly accuracy: Accuracy;
  /** The way of measuring whose accuracy it is; null where somebody states the accuracy itself. */
  readonly way: string | null;
  /** As a column file writes it: "0.5 mm", "2 %", or the id of the way. */
  readonly written: string;
  /** For people: "± 0.5 mm of a steel rule". */
  readonly words: string;
}

/** Half the width that the accuracy gives to one value, in the unit of the fact. */
export function halfWidth({ plusMinus, percent }: Accuracy, value: number): number {
  return round12(plusMinus + (Math.abs(value) * percent) / 100);
}

/**
 * Where a number can lie that was read as the interval and is so accurate; a bound moves on its known side alone.
 *
 * @param definition - of the fact, which says what cannot be (a depth below 0)
 */
export function widened({ lowest, highest }: Interval, accuracy: Accuracy, definition: FactDefinition): Interval {
  return withinPossible(
    {
      lowest: Number.isFinite(lowest) ? round12(lowest - halfWidth(accuracy, lowest)) : lowest,
      highest: Number.isFinite(highest) ? round12(highest + halfWidth(accuracy, highest)) : highest,
    },
    definition,
  );
}

/** The interval without what lies below nothing, of a fact that is never negative. */
export function withinPossible(interval: Interval, { plausible }: FactDefinition): Interval {
  if (!plausible || plausible.lowest < 0 || interval.lowest >= 0 || !Number.isFinite(interval.lowest)) return interval;
  return { lowest: 0, highest: Math.max(0, interval.highest) };
}

/**
 * The number that was read, of one that is kept as an interval: its accuracy below the upper end, since the lower one
 * may be cut off at nothing. Null for a bound and for what is no number.
 */
export function readingOf({ value, accuracy }: Pick<KnownFact, "value" | "accuracy">): number | null {
  if (typeof value !== "object" || !Number.isFinite(value.lowest) || !Number.isFinite(value.highest)) return null;
  return round12(accuracy === undefined ? (value.lowest + value.highest) / 2 : value.highest - accuracy);
}
