import type { Language } from "../../facts/index.js";
import { type BlankColumn, numberIn } from "./columns.js";
import type { BlankTexts } from "./texts/blank-texts.js";

/** The example point, by fact id: texts, numbers in the unit of the fact, choices by their id. */
const EXAMPLE: Readonly<Record<string, string | number>> = {
  point_id: "P-1101-2V",
  asset_tag: "P-1101",
  machine_type: "pump",
  surveyed_by: "A. B.",
  surveyed_on: "2026-03-27",
  photo: "0417",
  nominal_speed: 1485,
  lowest_speed: 1485,
  highest_speed: 1485,
  variable_speed: "no",
  speed_reference: "none",
  component: "pump",
  bearing_position: "drive-end",
  direction: "vertical",
  mounted_on: "bearing-housing",
  surface_material: "grey-cast-iron",
  surface_finish: "painted",
  flat_diameter: 36,
  mounting_method: "tapped-hole",
  thread_depth: 11,
  hole_depth: 16.5,
  target_torque: 8,
  supply_voltage: 24,
  supply_kind: "dc",
  highest_frequency: 2000,
  wall_thickness: 28,
  behind_wall: "air",
  roughness: 1.6,
  surface_temperature: 65,
  install_temperature: 18,
  thread: "M6",
  sensor_thread: "M6",
  drill_diameter: 5,
  bolt_reach: 9.5,
  bolt_class: "8.8",
  thread_state: "dry",
  chip_guard: "vacuum",
  installed_on: "2026-04-14",
  installed_by: "A. B.",
  applied_torque: 8,
  voltage_at_sensor: 23.8,
  sensor_serial: "0012345",
  baseline_velocity: 2.1,
  baseline_acceleration: 6.4,
  baseline_load: 85,
  baseline_on: "2026-04-15",
};
const NOTHING = "-";

/** What the example has in a column, as someone would type it; "-" where the example knows nothing. */
export function exampleOf({ field, words }: BlankColumn, language: Language, texts: BlankTexts): string {
  if (field.id === "sensor_model") return [...words.keys()][0] ?? NOTHING;
  const value = texts.example[field.id] ?? EXAMPLE[field.id] ?? NOTHING;
  if (typeof value === "number") return numberIn(language, value);
  return words.size > 0 ? (words.get(value) ?? NOTHING) : value;
}
