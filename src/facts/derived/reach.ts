import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { quantity, count } = derivedIn("mounting");

const ONE_MASS =
  "forced response of one mass on one spring, undamped (W. T. Thomson, Theory of Vibration with Applications, section 3.11)";

/** How far up and how far down a sensor measures on its mounting, and what it weighs there. */
export const REACH_DERIVED: readonly DerivedDefinition[] = [
  quantity("resonance_as_mounted", "resonance of the sensor as mounted", "frequency", "Hz", {
    needs: ["mounted_resonance", "model.mounted_resonance", "mounting_method"],
    formula:
      "as measured at the point, else that of the model on a bolt; on any softer mounting that of the model at most",
    formulaSource: "common practice: a softer joint lowers the resonance, by how much only a measurement tells",
  }),
  quantity("usable_frequency", "highest frequency within the accepted error", "frequency", "Hz", {
    needs: ["resonance_as_mounted", "accepted_error"],
    formula: "resonance as mounted × √(1 − 1 / (1 + accepted error))",
    formulaSource: ONE_MASS,
  }),
  quantity("over_reading", "over-reading up to the highest frequency of interest", "ratio", "%", {
    needs: ["highest_frequency", "resonance_as_mounted"],
    formula:
      "100 % × (1 / (1 − (highest frequency / resonance as mounted)²) − 1); from 0.9 of the resonance on no less than there",
    formulaSource: ONE_MASS,
  }),
  quantity("sensor_noise", "noise of the sensor in its band", "vibration-acceleration", "m/s²", {
    needs: ["model.noise_density", "highest_frequency", "line_spacing", "evaluation"],
    formula: "noise density × √bandwidth; the bandwidth is one line of a spectrum, else the highest frequency",
    formulaSource: "derivation, flat noise density",
  }),
  quantity("least_acceleration", "acceleration of the velocity of interest", "vibration-acceleration", "m/s²", {
    needs: ["velocity_of_interest", "lowest_turning_frequency"],
    formula: "2π × lowest turning frequency × velocity of interest",
    formulaSource: "sine wave, a = 2πf v",
  }),
  count("times_above_noise", "velocity of interest above the noise of the sensor", "times", {
    needs: ["velocity_of_interest", "lowest_turning_frequency", "sensor_noise"],
    formula: "2π × lowest turning frequency × velocity of interest / noise of the sensor",
    formulaSource: "derivation",
  }),
  quantity("mass_share", "mass of sensor and mount, of the moving mass", "ratio", "%", {
    needs: ["model.mass", "mount_mass", "moving_mass"],
    formula: "100 % × (mass of the sensor + mass of pad or adapter) / moving mass",
    formulaSource: "definition",
  }),
  quantity("natural_frequency_shift", "shift of the natural frequency by sensor and mount", "ratio", "%", {
    needs: ["mass_share"],
    formula: "100 % × (1 / √(1 + mass of sensor and mount / moving mass) − 1)",
    formulaSource: "one mass on one spring; f'/f = √(m / (m + Δm))",
  }),
];
