import type { Dimension } from "../base/index.js";
import type { FactDefinition } from "./definition.js";

/** Facts of a sensor model, as a model file states them (there without the prefix `model.`). */
export const MODEL_FACTS: readonly FactDefinition[] = [
  ofModel("speed_min", "lowest speed the model is meant for", "rotational-speed", "r/min", 0.1, 60000),
  ofModel("seat_diameter_min", "seat diameter the model needs", "length", "mm", 2, 300),
  ofModel("hole_depth_min", "hole depth the bolt of the model needs", "length", "mm", 1, 150),
  ofModel("thread_depth_min", "full thread the bolt of the model needs", "length", "mm", 1, 100),
  ofModel("torque_max", "highest torque of the model", "torque", "N·m", 0.1, 200),
  ofModel("supply_voltage_min", "lowest supply voltage of the model", "dc-voltage", "V", 1, 300),
  ofModel("supply_voltage_max", "highest supply voltage of the model", "dc-voltage", "V", 1, 300),
  ofModel("running_current", "running current of the model", "current", "mA", 0.5, 2000),
  ofModel("starting_current", "starting current of the model", "current", "mA", 0.5, 20000),
  ofModel("temperature_max", "highest temperature that the model bears", "temperature", "°C", 0, 600),
  ofModel("mass", "mass of the model", "mass", "g", 0.1, 10000),
  ofModel("base_diameter", "base diameter of the model", "length", "mm", 2, 300),
  ofModel("lower_corner", "lower corner frequency of the model", "frequency", "Hz", 0.01, 1000),
  ofModel("mounted_resonance", "resonance of the model on a bolt", "frequency", "Hz", 100, 200000),
  ofModel("noise_density", "noise of the model", "acceleration-noise-density", "µg/√Hz", 0.001, 100000),
  ofModel("full_scale", "full scale of the model", "vibration-acceleration", "m/s²", 0.1, 100000),
];

/** `lowest` and `highest` are the plausible range in `unit`. */
function ofModel(
  id: string,
  name: string,
  dimension: Dimension,
  unit: string,
  lowest: number,
  highest: number,
): FactDefinition {
  const plausible = { lowest, highest };
  return { id: `model.${id}`, name, kind: "quantity", source: "model", group: "model", dimension, unit, plausible };
}
