import { convert, type Interval, round12 } from "../base/index.js";
import { type Facts, factOf, findFact } from "../facts/index.js";
import type { Bound, Condition, Rulebook } from "../rulebook/index.js";
import type { ReadyRule } from "../screening/index.js";
import { type Moved, modelFactMoved } from "./moved-book.js";

/** The values of the moved number at which a fact of a point, or an end of its interval, meets the limit. */
export type Meeting = (facts: Facts) => readonly number[];

/** Where a moved number is felt. */
export interface Meetings {
  readonly of: Meeting;
  /** A fact is computed from the moved one, so that it can only be found by trying where the two meet. */
  readonly needsSearch: boolean;
}

/** @param rules - every rule that feels the move */
export function meetingsOf(moved: Moved, rules: readonly ReadyRule[], { conditions }: Rulebook): Meetings {
  const fact = modelFactMoved(moved);
  if (fact === null) {
    const { place } = moved;
    return { of: (facts) => endsOf(facts, place.fact).flatMap((end) => solved(place, end, facts)), needsSearch: false };
  }
  const meetings = rules.flatMap((ready) => meetingsWithFact(ready, fact, conditions));
  return {
    of: (facts) => meetings.flatMap((meeting) => meeting(facts)),
    needsSearch: rules.some(({ compiled }) => compiled.factsNamed.some((id) => id !== fact && reaches(id, fact))),
  };
}

/** Whether a fact is another one, or is computed from it. */
export function reaches(id: string, fact: string): boolean {
  return id === fact || (findFact(id)?.needs ?? []).some((need) => reaches(need, fact));
}

/** The finite ends of the interval in which a fact lies; none where it is not known. */
function endsOf(facts: Facts, id: string): readonly number[] {
  const state = facts.get(id);
  if (!state?.known || typeof state.value !== "object") return [];
  const { lowest, highest }: Interval = state.value;
  return [...new Set([lowest, highest])].filter(Number.isFinite);
}

function solved({ moves, bound, fact }: Moved["place"], end: number, facts: Facts): readonly number[] {
  if (bound.kind === "number") return [end];
  return endsOf(facts, bound.fact).flatMap((other) => {
    const own = inUnitOf(other, bound.fact, fact);
    const value = moves === "factor" ? (end - bound.plus) / own : end - own * bound.times;
    return Number.isFinite(value) ? [round12(value)] : [];
  });
}

/** Every place in which a rule compares something with a fact, or a fact with something. */
function meetingsWithFact({ rule, compiled }: ReadyRule, fact: string, named: Rulebook["conditions"]): Meeting[] {
  const meetings: Meeting[] = [];
  const meetBound = (compared: string, bound: Bound): void => {
    if (bound.kind !== "fact" || bound.fact !== fact || bound.times === 0) return;
    const { times, plus } = bound;
    meetings.push((facts) =>
      endsOf(facts, compared).map((end) => round12(inUnitOf((end - plus) / times, compared, fact))),
    );
  };
  const meet = (condition: Condition): void => {
    for (const { fact: compared, value } of comparisonsIn(condition, named)) {
      const other = typeof value === "object" && "fact" in value ? value.fact : null;
      if (other !== null) meetBound(compared, { kind: "fact", fact: other, times: 1, plus: 0 });
      if (compared !== fact) continue;
      const numbers = (Array.isArray(value) ? value : [value]).filter((one) => typeof one === "number");
      meetings.push((facts) =>
        other === null ? numbers : endsOf(facts, other).map((end) => round12(inUnitOf(end, other, fact))),
      );
    }
  };
  if (rule.appliesWhen) meet(rule.appliesWhen);
  for (const { fail, warn } of rule.limits) {
    for (const band of [...fail, ...warn]) {
      if (band.is === "when") meet(band.condition);
      else if (compiled.judged !== null && "bounds" in band)
        for (const one of band.bounds) meetBound(compiled.judged, one);
      else if (compiled.judged !== null && "bound" in band) meetBound(compiled.judged, band.bound);
    }
  }
  return meetings;
}

type Comparison = Extract<Condition, { kind: "comparison" }>;

/** The comparisons of a condition, named conditions written out. */
function comparisonsIn(condition: Condition, named: Rulebook["conditions"]): readonly Comparison[] {
  switch (condition.kind) {
    case "comparison":
      return [condition];
    case "not":
      return comparisonsIn(condition.part, named);
    case "named": {
      const meant = named.get(condition.name);
      return meant ? comparisonsIn(meant, named) : [];
    }
    default:
      return condition.parts.flatMap((part) => comparisonsIn(part, named));
  }
}

function inUnitOf(value: number, from: string, to: string): number {
  const [{ unit, dimension }, other] = [factOf(from), factOf(to)];
  if (unit === other.unit || unit === undefined || other.unit === undefined || dimension === undefined) return value;
  return convert(value, unit, other.unit, dimension);
}
