import type { FactState, KnownFact } from "../facts/index.js";
import { cellsOf, conflicting } from "./entries.js";

/** Speeds of one shaft from the slowest up; none may be above any that follows it. */
const SLOWEST_FIRST = ["lowest_speed", "nominal_speed", "highest_speed"] as const;

/** A fact that another one contradicts, with the cells of both. */
export interface OutOfOrder {
  readonly fact: string;
  readonly state: FactState;
  readonly cells: readonly string[];
}

/** The speeds of a row that cannot all be true (lowest above highest), as they then count: conflicting. */
export function speedsOutOfOrder(facts: ReadonlyMap<string, FactState>): readonly OutOfOrder[] {
  const known = SLOWEST_FIRST.flatMap((fact) => {
    const state = facts.get(fact);
    return state?.known && typeof state.value === "object" ? [{ fact, state, value: state.value }] : [];
  });
  const wrong = new Map<string, Set<KnownFact>>();
  known.forEach((slow, i) => {
    for (const fast of known.slice(i + 1)) {
      if (slow.value.lowest <= fast.value.highest) continue;
      for (const { fact } of [slow, fast]) {
        wrong.set(fact, new Set([...(wrong.get(fact) ?? []), slow.state, fast.state]));
      }
    }
  });
  return [...wrong].map(([fact, states]) => {
    const places = [...states].flatMap(cellsOf);
    return { fact, state: conflicting(places), cells: [...new Set(places.map(({ cell }) => cell))] };
  });
}
