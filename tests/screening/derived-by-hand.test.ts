import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { askedFor, between, derive, shown } from "../tools/derived.js";
import { known, unknown } from "../tools/make-record.js";

type Given = Readonly<Record<string, FactState>>;

/** 30 turns a second; 9 balls of 7.94 mm on a circle of 39.04 mm: d/D = 0.20338. */
const BEARING: Given = {
  nominal_speed: known(1800),
  variable_speed: known("no"),
  bearing_elements: known(9),
  element_diameter: known(7.94),
  pitch_diameter: known(39.04),
  contact_angle: known(0),
};
const COUNTED: Given = { nominal_speed: known(1800), variable_speed: known("no"), bearing_elements: known(9) };
const UNKNOWN_BEARING: Given = { nominal_speed: known(1800), variable_speed: known("no") };
const MOTOR: Given = { nominal_speed: known(1480), mains_frequency: known(50), pole_count: known(4) };
const MODEL: Given = {
  "model.mounted_resonance": known(32_000),
  "model.noise_density": known(60),
  "model.mass": known(90),
  "model.base_diameter": known(20),
  "model.lower_corner": known(10),
  "model.seat_diameter_min": known(30),
};
const RECORD: Given = {
  spectrum_lines: known(16_000),
  highest_frequency: known(10_000),
  evaluation: known("spectrum"),
};
const CABLE: Given = {
  cable_length: known(100),
  conductor_size: known(0.5),
  conductor_class: known("flexible"),
  conductor_temperature: known(20),
};

/** Worked apart from the program, with a pocket calculator; numbers to eight digits. */
const WORKED: readonly (readonly [id: string, given: Given, wanted: number | readonly [number, number]])[] = [
  ["lowest_turning_frequency", BEARING, 30],
  ["cage_frequency", BEARING, 11.949283],
  ["outer_race_frequency", BEARING, 107.54355],
  ["inner_race_frequency", BEARING, 162.45645],
  ["element_fault_frequency", BEARING, 141.40486],
  ["outer_race_frequency", { ...BEARING, contact_angle: known(40) }, 113.96714],
  // Nobody knows the angle: from that of a radial bearing to 4.5 times the turning frequency.
  ["outer_race_frequency", { ...BEARING, contact_angle: unknown("missing") }, [107.54355, 135]],
  // The number of balls alone: they are no wider than 1.01 sin(20°) = 0.34544 of the circle.
  ["cage_frequency", COUNTED, [9.8183948, 15]],
  ["outer_race_frequency", COUNTED, [88.365553, 135]],
  ["inner_race_frequency", COUNTED, [135, 181.63445]],
  ["element_fault_frequency", COUNTED, [76.482465, Number.POSITIVE_INFINITY]],
  // Nothing at all: from 3 elements to 200.
  ["cage_frequency", UNKNOWN_BEARING, [1.8797151, 15]],
  ["inner_race_frequency", UNKNOWN_BEARING, [45, 3047.5932]],
  ["synchronous_speed", MOTOR, 1500],
  ["synchronous_speed", { ...MOTOR, mains_frequency: known(60), pole_count: known(6) }, 1200],
  ["slip", MOTOR, 1.3333333],
  ["slip", { ...MOTOR, nominal_speed: known(1530) }, -2],
  ["pole_pass_frequency", MOTOR, 1.3333333],
  ["twice_line_frequency", MOTOR, 100],
  ["bond_shear", { ...MODEL, target_torque: known(10) }, 1.8862808],
  ["bond_load", { ...MODEL, target_torque: known(10), bond_strength: known(10) }, 18.862808],
  ["over_reading", { ...MODEL, mounted_resonance: known(32_000), highest_frequency: known(5000) }, 2.5025025],
  // 1/(1 - 0.89²) - 1; from 0.9 of the resonance on, and above it, no size is stated, only the 1/(1 - 0.9²) - 1 there.
  ["over_reading", { ...MODEL, mounted_resonance: known(10_000), highest_frequency: known(8900) }, 381.00048],
  [
    "over_reading",
    { ...MODEL, mounted_resonance: known(3000), highest_frequency: known(5000) },
    [426.31579, Number.POSITIVE_INFINITY],
  ],
  ["usable_frequency", { ...MODEL, mounted_resonance: known(32_000), accepted_error: known(10) }, 9648.363],
  ["sensor_noise", { ...MODEL, ...RECORD }, 60e-6 * 9.80665 * Math.sqrt(0.625)],
  ["sensor_noise", { ...MODEL, ...RECORD, evaluation: known("overall") }, 0.0588399],
  ["sensor_noise", { ...MODEL, ...RECORD, evaluation: unknown("missing") }, [0.00046517025, 0.0588399]],
  ["least_acceleration", { nominal_speed: known(1500), velocity_of_interest: known(1) }, 0.15707963],
  ["times_above_noise", { ...MODEL, ...RECORD, nominal_speed: known(1500), velocity_of_interest: known(1) }, 337.68202],
  ["mass_share", { ...MODEL, mount_mass: known(40), moving_mass: known(12) }, 1.0833333],
  ["mass_share", { ...MODEL, moving_mass: known(12) }, [0.75, Number.POSITIVE_INFINITY]],
  // 1/√1.010833333 - 1.
  ["natural_frequency_shift", { ...MODEL, mount_mass: known(40), moving_mass: known(12) }, -0.53730498],
  ["share_shown", { ...MODEL, ...BEARING }, 94.86833],
  ["flat_needed", MODEL, 22],
  ["bearing_area", { ...MODEL, sensor_thread: known("M6") }, 285.88493],
  ["tilt_gap", { ...MODEL, hole_tilt: known(1) }, 0.34904813],
  ["tilt_gap", { ...MODEL, hole_tilt: known(0) }, 0],
  // The copper is 20 °C at its hottest, and may be as cold as -50 °C: 6.8964 Ω × (1 - 0.00393 × 70).
  ["loop_resistance", CABLE, [4.9992004, 8.02]],
  ["wire_gauge", CABLE, 20.149348],
  ["baseline_displacement", { baseline_velocity: known(2), baseline_speed: known(1500) }, 12.732395],
  ["baseline_turning_acceleration", { baseline_velocity: known(2), baseline_speed: known(1500) }, 0.31415927],
  ["days_to_outage", { surveyed_on: known("2026-02-20"), next_outage: known("2026-03-01") }, 9],
  ["days_to_outage", { surveyed_on: known("2028-03-01"), next_outage: known("2028-02-28") }, -2],
  ["current_drawn", { "model.running_current": known(45) }, 45],
  ["current_drawn", { "model.running_current": known(45), sensor_current: known(50) }, 50],
  // Bearing 40 times 30 Hz; seven blades pass 210 times a second, three multiples are fewer.
  ["highest_frequency_of_interest", { ...BEARING, bearing_type: known("rolling"), component: known("motor") }, 1200],
  [
    "highest_frequency_of_interest",
    { ...BEARING, bearing_type: known("plain"), component: known("fan"), blade_count: known(7) },
    630,
  ],
  ["lowest_frequency_of_interest", { ...BEARING, low_band_wanted: known(false) }, 30],
];

