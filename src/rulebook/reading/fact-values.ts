import {
  type Dimension,
  didYouMean,
  type Interval,
  isPlainDay,
  readQuantity,
  round12,
  showText,
  single,
} from "../../base/index.js";
import {
  type FactDefinition,
  type FactState,
  type FactValue,
  isNumeric,
  type UnknownReason,
} from "../../facts/index.js";
import type { ConditionValue } from "../book/rule.js";
import { kindInWords } from "../text/kind-words.js";
import type { Worded } from "../text/schema-words.js";

/** A value read for a fact, or what is wrong with it. */
export type ValueReading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly mistake: Worded };

function wrong(code: string, text: string): { readonly ok: false; readonly mistake: Worded } {
  return { ok: false, mistake: { code, text } };
}

/**
 * Reads a value as rule, model and site files write it for a fact: numbers with their unit, converted to the unit
 * of the fact; counts bare; choices by id; yes and no as true and false; days as YYYY-MM-DD; all else as text.
 */
export function readScalar(written: unknown, definition: FactDefinition): ValueReading<ConditionValue> {
  if (isNumeric(definition)) return readNumber(written, definition);
  if (definition.kind === "yes-no") {
    if (typeof written === "boolean") return { ok: true, value: written };
    return wrong("wrong-kind", `found ${shown(written)}; "${definition.id}" is true or false, without quotes`);
  }
  if (typeof written !== "string") {
    return wrong(
      "wrong-kind",
      `found ${shown(written)}; "${definition.id}" is ${kindInWords(definition)}, written as text in quotes`,
    );
  }
  if (definition.kind === "choice") return readChoice(written, definition);
  if (definition.kind === "date" && !isPlainDay(written)) {
    return wrong("bad-date", `"${showText(written)}" is not a day that exists; write it YYYY-MM-DD`);
  }
  if (written.trim() === "")
    return wrong("empty-text", `the text for "${definition.id}" is empty; write it or leave it out`);
  return { ok: true, value: written };
}

/** Reads a choice of the fact. */
export function readChoice(written: string, definition: FactDefinition): ValueReading<string> {
  const choices = definition.choices ?? [];
  if (choices.includes(written)) return { ok: true, value: written };
  const near = didYouMean(written, choices) || `; use one of ${choices.join(", ")}`;
  return wrong("unknown-choice", `"${showText(written)}" is no choice of "${definition.id}"${near}`);
}

/** Reads a number of a quantity or count, in the unit of the fact. */
export function readNumber(written: unknown, definition: FactDefinition): ValueReading<number> {
  if (definition.kind === "count") return readCount(written, definition);
  const { dimension, unit } = quantityOf(definition);
  return readWithUnit(written, dimension, unit);
}

/** Reads what is added to a fact: a difference, so that a shift of a temperature is in K or °F and never in °C. */
export function readShift(written: unknown, definition: FactDefinition): ValueReading<number> {
  if (definition.kind === "count") return readCount(written, definition);
  const { dimension, unit } = quantityOf(definition);
  if (dimension !== "temperature") return readWithUnit(written, dimension, unit);
  const reading = readWithUnit(written, "temperature-difference", "K");
  if (reading.ok) return reading;
  return wrong(
    reading.mistake.code,
    `${reading.mistake.text}; a shift of a temperature is a difference, in K or °F, never °C`,
  );
}

function readWithUnit(written: unknown, dimension: Dimension, unit: string): ValueReading<number> {
  if (typeof written === "number") {
    return wrong("no-unit", `the number ${written} has no unit; write it with one, such as ${written} ${unit}`);
  }
  if (typeof written !== "string")
    return wrong("wrong-kind", `found ${shown(written)}; write a number with its unit, such as 9 ${unit}`);
  const reading = readQuantity(written, dimension, unit);
  if (typeof reading === "number") return { ok: true, value: reading };
  return wrong(reading.code, showText(reading.text, 200));
}

function readCount(written: unknown, definition: FactDefinition): ValueReading<number> {
  if (typeof written === "number") return { ok: true, value: round12(written) };
  return wrong(
    "not-a-number",
    `found ${shown(written)}; "${definition.id}" is counted, write the number alone, without quotes`,
  );
}

function quantityOf(definition: FactDefinition): { readonly dimension: Dimension; readonly unit: string } {
  const { dimension, unit } = definition;
  if (dimension === undefined || unit === undefined) throw new RangeError(`"${definition.id}" is no quantity`);
  return { dimension, unit };
}

/** Turns a value read into the value of a known fact. */
export function factValueOf(value: ConditionValue): FactValue {
  return typeof value === "number" ? single(value) : value;
}

const REASONS: readonly UnknownReason[] = ["missing", "doubtful", "unreadable", "conflicting"];

/**
 * Reads a fact as the cases of a rule give it: a value, an interval of which one end may be left out, an unknown
 * with its reason, or null for a fact that is not there.
 */
export function readGiven(written: unknown, definition: FactDefinition): ValueReading<FactState> {
  const origin = { kind: "none" } as const;
  if (written === null) return { ok: true, value: { known: false, reason: "missing", origin } };
  if (typeof written !== "object") {
    const reading = readScalar(written, definition);
    return reading.ok ? { ok: true, value: { known: true, value: factValueOf(reading.value), origin } } : reading;
  }
  if ("unknown" in written) {
    const reason = REASONS.find((candidate) => candidate === written.unknown);
    if (reason === undefined || Object.keys(written).length > 1) {
      return wrong(
        "bad-given",
        `an unknown fact is given as { unknown: reason } alone, with one of ${REASONS.join(", ")}`,
      );
    }
    return { ok: true, value: { known: false, reason, origin } };
  }
  const interval = readInterval(written, definition);
  return interval.ok ? { ok: true, value: { known: true, value: interval.value, origin } } : interval;
}

function readInterval(written: object, definition: FactDefinition): ValueReading<Interval> {
  if (!isNumeric(definition))
    return wrong("bad-given", `"${definition.id}" is no number and has no lowest and highest`);
  const lowest = "lowest" in written ? readNumber(written.lowest, definition) : null;
  const highest = "highest" in written ? readNumber(written.highest, definition) : null;
  if (lowest?.ok === false) return lowest;
  if (highest?.ok === false) return highest;
  const interval = {
    lowest: lowest?.value ?? Number.NEGATIVE_INFINITY,
    highest: highest?.value ?? Number.POSITIVE_INFINITY,
  };
  if (lowest === null && highest === null) return wrong("bad-given", "an interval needs lowest, highest or both");
  if (interval.lowest > interval.highest)
    return wrong("bad-given", "the lowest value lies above the highest; swap them");
  return { ok: true, value: interval };
}

function shown(written: unknown): string {
  if (typeof written === "string") return `"${showText(written)}"`;
  return Array.isArray(written) ? "a list" : typeof written === "object" ? "a mapping" : String(written);
}
