import fc from "fast-check";
import { type PlainDay, single, type TextPlace } from "../../src/base/index.js";
import { type FactDefinition, type FactState, factOf, isNumeric, type KnownFact } from "../../src/facts/index.js";
import type { Band, Bound, Condition, EngineValue, LimitEntry, Operator, Rule } from "../../src/rulebook/index.js";

const NO_ORIGIN = { kind: "none" } as const;
const AT: TextPlace = { file: "generated", line: 1, column: 1 };

export const DAY: PlainDay = "2026-06-01";

/** Facts that generated rules speak of: lengths in two units, a temperature, a count, choices, yes-no and text. */
const POOL = [
  "thread_depth",
  "hole_depth",
  "paint_thickness",
  "model.thread_depth_min",
  "surface_temperature",
  "install_temperature",
  "joints_in_path",
  "mounting_method",
  "wetting",
  "load_steady",
  "has_standby",
  "machine_name",
  "surveyed_by",
].map(factOf);

/** Few numbers, so that facts and bounds often meet. */
const NUMBERS: readonly number[] = [-20, -1, 0, 1, 2, 8.9, 9, 9.1, 10, 20.4, 28.8, 9000];
const WORDS: readonly string[] = ["north", "south", "P-1"];

/** A complete value of a fact, often one of `near`. */
export function valueFor(definition: FactDefinition, near: readonly number[] = NUMBERS): fc.Arbitrary<EngineValue> {
  if (definition.kind === "count") return fc.integer({ min: 0, max: 5 });
  if (isNumeric(definition)) {
    return fc.oneof(
      fc.constantFrom(...near),
      fc.double({ min: -100, max: 10_000, noNaN: true }).map((x) => x + 0),
    );
  }
  if (definition.kind === "yes-no") return fc.boolean();
  return fc.constantFrom(...(definition.choices ?? WORDS));
}

function known(value: KnownFact["value"]): FactState {
  return { known: true, value, origin: NO_ORIGIN };
}

/** A complete value as the state of a fact. */
export function stateOf(value: EngineValue): FactState {
  return known(typeof value === "number" ? single(value) : value);
}

/** Any state of a fact: known, an interval, a bound, or unknown for some reason. */
export function anyState(definition: FactDefinition, near: readonly number[] = NUMBERS): fc.Arbitrary<FactState> {
  const unknown = fc
    .constantFrom("missing", "doubtful", "unreadable", "conflicting")
    .map((reason): FactState => ({ known: false, reason, origin: NO_ORIGIN }));
  const value = valueFor(definition, near);
  const complete = value.map(stateOf);
  if (!isNumeric(definition)) return fc.oneof(unknown, complete);
  const pair = fc.tuple(value.map(Number), value.map(Number), fc.constantFrom("both", "low", "high"));
  const interval = pair.map(([a, b, ends]) =>
    known({
      lowest: ends === "high" ? Number.NEGATIVE_INFINITY : Math.min(a, b),
      highest: ends === "low" ? Number.POSITIVE_INFINITY : Math.max(a, b),
    }),
  );
  return fc.oneof(unknown, complete, interval);
}

/** A value that the fact can have, given what is known of it. */
export function completionOf(definition: FactDefinition, state: FactState): fc.Arbitrary<EngineValue> {
  if (!state.known) return valueFor(definition);
  const { value } = state;
  if (typeof value !== "object") return fc.constant(value);
  const lowest = Math.max(value.lowest, Math.min(-1e5, value.highest));
  const highest = Math.min(value.highest, Math.max(1e5, value.lowest));
  const inside = NUMBERS.filter((x) => x >= lowest && x <= highest);
  return fc.oneof(fc.constantFrom(lowest, highest, ...inside), fc.double({ min: lowest, max: highest, noNaN: true }));
}

const ORDERED: readonly Operator[] = ["lessThan", "lessThanInclusive", "greaterThan", "greaterThanInclusive"];

function likeOf(definition: FactDefinition): readonly string[] {
  return POOL.filter((other) => other.kind === definition.kind && other.dimension === definition.dimension).map(
    ({ id }) => id,
  );
}

