import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactState, factOf } from "../../src/facts/index.js";
import { completionOf } from "../tools/any-fact.js";
import { derive } from "../tools/derived.js";
import { known } from "../tools/make-record.js";

type Way = "rises" | "falls";

/** Which way each quantity goes as one of its parts grows and all others stay. */
const WAYS: Readonly<Record<string, Readonly<Record<string, Way>>>> = {
  cage_frequency: { lowest_speed: "rises", element_diameter: "falls", pitch_diameter: "rises", contact_angle: "rises" },
  outer_race_frequency: { highest_speed: "rises", element_diameter: "falls", contact_angle: "rises" },
  inner_race_frequency: { highest_speed: "rises", element_diameter: "rises", contact_angle: "falls" },
  element_fault_frequency: { highest_speed: "rises", element_diameter: "falls", contact_angle: "rises" },
  slip: { nominal_speed: "falls", mains_frequency: "rises" },
  turns_in_record: { lowest_speed: "rises", spectrum_lines: "rises", highest_frequency: "falls" },
  measuring_time: { settling_time: "rises", averages: "rises", spectrum_lines: "rises", highest_frequency: "falls" },
  share_shown: { lowest_speed: "rises", "model.lower_corner": "falls" },
  usable_frequency: { mounted_resonance: "rises", accepted_error: "rises" },
  over_reading: { highest_frequency: "rises", mounted_resonance: "falls" },
  sensor_noise: { "model.noise_density": "rises", highest_frequency: "rises" },
  times_above_noise: { velocity_of_interest: "rises", lowest_speed: "rises", "model.noise_density": "falls" },
  mass_share: { "model.mass": "rises", mount_mass: "rises", moving_mass: "falls" },
  bond_load: { target_torque: "rises", bond_strength: "falls", "model.seat_diameter_min": "falls" },
  tilt_gap: { hole_tilt: "rises", "model.base_diameter": "rises" },
  bearing_area: { "model.base_diameter": "rises" },
  loop_resistance: { cable_length: "rises", conductor_size: "falls" },
  voltage_at_point: {
    supply_voltage_min: "rises",
    cable_length: "falls",
    sensor_current: "falls",
    ambient_max: "falls",
  },
  wire_gauge: { conductor_size: "falls" },
  pad_gap: { surface_radius: "falls", "model.seat_diameter_min": "rises" },
  wall_left: { wall_thickness: "rises", hole_depth: "falls", drill_diameter: "falls" },
  planned_preload: { target_torque: "rises" },
  baseline_displacement: { baseline_velocity: "rises", baseline_speed: "falls" },
};

/** Sizes that are no tables: a nominal size of the table has a resistance of its own, a bought bearing a round ratio. */
const WORDS: Readonly<Record<string, FactState>> = {
  thread: known("M6"),
  sensor_thread: known("M6"),
  bolt_class: known("8.8"),
  thread_state: known("oiled"),
  conductor_class: known("stranded"),
  evaluation: known("overall"),
  variable_speed: known("yes"),
};

function rootsOf(id: string): readonly string[] {
  const { needs } = factOf(id);
  return needs ? [...new Set(needs.flatMap(rootsOf))] : [id];
}

function endsOf(state: FactState): readonly [number, number] | null {
  return state.known && typeof state.value === "object" ? [state.value.lowest, state.value.highest] : null;
}

const PAIRS = Object.entries(WAYS).flatMap(([id, parts]) =>
  Object.entries(parts).map(([part, way]) => [id, way, part] as const),
);

describe("a derived quantity", () => {
  it.each(PAIRS)("%s %s with the %s", (id, way, part) => {
    const roots = rootsOf(id);
    const values = fc.tuple(...roots.map((root) => completionOf(factOf(root))));
    let compared = 0;
    fc.assert(
      fc.property(values, completionOf(factOf(part)), (complete, other) => {
        const given = Object.fromEntries(
          roots.map((root, i) => [root, WORDS[root] ?? complete[i]?.(undefined)]),
        ) as Record<string, FactState>;
        const second = other(undefined);
        const [one, two] = [given[part], second].map((state) => (state ? endsOf(state) : null));
        if (!one || !two || !second) throw new Error(`${part} is no number`);
        const [low, high] = one[0] <= two[0] ? [given[part], second] : [second, given[part]];
        const [less, more] = [low, high].map((state) =>
          endsOf(derive(id, { ...given, ...(state ? { [part]: state } : {}) })),
        );
        if (!less || !more) return;
        compared += 1;
        for (const end of [0, 1] as const) {
          const [from, to] = way === "rises" ? [less[end], more[end]] : [more[end], less[end]];
          expect(to).toBeGreaterThanOrEqual(from - 1e-9 * Math.max(1, Math.abs(Number.isFinite(from) ? from : 0)));
        }
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(20);
  });
});
