import type { FactDefinition } from "./definition.js";

/**
 * Facts of a group of points: what the rows that share a key (a supply, a machine, a serial number) come to together.
 * A group file of the rulebook says how each is taken from the rows; `needs` are the facts of a row that it may use.
 */
export const GROUP_FACTS: readonly FactDefinition[] = [
  current(
    "supply_current",
    "running current of all points on the supply",
    ["sensor_current", "current_drawn"],
    1_000_000,
  ),
  current(
    "supply_starting_current",
    "starting current of all points on the supply",
    ["starting_current", "current_at_start"],
    10_000_000,
  ),
  current("supply_rating", "rated current of the supply, as its rows state it", ["supply_rating"], 100_000),
  counted("points_on_supply", "points that name the supply", []),
  counted("critical_points_on_supply", "points of class A machines on the supply", ["criticality"]),
  {
    ...counted("sensors_stated", "sensors on the supply, as its rows state them", ["sensors_on_supply"]),
    unit: "sensors",
  },
  counted("points_with_serial", "points with the serial number", []),
  counted("points_on_channel", "points on the channel", []),
  counted("radial_directions", "different radial directions at the bearing", ["direction"], "directions"),
  counted("radial_points", "points at the bearing whose direction is radial and no more", ["direction"]),
  counted("triaxial_points", "triaxial points at the bearing", ["direction"]),
  counted("axial_points", "points at the bearing that see the axial direction", ["direction"]),
  classOf("bearing_criticality", "criticality, as the rows of the bearing state it"),
  counted("drive_end_points", "points at the drive end", ["bearing_position"]),
  counted("non_drive_end_points", "points at the non-drive end", ["bearing_position"]),
  counted("points_on_machine", "points on the machine", []),
  classOf("machine_criticality", "criticality, as the rows of the machine state it"),
];

function current(id: string, name: string, needs: readonly string[], highest: number): FactDefinition {
  const plausible = { lowest: 0, highest };
  const dimension = "current";
  return { ...ofGroup(id, name), kind: "quantity", dimension, unit: "mA", plausible, needs };
}

function counted(id: string, name: string, needs: readonly string[], unit = "points"): FactDefinition {
  return { ...ofGroup(id, name), kind: "count", unit, plausible: { lowest: 0, highest: 1_000_000 }, needs };
}

function classOf(id: string, name: string): FactDefinition {
  return { ...ofGroup(id, name), kind: "choice", choices: ["A", "B", "C"], needs: ["criticality"] };
}

function ofGroup(id: string, name: string): Pick<FactDefinition, "id" | "name" | "source" | "group"> {
  return { id: `group.${id}`, name, source: "group", group: "group" };
}
