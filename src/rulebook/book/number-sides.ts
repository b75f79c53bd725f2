import {
  convert,
  type Interval,
  isAtOrBelow,
  isBelow,
  isSameNumber,
  notOf,
  round12,
  single,
  type Truth,
} from "../../base/index.js";
import { factOf } from "../../facts/index.js";
import { type Look, numberIn } from "./check.js";
import type { Bound, Operator } from "./rule.js";

/** One side of a comparison of numbers, in the unit of the judged or compared fact. */
export interface NumberSide {
  /** The fact it is taken from, or null for a number of the rule. */
  readonly fact: string | null;
  /** Whether the number is that of the fact itself, neither scaled, shifted nor converted. */
  readonly plain: boolean;
  /** Null while the fact is unknown. */
  read(look: Look): Interval | null;
  /** The same for one known number of the fact. */
  of(value: number): number;
}

/** A number of the rule itself. */
export function fixedSide(value: number): NumberSide {
  const interval = single(value);
  return { fact: null, plain: true, read: () => interval, of: () => value };
}

/** The fact as it is. */
export function factSide(fact: string): NumberSide {
  return { fact, plain: true, read: (look) => numberIn(look, fact), of: (value) => value };
}

/** A bound of a band in the unit of the judged fact: converted, then scaled, then shifted, rounded at each step. */
export function boundSide(bound: Bound, judged: string): NumberSide {
  if (bound.kind === "number") return fixedSide(bound.value);
  return scaledSide(bound.fact, judged, bound.times, bound.plus);
}

/** Another fact, in the unit of `like`. */
export function otherSide(fact: string, like: string): NumberSide {
  return scaledSide(fact, like, 1, 0);
}

function scaledSide(fact: string, like: string, times: number, plus: number): NumberSide {
  const { unit: from } = factOf(fact);
  const { dimension, unit: to } = factOf(like);
  const same = from === to || from === undefined || to === undefined || dimension === undefined;
  if (same && times === 1 && plus === 0) return factSide(fact);
  const of = (value: number): number => {
    const converted = same ? value : convert(value, from, to, dimension);
    // Zero times an endless end would be no number; a bound scaled by zero is its shift alone.
    return round12(times === 0 ? plus : converted * times + plus);
  };
  return {
    fact,
    plain: false,
    of,
    read(look) {
      const interval = numberIn(look, fact);
      if (interval === null) return null;
      const [a, b] = [of(interval.lowest), of(interval.highest)];
      return a <= b ? { lowest: a, highest: b } : { lowest: b, highest: a };
    },
  };
}

/** Compares two intervals as the operator of a condition does; null where they do not settle it. */
export function compareNumbers(operator: Exclude<Operator, "in" | "notIn">, a: Interval, b: Interval): Truth {
  switch (operator) {
    case "equal":
      return isSameNumber(a, b);
    case "notEqual":
      return notOf(isSameNumber(a, b));
    case "lessThan":
      return isBelow(a, b);
    case "lessThanInclusive":
      return isAtOrBelow(a, b);
    case "greaterThan":
      return isBelow(b, a);
    case "greaterThanInclusive":
      return isAtOrBelow(b, a);
  }
}