describe("derived facts worked by hand", () => {
  it.each(WORKED.map(([id, given, wanted], i) => [`${id} (${i})`, id, given, wanted] as const))(
    "%s",
    (_name, id, given, wanted) => {
      const ends = shown(derive(id, given)) as readonly number[];
      const pair = typeof wanted === "number" ? [wanted, wanted] : wanted;
      ends.forEach((end, i) => {
        const value = pair[i] ?? Number.NaN;
        if (Number.isFinite(value))
          expect(Math.abs(end - value)).toBeLessThanOrEqual(1e-7 * Math.max(1, Math.abs(value)));
        else expect(end).toBe(value);
      });
    },
  );
});

describe("derived facts that only data can tell", () => {
  const SHEET: Given = { adhesive_set_time: known(60), adhesive_set_temperature: known(23) };

  it.each([
    ["waiting_time", { ...SHEET, install_temperature: known(23) }, [60, 60]],
    ["waiting_time", { ...SHEET, install_temperature: known(40) }, [60, 60]],
    ["waiting_time_from", {}, [20, 20]],
    ["waiting_time_from", { adhesive_set_temperature: known(15) }, [20, 20]],
    ["waiting_time_from", { adhesive_set_temperature: known(80) }, [80, 80]],
    ["waiting_time_from", { adhesive_set_temperature: between(18, 23) }, [20, 23]],
    [
      "waiting_time_from",
      { adhesive_set_temperature: unknown("unreadable") },
      ["unreadable", "adhesive_set_temperature"],
    ],
    ["waiting_time", { ...SHEET, install_temperature: known(22) }, [60, Infinity]],
    ["waiting_time", { ...SHEET, install_temperature: between(20, 25) }, [60, Infinity]],
    ["waiting_time", { install_temperature: known(12) }, ["missing", "adhesive_set_time"]],
    // A model is stated for a bolt: on anything softer the resonance is that at most.
    ["resonance_as_mounted", { ...MODEL, mounting_method: known("tapped-hole") }, [32_000, 32_000]],
    ["resonance_as_mounted", { ...MODEL, mounting_method: known("adhesive-pad") }, [-Infinity, 32_000]],
    ["resonance_as_mounted", { ...MODEL, mounting_method: unknown("doubtful") }, [-Infinity, 32_000]],
    [
      "resonance_as_mounted",
      { ...MODEL, mounted_resonance: known(9000), mounting_method: known("magnet") },
      [9000, 9000],
    ],
    [
      "resonance_as_mounted",
      { ...MODEL, mounted_resonance: unknown("unreadable") },
      ["unreadable", "mounted_resonance"],
    ],
    [
      "current_drawn",
      { "model.running_current": known(45), sensor_current: unknown("doubtful") },
      ["doubtful", "sensor_current"],
    ],
    ["synchronous_speed", { ...MOTOR, pole_count: known(5) }, ["unreadable", "pole_count"]],
    ["cage_frequency", { ...BEARING, element_diameter: known(20) }, ["conflicting", "element_diameter"]],
    [
      "lowest_frequency_of_interest",
      { ...BEARING, low_band_wanted: known(true), drive_type: known("belt") },
      [-Infinity, 30],
    ],
  ] as const)("%s: %j", (id, given, wanted) => {
    expect(shown(derive(id, given))).toEqual(wanted);
  });

  it("name what to ask for", () => {
    const pad = { ...MODEL, mounting_method: known("adhesive-pad"), highest_frequency: known(5000) };
    expect(askedFor("over_reading", { ...pad, mounted_resonance: unknown("missing") })).toBe("mounted_resonance");
    expect(askedFor("mass_share", { ...MODEL, moving_mass: known(12) })).toBe("mount_mass");
    expect(askedFor("outer_race_frequency", COUNTED)).toBe("element_diameter");
    expect(askedFor("slip", { ...MOTOR, pole_count: unknown("missing") })).toBe("pole_count");
    expect(askedFor("waiting_time", { ...SHEET, install_temperature: known(10) })).toBe("adhesive_set_temperature");
  });
});

