import type { FactState } from "../../src/facts/index.js";
import { tablesOn } from "../../src/rulebook/index.js";
import { DERIVED } from "../../src/screening/derive.js";
import { missingFacts } from "../../src/screening/missing.js";
import { PointFacts } from "../../src/screening/point-facts.js";
import { shippedRulebook } from "./shipped.js";

type Given = Readonly<Record<string, FactState>>;

const tables = tablesOn(await shippedRulebook(), "2026-11-26");

/** All facts of a made-up point, those of its model among the given ones, and derived from them as in a run. */
export function pointOf(given: Given): PointFacts {
  return new PointFacts(new Map(Object.entries(given)), { ok: false, reason: "missing" }, tables);
}

/** A derived fact of a made-up point. */
export function derive(id: string, given: Given): FactState {
  const state = DERIVED.has(id) ? pointOf(given).get(id) : undefined;
  if (!state) throw new Error(`no derived fact ${id}`);
  return state;
}

/** The two ends of a number, the value of anything else, or the reason with the fact that is named first. */
export function shown(state: FactState): unknown {
  if (!state.known) return [state.reason, state.origin.kind === "derived" ? state.origin.from[0] : null];
  return typeof state.value === "object" ? [state.value.lowest, state.value.highest] : state.value;
}

/** A number known to lie between two ends. */
export function between(lowest: number, highest: number): FactState {
  return { known: true, value: { lowest, highest }, origin: { kind: "none" } };
}

/** The fact to ask for first where the derived one is not known, or too close to a limit. */
export function askedFor(id: string, given: Given): string | undefined {
  return missingFacts([{ fact: id, reason: "too-close" }], pointOf(given))[0]?.fact;
}
