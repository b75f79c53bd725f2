import { dayBefore, type PlainDay, round12, single } from "../base/index.js";
import { type FactDefinition, type FactState, type Facts, factOf, isNumeric, MISSING } from "../facts/index.js";
import type { Band, Bound, Condition, Rule } from "../rulebook/index.js";
import { besideNumber } from "./number-steps.js";
import type { Book } from "./proven-cases.js";

/** Values worth trying of each fact that a rule names, and days worth trying. */
export interface Probes {
  readonly days: readonly PlainDay[];
  /** @param facts - the other facts, from which bounds that are facts are computed */
  valuesOf(fact: string, facts: Facts): readonly FactState[];
}

/** What a rule writes of each fact. */
class Named {
  readonly numbers = new Map<string, Set<number>>();
  readonly words = new Map<string, Set<string>>();
  readonly bounds = new Map<string, Bound[]>();

  bound(fact: string, one: Bound): void {
    if (one.kind === "number") {
      this.number(fact, one.value);
      return;
    }
    listIn(this.bounds, fact).push(one);
    if (one.times !== 0) listIn(this.bounds, one.fact).push(inverse(fact, one));
  }

  number(fact: string, value: number): void {
    const own = setIn(this.numbers, fact);
    for (const one of [value, ...besideNumber(value)]) own.add(one);
  }

  word(fact: string, value: string): void {
    setIn(this.words, fact).add(value);
  }
}

/**
 * The values at and beside every number of a rule, every choice, yes and no, the texts it names and others, and not
 * knowing; the days at and before each of its dates.
 */
export function probesOf(rules: readonly Rule[], book: Book): Probes {
  const named = new Named();
  const days = new Set<PlainDay>();
  for (const rule of rules) {
    if (rule.appliesWhen) gather(rule.appliesWhen, book, named);
    for (const { from, until, fail, warn } of rule.limits) {
      for (const day of until === null ? [from] : [from, until]) days.add(day).add(dayBefore(day));
      for (const band of [...fail, ...warn]) {
        for (const judged of new Set(Object.values(rule.judges))) gatherBand(band, judged, book, named);
      }
    }
  }
  return { days: [...days].sort(), valuesOf: (fact, facts) => valuesOf(fact, facts, named) };
}

function listIn<Item>(lists: Map<string, Item[]>, key: string): Item[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}

function setIn<Item>(sets: Map<string, Set<Item>>, key: string): Set<Item> {
  const set = sets.get(key) ?? new Set<Item>();
  sets.set(key, set);
  return set;
}

function inverse(fact: string, { times, plus }: Extract<Bound, { kind: "fact" }>): Bound {
  return { kind: "fact", fact, times: 1 / times, plus: -plus / times };
}

function gatherBand(band: Band, judged: string | null, book: Book, named: Named): void {
  if (band.is === "when") gather(band.condition, book, named);
  else if (judged !== null && "bounds" in band) for (const one of band.bounds) named.bound(judged, one);
  else if (judged !== null && "bound" in band) named.bound(judged, band.bound);
}

function gather(condition: Condition, book: Book, named: Named): void {
  switch (condition.kind) {
    case "all":
    case "any":
      for (const part of condition.parts) gather(part, book, named);
      return;
    case "not":
      gather(condition.part, book, named);
      return;
    case "named": {
      const other = book.conditions.get(condition.name);
      if (other) gather(other, book, named);
      return;
    }
    case "comparison": {
      const { fact, value } = condition;
      if (typeof value === "object" && "fact" in value) {
        if (isNumeric(factOf(fact))) named.bound(fact, { kind: "fact", fact: value.fact, times: 1, plus: 0 });
        return;
      }
      for (const one of Array.isArray(value) ? value : [value]) {
        if (isNumeric(factOf(fact))) named.number(fact, Number(one));
        else named.word(fact, String(one));
      }
    }
  }
}

const known = (value: number | string | boolean): FactState => ({
  known: true,
  value: typeof value === "number" ? single(value) : value,
  origin: { kind: "none" },
});

/** Texts and days that no rule names. */
const OTHER_TEXTS = ["something else", "another thing"];
const OTHER_DAYS = ["2000-01-01", "2000-01-02"];

function valuesOf(fact: string, facts: Facts, named: Named): readonly FactState[] {
  const definition = factOf(fact);
  if (definition.kind === "yes-no") return [known(true), known(false), MISSING];
  if (definition.kind === "choice") return [...(definition.choices ?? []).map(known), MISSING];
  if (!isNumeric(definition)) {
    const others = definition.kind === "date" ? OTHER_DAYS : OTHER_TEXTS;
    return [...[...(named.words.get(fact) ?? []), ...others].map(known), MISSING];
  }
  return [...numbersOf(definition, facts, named).map(known), MISSING];
}

function numbersOf(definition: FactDefinition, facts: Facts, named: Named): readonly number[] {
  const { id, plausible, kind, source } = definition;
  const values = new Set(named.numbers.get(id) ?? []);
  for (const one of named.bounds.get(id) ?? []) {
    const other = one.kind === "fact" ? facts.get(one.fact) : undefined;
    if (one.kind !== "fact" || !other?.known || typeof other.value !== "object") continue;
    const at = round12(other.value.lowest * one.times + one.plus);
    if (!Number.isFinite(at)) continue;
    for (const value of [at, ...besideNumber(Number(at.toPrecision(3)))]) values.add(value);
  }
  const { lowest = Number.NEGATIVE_INFINITY, highest = Number.POSITIVE_INFINITY } = plausible ?? {};
  const whole = kind === "count" && source === "survey";
  const sensible = [...values].filter((v) => v >= lowest && v <= highest && (!whole || Number.isInteger(v)));
  return sensible.sort((a, b) => a - b);
}
