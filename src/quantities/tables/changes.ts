import { convert } from "../../base/index.js";
import { factOf } from "../../facts/index.js";
import { USUAL_LINES } from "../spectrum-record.js";
import { threadDesignated } from "../thread-designation.js";
import { UNIFIED_SIZES } from "./thread-sizes.js";

/** Whether a thing can still be changed once the point is built: metal that is cut off does not come back. */
export type OnceBuilt = "freely" | "only-more" | "no";

/** In which steps a thing can be changed. Of the series, the first is taken where the present value is in none. */
export type Steps =
  | { readonly by: "step"; readonly step: number; readonly onceBuilt: OnceBuilt }
  | { readonly by: "sizes"; readonly series: readonly (readonly number[])[]; readonly onceBuilt: OnceBuilt }
  | {
      readonly by: "words-in-order";
      readonly series: readonly (readonly string[])[];
      /** Where a word of whatever spelling stands: series by series, rising within each; null where nowhere. */
      readonly sizeOf: (word: string) => { readonly series: number; readonly size: number } | null;
      /** Whether sizes of two series can be told apart, and one taken for the other. */
      readonly crosses: boolean;
      readonly onceBuilt: OnceBuilt;
    }
  | { readonly by: "choice"; readonly words: readonly string[]; readonly onceBuilt: OnceBuilt }
  | { readonly by: "model"; readonly onceBuilt: OnceBuilt };

const step = (size: number, onceBuilt: OnceBuilt = "freely"): Steps => ({ by: "step", step: size, onceBuilt });
const sizes = (...series: readonly (readonly number[])[]): Steps => ({ by: "sizes", series, onceBuilt: "freely" });
const choice = (words: readonly string[], onceBuilt: OnceBuilt = "freely"): Steps => ({
  by: "choice",
  words,
  onceBuilt,
});

/** Nominal cross-sections of IEC 60228, mm², from 0.5 mm²; from memory, the smaller ones as in the table of resistances. */
const CONDUCTORS_MM2 = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50];
/** Wire gauges that are sold, thinnest first, as areas by the definition of ASTM B258. */
const GAUGES_MM2 = [26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4].map((gauge) => convert(gauge, "AWG", "mm²", "area"));
/** Nominal direct voltages below 1500 V, preferred ones of IEC 60038; from memory. */
const DC_VOLTAGES_V = [6, 12, 24, 36, 48, 60, 72, 96, 110, 220, 440];
/** Values of Ra, µm, that drawings use: the roughness grades N4 to N10, each twice the one before; from memory. */
const ROUGHNESS_UM = [0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5];
/** Coarse metric threads of first choice, ISO 261 and ISO 262; from memory. */
const METRIC = ["M3", "M4", "M5", "M6", "M8", "M10", "M12", "M16", "M20", "M24"];
const unified = (series: "UNC" | "UNF"): readonly string[] =>
  UNIFIED_SIZES.map(([size, , unc, unf]) => `${size}-${series === "UNC" ? unc : unf} ${series}`);
const THREADS = [METRIC, unified("UNC"), unified("UNF")];

function placeOfThread(word: string): { readonly series: number; readonly size: number } | null {
  const thread = threadDesignated(word);
  if (!thread) return null;
  return { series: thread.system === "metric" ? 0 : thread.series === "coarse" ? 1 : 2, size: thread.majorMm };
}

/** Carbon steel, then each grade of stainless steel; within each, the stronger class comes later. */
const BOLT_CLASSES: readonly (readonly string[])[] = ["", "A2", "A4"].map((grade) =>
  (factOf("bolt_class").choices ?? []).filter((name) => (/^A\d/.exec(name)?.[0] ?? "") === grade),
);

function placeOfClass(word: string): { readonly series: number; readonly size: number } | null {
  const series = BOLT_CLASSES.findIndex((names) => names.includes(word));
  const size = BOLT_CLASSES[series]?.indexOf(word) ?? -1;
  return size < 0 ? null : { series, size };
}

