import type { FactDefinition } from "../definition.js";

/** How the machine runs. */
export const OPERATION_DERIVED: readonly FactDefinition[] = [
  {
    id: "speed_varies",
    name: "whether the speed varies",
    kind: "yes-no",
    source: "derived",
    group: "operation",
    needs: ["lowest_speed", "highest_speed", "variable_speed"],
  },
  {
    id: "lowest_running_speed",
    name: "lowest running speed",
    kind: "quantity",
    source: "derived",
    group: "operation",
    dimension: "rotational-speed",
    unit: "r/min",
    needs: ["lowest_speed", "nominal_speed", "variable_speed"],
  },
];
