import { type Interval, round12 } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import {
  accelerationOfVelocityMPerS2,
  naturalFrequencyShiftPct,
  noiseInBandMPerS2,
  overReadingPct,
  timesAboveNoise,
  usableUpperFrequencyHz,
} from "../../quantities/index.js";
import { type Derivation, intervalOf, known, lackingAmong, rounded, stateOf, unknownFor } from "./deriving.js";
import { monotone } from "./monotone.js";

/** How far up and how far down a sensor measures on its mounting, and what it weighs there. */
export const REACH_DERIVED: Readonly<Record<string, Derivation>> = {
  resonance_as_mounted: deriveResonance,
  usable_frequency: (facts) =>
    monotone(facts, { resonance_as_mounted: "rises", accepted_error: "rises" }, (resonance, errorPct) =>
      usableUpperFrequencyHz(resonance, Math.min(99, Math.max(0.001, errorPct))),
    ),
  over_reading: deriveOverReading,
  sensor_noise: deriveNoise,
  least_acceleration: (facts) =>
    monotone(facts, { velocity_of_interest: "rises", lowest_turning_frequency: "rises" }, accelerationOfVelocityMPerS2),
  times_above_noise: (facts) =>
    monotone(
      facts,
      { sensor_noise: "falls", velocity_of_interest: "rises", lowest_turning_frequency: "rises" },
      (noise, velocity, frequency) => timesAboveNoise(velocity, frequency, noise),
    ),
  mass_share: deriveMassShare,
  natural_frequency_shift: deriveShift,
};

/** Nearer to the resonance, or above it, damping decides how much too much is read: no less than at this share of it. */
const MOST_OF_RESONANCE = 0.9;
const LEAST_NEAR_RESONANCE_PCT = round12(overReadingPct(MOST_OF_RESONANCE));
const G_PER_KG = 1000;
const LEAST = 1e-9;
const MOST = 1e12;
const ON_A_BOLT: readonly unknown[] = ["tapped-hole", "existing-hole"];

/** What was measured at the point comes first; a model is stated for a bolt, and on anything softer it is only a bound. */
function deriveResonance(facts: Facts): FactState {
  const from = ["mounted_resonance", "model.mounted_resonance", "mounting_method"];
  const measured = stateOf(facts, "mounted_resonance");
  const stated = intervalOf(measured);
  if (stated) return known(stated, ["mounted_resonance"], facts);
  if (!measured.known && measured.reason !== "missing") return unknownFor("mounted_resonance", from, facts);
  const ofModel = intervalOf(stateOf(facts, "model.mounted_resonance"));
  const notAsked = measured.origin.kind === "none";
  if (!ofModel) return unknownFor(notAsked ? "model.mounted_resonance" : "mounted_resonance", from, facts);
  const method = stateOf(facts, "mounting_method");
  if (method.known && ON_A_BOLT.includes(method.value)) {
    return known(ofModel, ["model.mounted_resonance", "mounting_method"], facts);
  }
  const atMost = { lowest: Number.NEGATIVE_INFINITY, highest: ofModel.highest };
  return known(atMost, [method.known ? "mounted_resonance" : "mounting_method", ...from], facts);
}

/** Of the whole band up to the highest frequency, so that it rises with that and falls with the resonance. */
function deriveOverReading(facts: Facts): FactState {
  const state = monotone(facts, { highest_frequency: "rises", resonance_as_mounted: "falls" }, (top, resonance) =>
    overReadingPct(Math.min(MOST_OF_RESONANCE, top / resonance)),
  );
  const ends = intervalOf(state);
  if (!state.known || !ends || ends.highest < LEAST_NEAR_RESONANCE_PCT) return state;
  return { ...state, value: { ...ends, highest: Number.POSITIVE_INFINITY } };
}

/** Noise grows with the root of the band: one line where spectra are taken, the whole band where the level is. */
function deriveNoise(facts: Facts): FactState {
  const from = ["model.noise_density", "highest_frequency", "line_spacing", "evaluation"];
  const evaluation = stateOf(facts, "evaluation");
  const [density, whole, line] = from.map((id) => positive(facts, id));
  const needed = [
    "model.noise_density",
    ...(evaluation.known && evaluation.value === "spectrum" ? ["line_spacing"] : ["highest_frequency"]),
  ];
  const lacking = lackingAmong(needed, facts, (id) => positive(facts, id) !== null);
  if (!density || lacking !== undefined) return unknownFor(lacking ?? "model.noise_density", from, facts);
  const noise = (noiseDensity: number, bandwidth: number): number => noiseInBandMPerS2(noiseDensity, bandwidth);
  const spectra = evaluation.known ? evaluation.value === "spectrum" : null;
  const narrow = spectra === false ? whole : line;
  const wide = spectra === true ? line : whole;
  const bounds: Interval = {
    lowest: narrow ? noise(density.lowest, narrow.lowest) : 0,
    highest: wide ? noise(density.highest, wide.highest) : Number.POSITIVE_INFINITY,
  };
  return known(rounded(bounds), [...(evaluation.known ? [] : ["evaluation"]), ...needed], facts);
}

/** A number with ends above 0; bandwidths of one line, and noise, are small, and an accuracy may carry them to nothing. */
function positive(facts: Facts, id: string): Interval | null {
  const ends = intervalOf(stateOf(facts, id));
  if (!ends || !(ends.highest > LEAST)) return null;
  return { lowest: Math.max(LEAST, ends.lowest), highest: Math.min(MOST, ends.highest) };
}

/** The sensor alone is the least; of pad or adapter nothing is known where nobody weighed them. */
function deriveMassShare(facts: Facts): FactState {
  const from = ["model.mass", "moving_mass", "mount_mass"];
  const [sensor, moving] = from.map((id) => positive(facts, id));
  const lacking = lackingAmong(from.slice(0, 2), facts, (id) => positive(facts, id) !== null);
  if (!sensor || !moving || lacking !== undefined) return unknownFor(lacking ?? "model.mass", from, facts);
  const mount = intervalOf(stateOf(facts, "mount_mass"));
  const share = (massG: number, movingKg: number): number =>
    movingKg > LEAST ? (100 * massG) / (movingKg * G_PER_KG) : Number.POSITIVE_INFINITY;
  const bounds: Interval = {
    lowest: share(sensor.lowest + Math.max(0, mount?.lowest ?? 0), moving.highest),
    highest: mount ? share(sensor.highest + Math.max(0, mount.highest), moving.lowest) : Number.POSITIVE_INFINITY,
  };
  return known(rounded(bounds), mount ? from : ["mount_mass", ...from.slice(0, 2)], facts);
}

/** The heavier the sensor is beside what it sits on, the further the frequency falls, and never all the way to nothing. */
function deriveShift(facts: Facts): FactState {
  const share = intervalOf(stateOf(facts, "mass_share"));
  if (!share) return unknownFor("mass_share", ["mass_share"], facts);
  const shift = (pct: number): number => (pct < MOST / 100 ? naturalFrequencyShiftPct(100, Math.max(0, pct)) : -100);
  return known(rounded({ lowest: shift(share.highest), highest: shift(share.lowest) }), ["mass_share"], facts);
}
