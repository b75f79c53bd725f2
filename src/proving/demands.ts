import { dayBefore, type PlainDay, round12, STAGES, single, type TextPlace } from "../base/index.js";
import { type FactState, type Facts, factName, findFact } from "../facts/index.js";
import type { Band, Bound, Judgement, LimitEntry, Rule } from "../rulebook/index.js";
import { besideNumber, lastDigit } from "./number-steps.js";
import type { ReadyCase } from "./proven-cases.js";

/** What the cases of a rule are asked to show. */
export const DEMAND_KINDS = ["outcome", "limit", "missing fact", "date", "citation"] as const;
export type DemandKind = (typeof DEMAND_KINDS)[number];

/** A case, run at one stage. */
export interface CaseAtStage extends ReadyCase {
  readonly judgement: Judgement;
}

/** One thing that at least one case must show. */
export interface Demand {
  readonly kind: DemandKind;
  /** In words ("one step past below 9 mm"). */
  readonly what: string;
  readonly at: TextPlace;
  isMetBy(one: CaseAtStage): boolean;
  /** Facts and day that would show it, if put in place of those of a written case. */
  readonly wanted: (base: ReadyCase) => { readonly asOf: PlainDay; readonly changes: ReadonlyMap<string, FactState> };
}

/** Everything that the cases of a rule are asked to show. */
export function demandsOf(rule: Rule, factsNamed: readonly string[]): readonly Demand[] {
  return [
    ...outcomeDemands(rule),
    ...rule.limits.flatMap((entry) => limitDemands(rule, entry)),
    ...missingDemands(rule, factsNamed),
    ...rule.limits.flatMap(dateDemands),
    ...citationDemands(rule),
  ];
}

const asItIs: Demand["wanted"] = ({ asOf }) => ({ asOf, changes: new Map() });

function outcomeDemands(rule: Rule): readonly Demand[] {
  const can = (side: "fail" | "warn"): boolean => rule.limits.some((entry) => entry[side].length > 0);
  const outcomes = [
    "pass" as const,
    "undecided" as const,
    ...(["fail", "warn"] as const).filter(can),
    ...(rule.appliesWhen ? (["not-applicable"] as const) : []),
  ];
  return outcomes.map((outcome) => ({
    kind: "outcome",
    what: outcome,
    at: rule.at,
    isMetBy: ({ judgement }) => judgement.outcome === outcome,
    wanted: asItIs,
  }));
}

/** Which side of a limit is judged otherwise than the limit itself: −1 below it, 1 above it. */
const TURNS: Readonly<Record<string, -1 | 1>> = { below: -1, above: 1, atOrBelow: 1, atOrAbove: -1 };

/** Each number against which the judged fact is held: at it, and the next step where it is judged otherwise. */
function limitDemands(rule: Rule, entry: LimitEntry): readonly Demand[] {
  const judged = [...new Set(STAGES.flatMap((stage) => rule.judges[stage] ?? []))];
  return [...entry.fail, ...entry.warn].flatMap((band) =>
    boundsOf(band).flatMap(([bound, turn]) =>
      ([0, turn] as const).map((step): Demand => {
        const place = step === 0 ? "at" : step < 0 ? "one step below" : "one step above";
        return {
          kind: "limit",
          what: `${place} the limit of ${band.is} ${boundInWords(bound, judged[0])}`,
          at: band.at,
          isMetBy: (one) => isIn(one, entry) && judged.some((fact) => standsAt(one.facts, fact, bound, step)),
          wanted: (base) => wantedAt(base, entry, judged, bound, step),
        };
      }),
    ),
  );
}

function boundsOf(band: Band): readonly (readonly [Bound, -1 | 1])[] {
  if ("bounds" in band) return [[band.bounds[0], -1] as const, [band.bounds[1], 1] as const];
  return "bound" in band ? [[band.bound, TURNS[band.is] ?? 1]] : [];
}

