import type { Dimension } from "../../base/index.js";
import type { FactDefinition } from "../definition.js";

const CABLE = [
  "cable_length",
  "conductor_size",
  "sensor_current",
  "conductor_class",
  "conductor_temperature",
  "ambient_max",
  "table.resistance_plain_max",
  "table.resistance_coated_max",
  "table.over_copper_max",
];
const LOAD = ["sensors_on_supply", "supply_rating"];

/** Cable and supply. */
export const WIRING_DERIVED: readonly FactDefinition[] = [
  electrical("voltage_at_point", "lowest voltage at the point", "dc-voltage", "V", ["supply_voltage_min", ...CABLE]),
  electrical("expected_voltage", "voltage to be expected at the point", "dc-voltage", "V", [
    "supply_voltage",
    ...CABLE,
  ]),
  electrical("supply_load", "load of the supply", "ratio", "%", [...LOAD, "sensor_current"]),
  electrical("supply_starting_load", "load of the supply at the start", "ratio", "%", [...LOAD, "starting_current"]),
];

function electrical(
  id: string,
  name: string,
  dimension: Dimension,
  unit: string,
  needs: readonly string[],
): FactDefinition {
  return { id, name, kind: "quantity", source: "derived", group: "electrical", dimension, unit, needs };
}
