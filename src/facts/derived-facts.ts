import { STAGES } from "../base/index.js";
import type { FactDefinition } from "./definition.js";

/** Facts computed from others; the computation is the function of the same name in `quantities/`. */
export const DERIVED_FACTS: readonly FactDefinition[] = [
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
  {
    id: "seat",
    name: "seat",
    kind: "choice",
    source: "derived",
    group: "surface",
    choices: ["solid", "coated", "not-solid"],
    needs: ["mounted_on", "surface_material", "surface_finish"],
  },
];

/** What the run itself settles. */
export const RUN_FACTS: readonly FactDefinition[] = [
  { id: "stage", name: "stage", kind: "choice", source: "run", group: "run", choices: STAGES },
];
