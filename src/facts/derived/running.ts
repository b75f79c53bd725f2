import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { quantity, count } = derivedIn("operation");

const TURNING = "definition";
const SPECTRUM = "discrete Fourier transform; spacing = top / lines, length = 1 / spacing, no window factor";

/** Frequencies of the shaft and what a record of the signal shows of it. */
export const RUNNING_DERIVED: readonly DerivedDefinition[] = [
  quantity("highest_running_speed", "highest running speed", "rotational-speed", "r/min", {
    needs: ["highest_speed", "nominal_speed", "variable_speed"],
    formula: "highest speed, else nominal speed; under a variable drive the nominal speed at least",
    formulaSource: "common practice",
  }),
  quantity("lowest_turning_frequency", "lowest turning frequency", "frequency", "Hz", {
    needs: ["lowest_running_speed"],
    formula: "lowest running speed / 60",
    formulaSource: TURNING,
  }),
  quantity("highest_turning_frequency", "highest turning frequency", "frequency", "Hz", {
    needs: ["highest_running_speed"],
    formula: "highest running speed / 60",
    formulaSource: TURNING,
  }),
  quantity("tooth_mesh_frequency", "highest tooth-mesh frequency", "frequency", "Hz", {
    needs: ["gear_teeth", "highest_running_speed"],
    formula: "number of teeth × highest running speed / 60",
    formulaSource: TURNING,
  }),
  quantity("blade_pass_frequency", "highest blade-pass frequency", "frequency", "Hz", {
    needs: ["blade_count", "highest_running_speed"],
    formula: "number of blades × highest running speed / 60",
    formulaSource: TURNING,
  }),
  quantity("line_spacing", "spacing of the lines of the spectrum", "frequency", "Hz", {
    needs: ["highest_frequency", "spectrum_lines"],
    formula: "highest frequency / lines",
    formulaSource: SPECTRUM,
  }),
  quantity("record_length", "length of one record", "time", "s", {
    needs: ["highest_frequency", "spectrum_lines"],
    formula: "lines / highest frequency",
    formulaSource: SPECTRUM,
  }),
  count("turns_in_record", "turns of the shaft in one record", "turns", {
    needs: ["lowest_running_speed", "record_length"],
    formula: "lowest running speed / 60 × length of one record",
    formulaSource: "derivation",
  }),
  quantity("measuring_time", "time that a measurement takes", "time", "s", {
    needs: ["settling_time", "record_length", "averages"],
    formula: "settling time + records averaged × length of one record (records that do not overlap)",
    formulaSource:
      "settling time plus record × ((averages − 1) × (1 − overlap) + 1), the second part as an instrument maker prints it",
  }),
  count("lines_smeared", "lines over which the highest component spreads", "lines", {
    needs: ["speed_change", "spectrum_lines"],
    formula: "lines × change of speed / 100 %",
    formulaSource: "derivation; spread = order × turning frequency × change, in lines of the spectrum, at its top",
  }),
];
