import type { Dimension } from "../base/index.js";
import type { FactDefinition } from "./definition.js";

const BOLT = ["bolt_class", "bolt_size"];
const THREADS = ["bolt_steel", "thread_state"];

/**
 * Facts looked up in the tables of a rulebook by other facts. A table that gives one of them is looked up by the facts
 * that it needs, in their order.
 */
export const TABLE_FACTS: readonly FactDefinition[] = [
  measured("usable_frequency", "highest frequency that the mounting carries", "frequency", "Hz", 10, 50000, [
    "mounting_method",
  ]),
  measured("wall_thickness_min", "least thickness of the wall", "length", "mm", 0.5, 500, ["mounting_method"]),
  measured("wall_left_min", "least wall under the point of the drill", "length", "mm", 0.1, 100, []),
  counted("run_out_min", "least run-out of a tap", "pitches", 0, 20, []),
  counted("run_out_usual", "usual run-out of a tap", "pitches", 0, 20, []),
  counted("engagement_min", "least usable thread in the metal", "diameters", 0.3, 10, ["wall_metal"]),
  stress("wall_strength_min", "tensile strength of the weakest usual grade of the metal", ["wall_metal"]),
  stress("wall_strength_max", "tensile strength of the strongest usual grade of the metal", ["wall_metal"]),
  stress("head_pressure_max", "limiting pressure of the metal under a bolt head", ["wall_metal"]),
  stress("tensile_strength", "tensile strength of the bolt", BOLT),
  stress("yield_point", "yield point of the bolt", BOLT),
  stress("proof_stress", "stress under proof load of the bolt", BOLT),
  measured("preload_share_max", "share of the proof load up to which bolts are tightened", "ratio", "%", 10, 100, [
    "bolt_steel",
  ]),
  counted("torque_factor_min", "least torque factor K of the threads", null, 0.03, 1, THREADS),
  counted("torque_factor_max", "greatest torque factor K of the threads", null, 0.03, 1, THREADS),
  counted("friction_min", "least coefficient of friction of the threads", null, 0.02, 1, THREADS),
  counted("friction_max", "greatest coefficient of friction of the threads", null, 0.02, 1, THREADS),
  resistance("resistance_plain_max", "greatest resistance of the conductor in plain copper at 20 °C"),
  resistance("resistance_coated_max", "greatest resistance of the conductor in coated copper at 20 °C"),
  counted("over_copper_max", "greatest resistance over that of bare copper", null, 1, 3, []),
  measured("bond_temperature_max", "highest temperature of the bond in service", "temperature", "°C", 20, 400, [
    "bonded_with",
  ]),
  measured("bond_temperature_min", "least temperature of the bond while it sets", "temperature", "°C", -40, 80, [
    "bonded_with",
  ]),
  measured("bond_gap_max", "greatest gap that adhesives of this kind fill", "length", "mm", 0.01, 20, ["bonded_with"]),
  measured("bond_set_time_min", "setting time at 20 °C of the fastest usual adhesive", "time", "min", 0.1, 10080, [
    "bonded_with",
  ]),
  measured("bond_set_time_max", "setting time at 20 °C of the slowest usual adhesive", "time", "min", 0.1, 10080, [
    "bonded_with",
  ]),
];

/** `lowest` and `highest` are the plausible range in `unit`. */
function measured(
  id: string,
  name: string,
  dimension: Dimension,
  unit: string,
  lowest: number,
  highest: number,
  needs: readonly string[],
): FactDefinition {
  const plausible = { lowest, highest };
  return {
    id: `table.${id}`,
    name,
    kind: "quantity",
    source: "table",
    group: "table",
    dimension,
    unit,
    plausible,
    needs,
  };
}

/** A bare number; `unit` says of what, null for a coefficient. */
function counted(
  id: string,
  name: string,
  unit: string | null,
  lowest: number,
  highest: number,
  needs: readonly string[],
): FactDefinition {
  const plausible = { lowest, highest };
  const counts = unit === null ? {} : { unit };
  return { id: `table.${id}`, name, kind: "count", source: "table", group: "table", ...counts, plausible, needs };
}

function stress(id: string, name: string, needs: readonly string[]): FactDefinition {
  return measured(id, name, "stress", "MPa", 1, 3000, needs);
}

function resistance(id: string, name: string): FactDefinition {
  return measured(id, name, "resistance-per-length", "Ω/km", 0.1, 1000, ["conductor_listed", "conductor_class"]);
}