// ISO 10816-3 as reprinted; its scope as a bookseller prints it, read on 2026-11-26: gears and rolls are not in its list of
// machines, fans up to 300 kW only where they are not flexibly supported. Group 2: rigid 1.4, 2.8, 4.5 mm/s, flexible 2.3, 4.5, 7.1; group 1: 2.3, 4.5, 7.1 and 3.5, 7.1, 11.
describe("the zone of the baseline", () => {
  const FAN: Given = { power: known(55), component: known("fan"), support_stiffness: known("rigid") };
  const COMPRESSOR: Given = { ...FAN, component: known("compressor") };

  it.each([
    ["A", { ...FAN, baseline_velocity: known(1.4) }],
    ["B", { ...FAN, baseline_velocity: known(1.41) }],
    ["D", { ...FAN, baseline_velocity: known(4.6) }],
    [
      "C",
      { ...FAN, baseline_velocity: known(4.6), component: known("compressor"), support_stiffness: known("flexible") },
    ],
    ["not-zoned", { ...FAN, baseline_velocity: known(4.6), support_stiffness: known("flexible") }],
    ["not-zoned", { ...FAN, baseline_velocity: known(4.6), component: known("gearbox") }],
    ["not-zoned", { ...FAN, baseline_velocity: known(4.6), component: known("roll") }],
    ["B", { ...FAN, baseline_velocity: known(4.6), power: known(301), support_stiffness: known("flexible") }],
    ["C", { ...FAN, baseline_velocity: known(4.6), power: known(301) }],
    ["A", { ...COMPRESSOR, baseline_velocity: known(1.4), support_stiffness: unknown("missing") }],
    ["D", { ...COMPRESSOR, baseline_velocity: known(12), support_stiffness: unknown("missing") }],
    ["C", { ...FAN, baseline_velocity: known(4.6), component: known("motor"), shaft_height: known(315) }],
    ["D", { ...FAN, baseline_velocity: known(4.6), component: known("motor"), shaft_height: known(280) }],
    ["not-zoned", { ...FAN, baseline_velocity: known(4.6), component: known("motor"), shaft_height: known(132) }],
    ["not-zoned", { ...FAN, baseline_velocity: known(4.6), component: known("pump") }],
    ["not-zoned", { ...FAN, baseline_velocity: unknown("missing"), power: known(15) }],
    ["not-zoned", { ...FAN, baseline_velocity: known(4.6), power: known(60_000) }],
  ] as const)("is %s: %#", (zone, given) => {
    expect(shown(derive("baseline_zone", given))).toBe(zone);
  });

  it.each([
    ["support_stiffness", { ...FAN, baseline_velocity: known(12), support_stiffness: unknown("missing") }],
    ["support_stiffness", { ...COMPRESSOR, baseline_velocity: known(2), support_stiffness: unknown("missing") }],
    [
      "shaft_height",
      { ...FAN, baseline_velocity: known(4.6), component: known("motor"), shaft_height: unknown("missing") },
    ],
    ["component", { ...FAN, baseline_velocity: known(1), component: unknown("missing") }],
    ["power", { ...FAN, baseline_velocity: known(1), power: unknown("missing") }],
    ["baseline_velocity", { ...FAN, baseline_velocity: unknown("missing") }],
    ["baseline_velocity", { ...FAN, baseline_velocity: between(1, 2) }],
  ] as const)("hangs on the %s: %#", (asked, given) => {
    expect(derive("baseline_zone", given).known).toBe(false);
    expect(askedFor("baseline_zone", given)).toBe(asked);
  });
});
