import { type Interval, round12 } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import {
  highestPreloadPct,
  PROPERTY_CLASS_NAMES,
  type PropertyClass,
  type ThreadState,
} from "../../quantities/index.js";
import { type Derivation, known, rounded, stateOf } from "./deriving.js";
import { saysTooLittle, sizeOf, threadOf, unknownForOne, unusableOf } from "./fixing.js";

/** What tightening does to the bolt. */
export const TIGHTENING_DERIVED: Readonly<Record<string, Derivation>> = {
  planned_preload: (facts) => derivePreload("target_torque", facts),
  applied_preload: (facts) => derivePreload("applied_torque", facts),
  torque_off_plan: deriveTorqueOffPlan,
};

const THREAD_STATES: readonly ThreadState[] = ["dry", "oiled", "greased", "locked"];

/** The preload at the least friction rises with the torque; where the state of the threads is open, over all states. */
function derivePreload(torqueId: string, facts: Facts): FactState {
  const from = [torqueId, "thread", "bolt_class", "thread_state"];
  const torque = sizeOf(facts, torqueId);
  const thread = threadOf(facts, "thread");
  const bolt = classOf(stateOf(facts, "bolt_class"));
  if (!torque || !thread || !bolt) {
    return unknownForOne(unusableOf({ [torqueId]: torque, thread, bolt_class: bolt }), from, facts);
  }
  const stated = stateOf(facts, "thread_state");
  const states = THREAD_STATES.filter((state) => !stated.known || stated.value === state);
  const preloads = states.flatMap((state) =>
    [torque.lowest, torque.highest].map((torqueNm) => highestPreloadPct(torqueNm, thread, bolt, state)),
  );
  const numbers = preloads.filter((preload) => preload !== null);
  if (numbers.length === 0) return saysTooLittle(["bolt_class", "thread"], "unreadable");
  const bounds = rounded({ lowest: Math.min(...numbers), highest: Math.max(...numbers) });
  // What would settle it comes first.
  return known(bounds, stated.known ? from : ["thread_state", torqueId, "thread", "bolt_class"], facts);
}

function classOf(state: FactState): PropertyClass | null {
  return (state.known && PROPERTY_CLASS_NAMES.find((name) => name === state.value)) || null;
}

/** Rises with the torque applied, falls with the one planned. */
function deriveTorqueOffPlan(facts: Facts): FactState {
  const from = ["applied_torque", "target_torque"];
  const applied = sizeOf(facts, "applied_torque");
  const planned = sizeOf(facts, "target_torque");
  if (!applied || !planned) {
    return unknownForOne(unusableOf({ applied_torque: applied, target_torque: planned }), from, facts);
  }
  const off = (one: number, other: number): number => round12((100 * (one - other)) / other);
  const bounds: Interval = {
    lowest: off(applied.lowest, planned.highest),
    highest: off(applied.highest, planned.lowest),
  };
  return known(bounds, from, facts);
}
