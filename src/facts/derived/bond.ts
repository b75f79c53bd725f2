import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { quantity } = derivedIn("mounting");

/** What the bond of a pad bears, and how long it needs. */
export const BOND_DERIVED: readonly DerivedDefinition[] = [
  quantity("bond_shear", "shear at the rim of the pad while tightening", "stress", "MPa", {
    needs: ["target_torque", "model.seat_diameter_min"],
    formula: "16 × planned torque / (π × d³) with d the seat diameter of the model",
    formulaSource: "derivation, elastic torsion of a round section; bond without voids, pad not held",
  }),
  quantity("bond_load", "shear while tightening, of the strength of the bond", "ratio", "%", {
    needs: ["bond_shear", "bond_strength"],
    formula: "100 % × shear at the rim of the pad / strength that the bond has reached",
    formulaSource: "derivation",
  }),
  quantity("waiting_time_from", "temperature from which the waiting time of the sheet holds", "temperature", "°C", {
    needs: ["adhesive_set_temperature"],
    formula:
      "temperature of the waiting time as the sheet states it, but 20 °C at least, and 20 °C where it states none",
    formulaSource:
      "common practice: sheets commonly state the time for 20 °C to 25 °C, those of bonds cured in heat for more",
  }),
  quantity("waiting_time", "time that the bond needs at the temperature while fitting", "time", "min", {
    needs: ["adhesive_set_time", "adhesive_set_temperature", "install_temperature"],
    formula: "time of the sheet; on a surface colder than the temperature it is stated for, that time at least",
    formulaSource:
      "derivation; warmer bonds set faster, whatever the law, and how much slower a cold one sets only data tell",
  }),
];
