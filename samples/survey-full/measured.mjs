/** What was measured, chosen and built at a point, with the small differences that there are between any two points. */
import { BUILT } from "./layers.mjs";

const FREQUENCIES_HZ = [200, 500, 1000, 2000, 2500, 5000];
const LINES = [800, 1600, 3200, 6400, 12800, 25600];
const TURNS_WANTED = 22;

/** Small differences from point to point, as a tape and a caliper give them. */
export function measuredAt(i, method) {
  const common = {
    flat_diameter: 34 + (i % 5),
    surface_temperature: 46 + ((i * 7) % 19),
    load_zone_angle: 15 * (i % 4),
    distance_to_bearing: 30 + ((i * 11) % 50),
    axis_deviation: (i * 3) % 8,
    cable_length: 18 + ((i * 13) % 45),
    power_cable_distance: 350 + 50 * (i % 6),
    bend_radius: 65 + 5 * (i % 4),
    strain_relief_distance: 120 + 20 * (i % 7),
  };
  return method === "tapped-hole"
    ? { ...common, wall_thickness: 24 + (i % 7) }
    : { ...common, wall_thickness: 8 + (i % 5) };
}

/** How the measurement is set up: wide enough for bearings, teeth and blades, fine enough for the slowest turn. */
export function setUpFor(said) {
  const hz = (said.highest_speed ?? said.nominal_speed) / 60;
  const wanted = [40 * hz, 3 * hz * (said.blade_count ?? 0), 3.25 * hz * (said.gear_teeth ?? 0)];
  const top = FREQUENCIES_HZ.find((frequency) => frequency >= Math.max(...wanted)) ?? 5000;
  const slowest = (said.lowest_speed ?? said.nominal_speed) / 60;
  const lines = LINES.find((count) => (count / top) * slowest >= TURNS_WANTED) ?? 25600;
  const varies = said.variable_speed === "yes";
  const isMotor = said.component === "motor";
  return {
    highest_frequency: top,
    spectrum_lines: lines,
    local_resonance: 1.6 * top,
    ...(isMotor ? { pole_count: 2 * Math.floor(3000 / said.nominal_speed), mains_frequency: 50 } : {}),
    ...(varies ? { speed_change: Math.floor((80 / lines) * 1000) / 1000 } : {}),
  };
}

/** What the fitters wrote down; of points not yet fitted, nothing. */
export function builtOf(said, fittedOn, i) {
  if (!fittedOn) return {};
  const velocity = Math.round((1.1 + ((i * 17) % 23) / 10) * 10) / 10;
  return {
    ...BUILT,
    installed_on: new Date(`${fittedOn}T00:00:00Z`),
    applied_torque:
      said.target_torque === undefined ? undefined : Math.round(said.target_torque * (98 + (i % 5))) / 100,
    voltage_at_sensor: 23.9,
    sensor_serial: `VS6${said.junction_box.slice(3)}0${said.channel}`,
    baseline_velocity: velocity,
    baseline_acceleration: Math.round(velocity * 14) / 10,
    baseline_speed: said.lowest_speed === undefined ? said.nominal_speed : said.lowest_speed + 100,
    baseline_spread: 3 + (i % 4),
    handheld_velocity: Math.round(velocity * 10.4) / 10,
    baseline_on: new Date(`${fittedOn}T00:00:00Z`),
  };
}