const comparison: fc.Arbitrary<Condition> = fc.constantFrom(...POOL).chain((definition) => {
  const equality = fc.constantFrom<Operator>("equal", "notEqual");
  const operator = isNumeric(definition) ? fc.oneof(equality, fc.constantFrom(...ORDERED)) : equality;
  const value = valueFor(definition);
  const fact = definition.id;
  const kind = "comparison" as const;
  return fc.oneof(
    fc.record({ kind: fc.constant(kind), fact: fc.constant(fact), operator, value }),
    fc.record({
      kind: fc.constant(kind),
      fact: fc.constant(fact),
      operator,
      value: fc.constantFrom(...likeOf(definition)).map((other) => ({ fact: other })),
    }),
    fc.record({
      kind: fc.constant(kind),
      fact: fc.constant(fact),
      operator: fc.constantFrom<Operator>("in", "notIn"),
      value: fc.uniqueArray(value, { minLength: 1, maxLength: 3 }),
    }),
  );
});

/** Any condition; named ones refer to `inner`, which refers to none. */
export const condition: fc.Arbitrary<Condition> = fc.letrec<{ any: Condition; parts: readonly Condition[] }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 3, depthSize: "small" },
    comparison,
    fc.constant<Condition>({ kind: "named", name: "inner" }),
    fc.record({ kind: fc.constant("not" as const), part: tie("any") }),
    fc.record({ kind: fc.constantFrom("all" as const, "any" as const), parts: tie("parts") }),
  ),
  parts: fc.array(tie("any"), { minLength: 1, maxLength: 3 }),
})).any;

function bound(judged: FactDefinition): fc.Arbitrary<Bound> {
  const temperature = judged.dimension === "temperature";
  return fc.oneof(
    fc.constantFrom(...NUMBERS).map((value): Bound => ({ kind: "number", value })),
    fc.record({
      kind: fc.constant("fact" as const),
      fact: fc.constantFrom(...likeOf(judged)),
      times: temperature ? fc.constant(1) : fc.constantFrom(1, 1.1, 0.5, 2, 0, -1),
      plus: fc.constantFrom(0, 0, 1, -10, 0.1),
    }),
  );
}

function band(judged: FactDefinition | null): fc.Arbitrary<Band> {
  const at = fc.constant(AT);
  const free = condition.map((inner): Band => ({ is: "when", condition: inner, at: AT }));
  if (judged === null) return free;
  if (!isNumeric(judged)) {
    const choices = fc.uniqueArray(fc.constantFrom(...(judged.choices ?? WORDS)), { minLength: 1, maxLength: 3 });
    return fc.oneof(free, fc.record({ is: fc.constantFrom("oneOf" as const, "noneOf" as const), choices, at }));
  }
  const kind = fc.constantFrom("below" as const, "above" as const, "atOrBelow" as const, "atOrAbove" as const);
  return fc.oneof(
    free,
    fc.record({ is: kind, bound: bound(judged), at }),
    fc.record({ is: fc.constant("outside" as const), bounds: fc.tuple(bound(judged), bound(judged)), at }),
  );
}

const JUDGED: readonly (FactDefinition | null)[] = [
  null,
  ...POOL.filter(({ kind }) => kind !== "text" && kind !== "yes-no"),
];

/** Any rule of one limit, and the named condition `inner` that it may use. */
export const ruleAndInner: fc.Arbitrary<{ readonly rule: Rule; readonly conditions: ReadonlyMap<string, Condition> }> =
  fc
    .constantFrom(...JUDGED)
    .chain((judged) =>
      fc.record({
        judged: fc.constant(judged?.id ?? null),
        inner: comparison,
        appliesWhen: fc.option(condition),
        fail: fc.array(band(judged), { maxLength: 2 }),
        warn: fc.array(band(judged), { maxLength: 2 }),
      }),
    )
    .map(({ judged, inner, appliesWhen, fail, warn }) => {
      const limit: LimitEntry = { from: "2026-01-01", until: null, reviewBy: null, fail, warn, cites: ["c"], at: AT };
      const rule: Rule = {
        id: "generated",
        title: "generated",
        group: null,
        sets: ["core"],
        stages: ["proposed", "installed"],
        appliesWhen,
        judges: { proposed: judged, installed: judged },
        limits: [limit],
        citations: new Map(),
        messages: {},
        remedy: { text: "", change: [] },
        undecided: "warn",
        releases: null,
        cases: [],
        casesGive: {},
        at: AT,
      };
      return { rule, conditions: new Map([["inner", inner]]) };
    });
