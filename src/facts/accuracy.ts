import { convert, formatNumber, type Interval, round12 } from "../base/index.js";
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

/**
 * The accuracy that somebody states for the values of a fact.
 *
 * @param unit - id of a unit of the fact; null for percent of the value
 */
export function statedAccuracy(number: number, unit: string | null, definition: FactDefinition): StatedAccuracy {
  const accuracy: Accuracy =
    unit === null
      ? { plusMinus: 0, percent: number }
      : { plusMinus: differenceIn(number, unit, definition), percent: 0 };
  return {
    accuracy,
    way: null,
    written: `${plainNumber(number)} ${unit ?? "%"}`,
    words: `${accuracyInWords(accuracy, definition.unit ?? null)} as stated for its column`,
  };
}

/** A difference in a unit of the fact, in the unit of the fact itself: 2 °F are 1.1 °C, not −16.7 °C. */
export function differenceIn(number: number, unit: string, { dimension, unit: to }: FactDefinition): number {
  if (dimension === undefined || to === undefined) return number;
  return round12(Math.abs(convert(number, unit, to, dimension) - convert(0, unit, to, dimension)));
}

/** An accuracy for people: "± 0.5 mm", "± 2 % of the value", "± (0.1 mm + 1 % of the value)". */
export function accuracyInWords({ plusMinus, percent }: Accuracy, unit: string | null): string {
  const fixed = formatNumber(plusMinus, unit);
  if (percent === 0) return `± ${fixed}`;
  const share = `${formatNumber(percent, "%")} of the value`;
  return plusMinus === 0 ? `± ${share}` : `± (${fixed} + ${share})`;
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

/** A known number made as wide as its accuracy; what is no number, or states its own accuracy, stays as it is. */
export function withAccuracy<Known extends Omit<KnownFact, "origin">>(
  said: Known,
  { accuracy, words }: StatedAccuracy,
  definition: FactDefinition,
): Known {
  const { value, assumed } = said;
  if (typeof value !== "object" || said.accuracy !== undefined) return said;
  const interval = widened(value, accuracy, definition);
  const ends = [value.lowest, value.highest].filter(Number.isFinite);
  const half = halfWidth(accuracy, Math.max(...ends.map(Math.abs)));
  // Two ends already apart lie half their distance from what counts as the reading.
  const apart = ends.length === 2 ? round12((value.highest - value.lowest) / 2) : 0;
  if (half === 0) return { ...said, accuracy: apart };
  return {
    ...said,
    value: interval,
    accuracy: round12(half + apart),
    assumed: assumed === undefined ? words : `${assumed}; ${words}`,
  };
}

/**
 * The number that was read, of one that is kept as an interval: its accuracy below the upper end, since the lower one
 * may be cut off at nothing. Null for a bound and for what is no number.
 */
export function readingOf({ value, accuracy }: Pick<KnownFact, "value" | "accuracy">): number | null {
  if (typeof value !== "object" || !Number.isFinite(value.lowest) || !Number.isFinite(value.highest)) return null;
  return round12(accuracy === undefined ? (value.lowest + value.highest) / 2 : value.highest - accuracy);
}

/** A number in plain decimals, as files of ours write it. */
function plainNumber(number: number): string {
  const text = String(number);
  return text.includes("e") ? number.toFixed(12).replace(/\.?0+$/, "") : text;
}
