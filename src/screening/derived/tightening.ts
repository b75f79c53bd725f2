import { type Interval, round12 } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { preloadPct } from "../../quantities/index.js";
import { type Derivation, known, rounded, stateOf, unknownFor } from "./deriving.js";
import { saysTooLittle, sizeOf, threadOf, unknownForOne, unusableOf } from "./fixing.js";

/** What tightening does to the bolt. */
export const TIGHTENING_DERIVED: Readonly<Record<string, Derivation>> = {
  planned_preload: (facts) => derivePreload("target_torque", facts),
  applied_preload: (facts) => derivePreload("applied_torque", facts),
  torque_off_plan: deriveTorqueOffPlan,
};

const OF_TABLES = ["table.proof_stress", "table.torque_factor_min"];

/**
 * The preload at the least friction that is to be expected rises with the torque; where the state of the threads is open,
 * the table spans all states.
 */
function derivePreload(torqueId: string, facts: Facts): FactState {
  const stated = [torqueId, "thread", "bolt_class", "thread_state"];
  const torque = sizeOf(facts, torqueId);
  const thread = threadOf(facts, "thread");
  const bolt = stateOf(facts, "bolt_class").known || null;
  if (!torque || !thread || !bolt) {
    return unknownForOne(unusableOf({ [torqueId]: torque, thread, bolt_class: bolt }), stated, facts);
  }
  const [proof, factor] = OF_TABLES.map((id) => sizeOf(facts, id));
  // A row without a value: a class that is not made in this size.
  const hasRow = stateOf(facts, "table.proof_stress").origin.kind === "derived";
  if (!proof && hasRow) return saysTooLittle(["bolt_class", "thread"], "unreadable");
  if (!proof || !factor) return unknownFor(proof ? "table.torque_factor_min" : "table.proof_stress", stated, facts);
  const bounds = rounded({
    lowest: preloadPct(torque.lowest, thread, proof.highest, factor.highest),
    highest: preloadPct(torque.highest, thread, proof.lowest, factor.lowest),
  });
  // What would settle it comes first.
  const isStated = stateOf(facts, "thread_state").known;
  const from = isStated ? stated : ["thread_state", ...stated.filter((id) => id !== "thread_state")];
  return known(bounds, [...from, ...OF_TABLES], facts);
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