/**
 * What a person can change at a point, by survey fact, and in which steps. What is not listed is as it is: metals, walls,
 * machines and their speeds, places, measured values, permits and consents. Nor is a choice listed that only evades a
 * question (a magnet, a clamp, a hole that was made for something else), nor welding, which nobody does unasked.
 *
 * The steps are common practice, as fine as such a thing is set or measured on site, in the unit of the fact; series
 * have their source beside them.
 */
export const STEPS: ReadonlyMap<string, Steps> = new Map(
  Object.entries({
    // Machining, mm.
    hole_depth: step(0.5, "only-more"),
    thread_depth: step(0.5, "only-more"),
    drill_diameter: step(0.1, "only-more"),
    flat_diameter: step(1, "only-more"),
    roughness: sizes(ROUGHNESS_UM),
    surface_finish: choice(["bare-machined"]),
    chip_guard: choice(["greased-drill", "magnet-tray", "vacuum", "stopped-short"], "no"),
    // Bolt.
    thread: { by: "words-in-order", series: THREADS, sizeOf: placeOfThread, crosses: true, onceBuilt: "only-more" },
    bolt_reach: step(1),
    bolt_class: {
      by: "words-in-order",
      series: BOLT_CLASSES,
      sizeOf: placeOfClass,
      crosses: false,
      onceBuilt: "freely",
    },
    thread_state: choice(["dry", "oiled", "greased", "locked"]),
    target_torque: step(0.5, "no"),
    applied_torque: step(0.5),
    // Bond.
    cure_time: step(1, "no"),
    install_temperature: step(1, "no"),
    adhesive_set_time: step(1, "no"),
    adhesive_gap_max: step(0.1, "no"),
    adhesive: choice(factOf("adhesive").choices ?? [], "no"),
    solvent_flash_point: step(1, "no"),
    // Sensor, place and work.
    mounting_method: choice(["tapped-hole", "adhesive-pad"]),
    sensor_model: { by: "model", onceBuilt: "freely" },
    distance_to_bearing: step(10),
    joints_in_path: step(1),
    load_zone_angle: step(5),
    axis_deviation: step(1),
    access: choice(["scaffold"], "no"),
    // Measurement and its baseline.
    highest_frequency: step(10),
    spectrum_lines: sizes(USUAL_LINES),
    averages: step(1),
    evaluation: choice(["overall", "spectrum", "triggered"]),
    speed_reference: choice(["once-per-turn", "pulses", "analogue", "network"]),
    baseline_records: step(1),
    baseline_speed: step(1),
    // Cable and supply. Degrees of protection of IEC 60529, as sensors are sold with them.
    conductor_size: sizes(CONDUCTORS_MM2, GAUGES_MM2),
    cable_length: step(1),
    power_cable_distance: step(10),
    bend_radius: step(5),
    strain_relief_distance: step(10),
    cable_temperature_max: step(5),
    screen_earthed: choice(["supply-end", "sensor-end"]),
    ip_rating: choice(["IP54", "IP65", "IP66", "IP67", "IP66/IP67", "IP68", "IP66/IP68", "IP69", "IP67/IP69"]),
    supply_voltage: sizes(DC_VOLTAGES_V),
    supply_voltage_min: step(0.1),
    supply_kind: choice(["dc"]),
    supply_separation: choice(["selv", "pelv"]),
    sensors_on_supply: step(1),
    supply_rating: step(100),
  }),
);

/** Steps in which things are measured that nobody sets, or that are measured more finely than they are set. */
export const MEASURED_STEPS: ReadonlyMap<string, number> = new Map(
  Object.entries({
    wall_thickness: 0.5,
    surface_radius: 1,
    surface_temperature: 1,
    lowest_speed: 1,
    nominal_speed: 1,
    local_resonance: 10,
    shortest_run: 1,
    supply_voltage: 0.1,
    voltage_at_sensor: 0.1,
    sensor_current: 1,
    starting_current: 1,
  }),
);
