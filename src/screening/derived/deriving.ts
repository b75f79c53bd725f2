import { type Interval, round12 } from "../../base/index.js";
import { type FactState, type Facts, MISSING } from "../../facts/index.js";

/** How one derived fact comes from others. */
export type Derivation = (facts: Facts) => FactState;

/** The state of a fact, also of one that nobody wrote down. */
export function stateOf(facts: Facts, id: string): FactState {
  return facts.get(id) ?? MISSING;
}

/** The interval of a known number; null for anything else. */
export function intervalOf(state: FactState): Interval | null {
  return state.known && typeof state.value === "object" ? state.value : null;
}

/** A derived fact with a value, and the facts it rests on; what was taken for granted of one of them is, of it, too. */
export function known(value: Interval | string | boolean, from: readonly string[], facts: Facts): FactState {
  const assumed = from.map((id) => facts.get(id)).find((state) => state?.known && state.assumed !== undefined);
  return {
    known: true,
    value,
    ...(assumed?.known && assumed.assumed !== undefined ? { assumed: assumed.assumed } : {}),
    origin: { kind: "derived", from },
  };
}

/** The same with one thing more that was taken for granted; a fact that is not known stays as it is. */
export function assuming(words: string, state: FactState): FactState {
  if (!state.known) return state;
  return { ...state, assumed: state.assumed === undefined ? words : `${state.assumed}; ${words}` };
}

/** Unknown for the sake of one fact, which comes first among those it rests on, with that fact's own reason. */
export function unknownFor(id: string, from: readonly string[], facts: Facts): FactState {
  const state = stateOf(facts, id);
  return {
    known: false,
    reason: state.known ? "too-close" : state.reason,
    origin: { kind: "derived", from: [id, ...from.filter((other) => other !== id)] },
  };
}

/** An interval as a derived fact keeps it. */
export function rounded(interval: Interval): Interval {
  return { lowest: round12(interval.lowest), highest: round12(interval.highest) };
}

/**
 * The fact to name where some are of no use. One that no cell and no statement speaks of comes before one that a row
 * left blank: without it no row can be decided, and the survey as a whole is told so.
 */
export function lackingAmong(
  ids: readonly string[],
  facts: Facts,
  isOfUse: (id: string) => boolean,
): string | undefined {
  const lacking = ids.filter((id) => !isOfUse(id));
  return lacking.find((id) => isNotAsked(facts, id)) ?? lacking[0];
}

/** A fact that no cell and no statement speaks of; of a derived one, the fact that it is unknown for. */
function isNotAsked(facts: Facts, id: string): boolean {
  const { known: isKnown, origin } = stateOf(facts, id);
  if (origin.kind !== "derived") return origin.kind === "none";
  const [first] = origin.from;
  return !isKnown && first !== undefined && isNotAsked(facts, first);
}