function boundInWords(bound: Bound, judged: string | undefined): string {
  const unit = judged === undefined ? "" : (findFact(judged)?.unit ?? "");
  if (bound.kind === "number") return `${bound.value} ${unit}`.trim();
  const times = bound.times === 1 ? "" : `${bound.times} × `;
  const plus = bound.plus === 0 ? "" : bound.plus > 0 ? ` + ${bound.plus}` : ` − ${-bound.plus}`;
  return `${times}${factName(bound.fact)}${plus}`;
}

function isIn({ asOf }: ReadyCase, { from, until }: LimitEntry): boolean {
  return from <= asOf && (until === null || asOf < until);
}

function numberOf(facts: Facts, fact: string): number | null {
  const state = facts.get(fact);
  if (!state?.known || typeof state.value !== "object") return null;
  return state.value.lowest === state.value.highest ? state.value.lowest : null;
}

function limitIn(bound: Bound, facts: Facts): number | null {
  if (bound.kind === "number") return bound.value;
  const other = numberOf(facts, bound.fact);
  return other === null ? null : round12(other * bound.times + bound.plus);
}

/** A step is the last digit of the number as written, at most a twentieth of it where that is coarse. */
function standsAt(facts: Facts, fact: string, bound: Bound, step: -1 | 0 | 1): boolean {
  const [value, limit] = [numberOf(facts, fact), limitIn(bound, facts)];
  if (value === null || limit === null) return false;
  if (step === 0) return value === limit;
  const distance = (value - limit) * step;
  return distance > 0 && distance <= Math.max(lastDigit(limit), Math.abs(limit) / 20) * (1 + 1e-9);
}

function wantedAt(
  base: ReadyCase,
  entry: LimitEntry,
  judged: readonly string[],
  bound: Bound,
  step: -1 | 0 | 1,
): ReturnType<Demand["wanted"]> {
  const asOf = isIn(base, entry) ? base.asOf : entry.from;
  const limit = limitIn(bound, base.facts);
  if (limit === null) return { asOf, changes: new Map() };
  const [below, above] = besideNumber(limit);
  const value = step === 0 ? limit : step < 0 ? below : above;
  const state: FactState = { known: true, value: single(value), origin: { kind: "none" } };
  return { asOf, changes: new Map(judged.map((fact) => [fact, state])) };
}

/** Each fact, unknown, leaves some case open and is named there. */
function missingDemands(rule: Rule, factsNamed: readonly string[]): readonly Demand[] {
  const unknown: FactState = { known: false, reason: "missing", origin: { kind: "none" } };
  return factsNamed
    .filter((fact) => fact !== "stage")
    .map((fact) => ({
      kind: "missing fact",
      what: `${factName(fact)} not known`,
      at: rule.at,
      isMetBy: ({ judgement }) =>
        judgement.outcome === "undecided" && judgement.open.some((open) => open.fact === fact),
      wanted: ({ asOf }) => ({ asOf, changes: new Map([[fact, unknown]]) }),
    }));
}

function dateDemands({ from, until, at }: LimitEntry): readonly Demand[] {
  const days = [from, dayBefore(from), ...(until === null ? [] : [until, dayBefore(until)])];
  return [...new Set(days)].map((day) => ({
    kind: "date",
    what: `on ${day}`,
    at,
    isMetBy: ({ asOf }) => asOf === day,
    wanted: () => ({ asOf: day, changes: new Map() }),
  }));
}

function citationDemands(rule: Rule): readonly Demand[] {
  return [...rule.citations.keys()].map((id) => ({
    kind: "citation",
    what: `a limit that cites "${id}"`,
    at: rule.at,
    isMetBy: (one) =>
      one.judgement.outcome !== "no-limit-in-force" &&
      one.judgement.outcome !== "not-applicable" &&
      rule.limits.some((entry) => isIn(one, entry) && entry.cites.includes(id)),
    wanted: (base) => ({
      asOf: rule.limits.find((entry) => entry.cites.includes(id))?.from ?? base.asOf,
      changes: new Map(),
    }),
  }));
}
