import { type Interval, round12 } from "../base/index.js";
import { type Facts, findFact, isNumeric, readingOf, withinPossible } from "../facts/index.js";
import { supposed } from "./changed-record.js";
import type { PointFacts } from "./point-facts.js";
import type { MeasureTo } from "./result.js";

/** An accuracy is said with so many significant digits. */
const DIGITS = 2;
const FEWEST = 10 ** (DIGITS - 1);
const MOST = 10 ** DIGITS - 1;
/** Of the reading: what is finer is lost in the twelve digits to which numbers are kept. */
const FINEST = 1e-10;

/**
 * How accurately a fact must be measured again so that the rule is decided, if the reading stays the same and all
 * other facts stay as they are. A wider interval never decides what a narrower one leaves open, so that the coarsest
 * accuracy of two digits that does is found by halving; it is rounded down, and so enough.
 *
 * @param fact - id of a fact of the record
 * @param isDecided - whether the rule is decided on other facts of the point
 * @returns the accuracy in the unit of the fact; null where none would do, or where the reading sits on the limit itself
 */
export function measureTo(fact: string, facts: PointFacts, isDecided: (changed: Facts) => boolean): MeasureTo | null {
  const definition = findFact(fact);
  const state = facts.get(fact);
  if (!isUncertain(fact, facts) || !state?.known || !definition?.unit || definition.kind === "count") return null;
  const reading = readingOf(state);
  if (reading === null || typeof state.value !== "object") return null;
  const half = Math.max(state.value.highest - reading, reading - state.value.lowest);
  const decides = (accuracy: number): boolean => {
    const narrowed: Interval = { lowest: round12(reading - accuracy), highest: round12(reading + accuracy) };
    return isDecided(facts.changed(new Map([[fact, supposed(withinPossible(narrowed, definition))]])));
  };
  if (!decides(0)) return null;
  const finest = Math.max(Math.abs(reading) * FINEST, half * FINEST);
  for (let exponent = Math.floor(Math.log10(half)) - DIGITS + 1; FEWEST * 10 ** exponent >= finest; exponent--) {
    const at = (digits: number): number => Number(`${digits}e${exponent}`);
    if (!decides(at(FEWEST))) continue;
    let enough = FEWEST;
    for (let tooMuch = MOST + 1; tooMuch - enough > 1; ) {
      const digits = Math.floor((enough + tooMuch) / 2);
      if (at(digits) < half && decides(at(digits))) enough = digits;
      else tooMuch = digits;
    }
    return { accuracy: at(enough), unit: definition.unit };
  }
  return null;
}

/** Whether a fact of the record is a known number with an accuracy that leaves it between two values. */
export function isUncertain(fact: string, facts: Facts): boolean {
  const definition = findFact(fact);
  const state = facts.get(fact);
  if (definition?.source !== "survey" || !isNumeric(definition)) return false;
  if (!state?.known || typeof state.value !== "object") return false;
  const { lowest, highest } = state.value;
  return lowest < highest && Number.isFinite(lowest) && Number.isFinite(highest);
}
