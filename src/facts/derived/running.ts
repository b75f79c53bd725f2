import type { FactDefinition } from "../definition.js";

/** Frequencies of the shaft and what a record of the signal shows of it. */
export const RUNNING_DERIVED: readonly FactDefinition[] = [
  {
    id: "highest_running_speed",
    name: "highest running speed",
    kind: "quantity",
    source: "derived",
    group: "operation",
    dimension: "rotational-speed",
    unit: "r/min",
    needs: ["highest_speed", "nominal_speed", "variable_speed"],
  },
  frequency("highest_turning_frequency", "highest turning frequency", ["highest_running_speed"]),
  frequency("tooth_mesh_frequency", "highest tooth-mesh frequency", ["gear_teeth", "highest_running_speed"]),
  frequency("blade_pass_frequency", "highest blade-pass frequency", ["blade_count", "highest_running_speed"]),
  {
    id: "turns_in_record",
    name: "turns of the shaft in one record",
    kind: "count",
    source: "derived",
    group: "operation",
    unit: "turns",
    needs: ["lowest_running_speed", "spectrum_lines", "highest_frequency"],
  },
  {
    id: "measuring_time",
    name: "time that a measurement takes",
    kind: "quantity",
    source: "derived",
    group: "operation",
    dimension: "time",
    unit: "s",
    needs: ["settling_time", "spectrum_lines", "highest_frequency", "averages"],
  },
  {
    id: "lines_smeared",
    name: "lines over which the highest component spreads",
    kind: "count",
    source: "derived",
    group: "operation",
    unit: "lines",
    needs: ["speed_change", "spectrum_lines"],
  },
];

function frequency(id: string, name: string, needs: readonly string[]): FactDefinition {
  return {
    id,
    name,
    kind: "quantity",
    source: "derived",
    group: "operation",
    dimension: "frequency",
    unit: "Hz",
    needs,
  };
}
