import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { quantity } = derivedIn("operation");

const GEOMETRY = ["bearing_elements", "element_diameter", "pitch_diameter", "contact_angle"];
const ROLLING =
  "kinematics of pure rolling as printed in handbooks, inner ring turning; where geometry is missing, derivation from elements that must fit on their circle (d/D ≤ sin(π/n))";
const MOTOR = "handbooks on induction motors";

/** Frequencies of bearings and motors, and what is to be seen of all of them. */
export const FREQUENCY_DERIVED: readonly DerivedDefinition[] = [
  quantity("cage_frequency", "lowest cage frequency", "frequency", "Hz", {
    needs: ["lowest_turning_frequency", ...GEOMETRY],
    formula: "lowest turning frequency × (1 − k) / 2 with k = d/D × cos(contact angle)",
    formulaSource: ROLLING,
  }),
  quantity("outer_race_frequency", "highest outer-race frequency", "frequency", "Hz", {
    needs: ["highest_turning_frequency", ...GEOMETRY],
    formula: "highest turning frequency × elements × (1 − k) / 2 with k = d/D × cos(contact angle)",
    formulaSource: ROLLING,
  }),
  quantity("inner_race_frequency", "highest inner-race frequency", "frequency", "Hz", {
    needs: ["highest_turning_frequency", ...GEOMETRY],
    formula: "highest turning frequency × elements × (1 + k) / 2 with k = d/D × cos(contact angle)",
    formulaSource: ROLLING,
  }),
  quantity("element_fault_frequency", "highest frequency of a fault on a ball or roller", "frequency", "Hz", {
    needs: ["highest_turning_frequency", ...GEOMETRY],
    formula: "highest turning frequency × (1 − k²) × D/d with k = d/D × cos(contact angle), twice the spin",
    formulaSource: ROLLING,
  }),
  quantity("synchronous_speed", "synchronous speed of the motor", "rotational-speed", "r/min", {
    needs: ["mains_frequency", "pole_count"],
    formula: "120 × mains frequency / poles",
    formulaSource: MOTOR,
  }),
  quantity("slip", "slip of the motor at nominal speed", "ratio", "%", {
    needs: ["synchronous_speed", "nominal_speed"],
    formula: "100 % × (synchronous speed − nominal speed) / synchronous speed",
    formulaSource: MOTOR,
  }),
  quantity("twice_line_frequency", "twice the mains frequency", "frequency", "Hz", {
    needs: ["mains_frequency"],
    formula: "2 × mains frequency, the pull of the field on the stator",
    formulaSource: MOTOR,
  }),
  quantity("pole_pass_frequency", "pole-pass frequency of the motor", "frequency", "Hz", {
    needs: ["slip", "mains_frequency"],
    formula: "2 × slip / 100 % × mains frequency, the spacing of the side bands of a broken rotor bar",
    formulaSource: MOTOR,
  }),
  quantity("lowest_frequency_of_interest", "lowest frequency of interest", "frequency", "Hz", {
    needs: ["lowest_turning_frequency", "low_band_wanted", "bearing_type", "drive_type", "cage_frequency"],
    formula:
      "lowest turning frequency; where cage or belt are to be seen, that of the cage of a rolling bearing, and of a belt not above the turning frequency",
    formulaSource: "common practice",
  }),
  quantity("highest_frequency_of_interest", "highest frequency that the machine asks for", "frequency", "Hz", {
    needs: ["highest_turning_frequency", "bearing_type", "component", "tooth_mesh_frequency", "blade_pass_frequency"],
    formula:
      "greatest of: turning frequency × 40 (rolling bearing), tooth mesh × 3.25 (gearbox), blade pass × 3 (pump, fan, compressor)",
    formulaSource: "common practice; sources go up to 70 and 3.5 times, the least is asked for here",
  }),
  quantity("share_shown", "share of the turning frequency that the sensor shows", "ratio", "%", {
    needs: ["lowest_turning_frequency", "model.lower_corner"],
    formula: "100 % × r / √(1 + r²) with r = lowest turning frequency / lower corner",
    formulaSource: "magnitude of a first-order high pass",
  }),
];
