import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { quantity, yesNo } = derivedIn("operation");

/** How the machine runs. */
export const OPERATION_DERIVED: readonly DerivedDefinition[] = [
  yesNo("speed_varies", "whether the speed varies", {
    needs: ["lowest_speed", "highest_speed", "variable_speed"],
    formula: "yes where lowest speed and highest speed differ, else the word of the drive",
    formulaSource: "common practice",
  }),
  quantity("lowest_running_speed", "lowest running speed", "rotational-speed", "r/min", {
    needs: ["lowest_speed", "nominal_speed", "variable_speed"],
    formula: "lowest speed, else nominal speed; under a variable drive the nominal speed at most",
    formulaSource: "common practice",
  }),
];
