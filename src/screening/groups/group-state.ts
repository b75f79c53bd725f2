import type { FactState } from "../../facts/index.js";
import type { MissingFact } from "../result.js";

/** A fact that some row lacks, and why. Which row, and how well it would have to be measured, cannot be told. */
export type Lacking = Pick<MissingFact, "fact" | "reason">;

/** The state of a fact of a group, with the facts of rows that would have to be known (better) for it to be settled. */
export type GroupFactState = FactState & { readonly lacking: readonly Lacking[] };

/** The facts of rows that a fact of a group lacks; null for the state of any other fact. */
export function lackingIn(state: FactState): readonly Lacking[] | null {
  return isGroupFactState(state) ? state.lacking : null;
}

function isGroupFactState(state: FactState): state is GroupFactState {
  return "lacking" in state;
}

/** Reasons from the gravest on: a contradiction has to be settled even where something is also missing. */
const GRAVEST: readonly Lacking["reason"][] = ["conflicting", "unreadable", "doubtful", "missing", "too-close"];

/** Each fact once with its gravest reason, in an order that does not depend on that of the rows. */
export function eachOnce(lacking: Iterable<Lacking>): readonly Lacking[] {
  const facts = new Map<string, Lacking>();
  for (const one of lacking) {
    const known = facts.get(one.fact);
    if (!known || GRAVEST.indexOf(one.reason) < GRAVEST.indexOf(known.reason)) facts.set(one.fact, one);
  }
  return [...facts.values()].sort((a, b) => (a.fact < b.fact ? -1 : 1));
}
