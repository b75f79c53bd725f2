import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { quantity, count } = derivedIn("electrical");

const CABLE = [
  "cable_length",
  "conductor_size",
  "conductor_class",
  "conductor_temperature",
  "ambient_max",
  "table.resistance_plain_max",
  "table.resistance_coated_max",
  "table.over_copper_max",
];
const LOAD = ["sensors_on_supply", "supply_rating"];
const OHM = "Ohm's law; resistance of the conductors from the tables of the rulebook";

/** Cable and supply. */
export const WIRING_DERIVED: readonly DerivedDefinition[] = [
  {
    ...quantity("current_drawn", "current that the sensor draws", "current", "mA", {
      needs: ["sensor_current", "model.running_current"],
      formula: "sensor current as stated, else the running current of the model",
      formulaSource: "definition",
    }),
    // As of a current that is stated: the sum of those that are known is the least that a supply carries.
    plausible: { lowest: 0.5, highest: 2000 },
  },
  {
    ...quantity("current_at_start", "current that the sensor draws at the start", "current", "mA", {
      needs: ["starting_current", "model.starting_current"],
      formula: "starting current as stated, else that of the model",
      formulaSource: "definition",
    }),
    plausible: { lowest: 0.5, highest: 20000 },
  },
  quantity("loop_resistance", "resistance of both conductors of the cable", "resistance", "Ω", {
    needs: CABLE,
    formula: "2 × cable length × resistance per metre × (1 + 0.00393 × (temperature of the copper − 20 °C))",
    formulaSource:
      "derivation; greatest resistance from the tables of the rulebook, bare copper as the least, linear law of handbooks",
  }),
  count("wire_gauge", "wire gauge of the conductors", "AWG", {
    needs: ["conductor_size"],
    formula: "36 − 39 × ln(d / 0.127 mm) / ln 92 with d = √(4 × conductor size / π)",
    formulaSource: "ASTM B258, definition of the gauge",
  }),
  quantity("voltage_at_point", "lowest voltage at the point", "dc-voltage", "V", {
    needs: ["supply_voltage_min", ...CABLE, "current_drawn"],
    formula: "lowest supply voltage − loop resistance at the hottest copper × current drawn",
    formulaSource: OHM,
  }),
  quantity("expected_voltage", "voltage to be expected at the point", "dc-voltage", "V", {
    needs: ["supply_voltage", ...CABLE, "current_drawn"],
    formula: "supply voltage − loop resistance × current drawn",
    formulaSource: OHM,
  }),
  quantity("supply_load", "load of the supply", "ratio", "%", {
    needs: [...LOAD, "current_drawn"],
    formula: "100 % × sensors on the supply × current drawn / rated current of the supply",
    formulaSource: "derivation",
  }),
  quantity("supply_starting_load", "load of the supply at the start", "ratio", "%", {
    needs: [...LOAD, "current_at_start"],
    formula: "100 % × sensors on the supply × current at the start / rated current of the supply",
    formulaSource: "derivation",
  }),
];
