import type { FactState } from "../../facts/index.js";
import type { MissingFact } from "../result.js";

/** The state of a fact of a group, with the facts of rows that would have to be known (better) for it to be settled. */
export type GroupFactState = FactState & { readonly lacking: readonly MissingFact[] };

/** The facts of rows that a fact of a group lacks; null for the state of any other fact. */
export function lackingIn(state: FactState): readonly MissingFact[] | null {
  return isGroupFactState(state) ? state.lacking : null;
}

function isGroupFactState(state: FactState): state is GroupFactState {
  return "lacking" in state;
}

/** Reasons from the gravest on: a contradiction has to be settled even where something is also missing. */
const GRAVEST: readonly MissingFact["reason"][] = ["conflicting", "unreadable", "doubtful", "missing", "too-close"];

/** Each fact once with its gravest reason, in an order that does not depend on that of the rows. */
export function eachOnce(lacking: Iterable<MissingFact>): readonly MissingFact[] {
  const facts = new Map<string, MissingFact>();
  for (const one of lacking) {
    const known = facts.get(one.fact);
    if (!known || GRAVEST.indexOf(one.reason) < GRAVEST.indexOf(known.reason)) facts.set(one.fact, one);
  }
  return [...facts.values()].sort((a, b) => (a.fact < b.fact ? -1 : 1));
}
