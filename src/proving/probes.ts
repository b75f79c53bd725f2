import { dayBefore, type PlainDay, round12, single } from "../base/index.js";
import { type FactState, type Facts, factOf, isNumeric, MISSING } from "../facts/index.js";
import type { Band, Bound, Condition, Rule } from "../rulebook/index.js";
import { besideNumber } from "./number-steps.js";
import type { Book } from "./proven-cases.js";

/** Values worth trying of each fact that a rule names, and days worth trying. */
export interface Probes {
  readonly days: readonly PlainDay[];
  /** @param facts - the other facts, from which bounds that are facts are computed */
  valuesOf(fact: string, facts: Facts): readonly FactState[];
}

type OwnNumbers = Map<string, Set<number>>;
type OtherBounds = Map<string, Bound[]>;

/**
 * The values at and beside every number of a rule, every choice, yes and no, and not knowing; the days at and before
 * each of its dates.
 */
export function probesOf(rules: readonly Rule[], book: Book): Probes {
  const numbers: OwnNumbers = new Map();
  const bounds: OtherBounds = new Map();
  const days = new Set<PlainDay>();
  const bound = (fact: string, one: Bound): void => {
    if (one.kind === "number") add(numbers, fact, one.value);
    else {
      bounds.set(fact, [...(bounds.get(fact) ?? []), one]);
      if (one.times !== 0) bounds.set(one.fact, [...(bounds.get(one.fact) ?? []), inverse(fact, one)]);
    }
  };
  for (const rule of rules) {
    if (rule.appliesWhen) gather(rule.appliesWhen, book, numbers, bound);
    for (const { from, until, fail, warn } of rule.limits) {
      for (const day of until === null ? [from] : [from, until]) days.add(day).add(dayBefore(day));
      for (const band of [...fail, ...warn]) {
        for (const judged of new Set(Object.values(rule.judges))) gatherBand(band, judged, book, numbers, bound);
      }
    }
  }
  return { days: [...days].sort(), valuesOf: (fact, facts) => valuesOf(fact, facts, numbers, bounds) };
}

function add(numbers: OwnNumbers, fact: string, value: number): void {
  const own = numbers.get(fact) ?? new Set();
  for (const one of [value, ...besideNumber(value)]) own.add(one);
  numbers.set(fact, own);
}

function inverse(fact: string, { times, plus }: Extract<Bound, { kind: "fact" }>): Bound {
  return { kind: "fact", fact, times: 1 / times, plus: -plus / times };
}

function gatherBand(
  band: Band,
  judged: string | null,
  book: Book,
  numbers: OwnNumbers,
  bound: (fact: string, one: Bound) => void,
): void {
  if (band.is === "when") gather(band.condition, book, numbers, bound);
  else if (judged !== null && "bounds" in band) for (const one of band.bounds) bound(judged, one);
  else if (judged !== null && "bound" in band) bound(judged, band.bound);
}

function gather(
  condition: Condition,
  book: Book,
  numbers: OwnNumbers,
  bound: (fact: string, one: Bound) => void,
): void {
  switch (condition.kind) {
    case "all":
    case "any":
      for (const part of condition.parts) gather(part, book, numbers, bound);
      return;
    case "not":
      gather(condition.part, book, numbers, bound);
      return;
    case "named": {
      const named = book.conditions.get(condition.name);
      if (named) gather(named, book, numbers, bound);
      return;
    }
    case "comparison": {
      const { fact, value } = condition;
      if (!isNumeric(factOf(fact))) return;
      if (typeof value === "object" && "fact" in value) {
        bound(fact, { kind: "fact", fact: value.fact, times: 1, plus: 0 });
        return;
      }
      for (const one of Array.isArray(value) ? value : [value]) add(numbers, fact, Number(one));
    }
  }
}

const known = (value: number | string | boolean): FactState => ({
  known: true,
  value: typeof value === "number" ? single(value) : value,
  origin: { kind: "none" },
});

function valuesOf(fact: string, facts: Facts, numbers: OwnNumbers, bounds: OtherBounds): readonly FactState[] {
  const definition = factOf(fact);
  if (definition.kind === "yes-no") return [known(true), known(false), MISSING];
  if (definition.kind === "choice") return [...(definition.choices ?? []).map(known), MISSING];
  if (!isNumeric(definition)) return [MISSING];
  const values = new Set(numbers.get(fact) ?? []);
  for (const one of bounds.get(fact) ?? []) {
    const other = one.kind === "fact" ? facts.get(one.fact) : undefined;
    if (one.kind !== "fact" || !other?.known || typeof other.value !== "object") continue;
    const at = round12(other.value.lowest * one.times + one.plus);
    if (!Number.isFinite(at)) continue;
    for (const value of [at, ...besideNumber(Number(at.toPrecision(3)))]) values.add(value);
  }
  const { lowest = Number.NEGATIVE_INFINITY, highest = Number.POSITIVE_INFINITY } = definition.plausible ?? {};
  const whole = definition.kind === "count" && definition.source === "survey";
  const sensible = [...values].filter((v) => v >= lowest && v <= highest && (!whole || Number.isInteger(v)));
  return [...sensible.sort((a, b) => a - b).map(known), MISSING];
}
