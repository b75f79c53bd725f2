/** What most columns of a field hold, in the unit of the field, and the other units in which people leave it bare. */
export interface UsualValues {
  readonly lowest: number;
  readonly highest: number;
  /** Ids of units, the likeliest first. */
  readonly others: readonly string[];
}

const SPEED: UsualValues = { lowest: 100, highest: 30_000, others: ["Hz"] };

/**
 * Narrower than what can be meant at all (the catalogue's plausible range): a single value outside is nothing odd, but
 * a column that has none inside, and would have them in another unit, was probably filled in that unit. Common practice
 * for machines of 1 kW and more, and for sensors on bolts of M5 to M12. Temperatures are left out: °F and °C overlap.
 */
export const USUAL_VALUES: ReadonlyMap<string, UsualValues> = new Map([
  ["nominal_speed", SPEED],
  ["lowest_speed", SPEED],
  ["highest_speed", SPEED],
  ["hole_depth", { lowest: 5, highest: 120, others: ["in", "cm", "m"] }],
  ["thread_depth", { lowest: 3, highest: 80, others: ["in", "cm", "m"] }],
  ["flat_diameter", { lowest: 8, highest: 500, others: ["in", "cm", "m"] }],
  ["wall_thickness", { lowest: 1, highest: 150, others: ["in", "cm", "m"] }],
  ["surface_radius", { lowest: 20, highest: 5_000, others: ["in", "cm", "m"] }],
  ["power_cable_distance", { lowest: 40, highest: 5_000, others: ["m", "cm", "ft", "in"] }],
  ["paint_thickness", { lowest: 15, highest: 3_000, others: ["mm", "mil"] }],
  ["roughness", { lowest: 0.2, highest: 50, others: ["µin"] }],
  ["cable_length", { lowest: 1, highest: 800, others: ["mm", "cm"] }],
  ["working_height", { lowest: 0, highest: 50, others: ["cm", "mm"] }],
  ["target_torque", { lowest: 0.5, highest: 40, others: ["in·lbf", "kgf·cm", "N·cm"] }],
  ["applied_torque", { lowest: 0.5, highest: 40, others: ["in·lbf", "kgf·cm", "N·cm"] }],
  ["cure_time", { lowest: 3, highest: 4_320, others: ["h", "d"] }],
  ["sensor_current", { lowest: 2, highest: 1_000, others: ["A"] }],
  ["supply_rating", { lowest: 50, highest: 60_000, others: ["A"] }],
  ["conductor_size", { lowest: 0.1, highest: 10, others: ["AWG"] }],
  ["highest_frequency", { lowest: 50, highest: 30_000, others: ["kHz"] }],
]);
