import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const { choice } = derivedIn("environment");

/** What the water of a place does to the sensor. */
export const WATER_DERIVED: readonly DerivedDefinition[] = [
  choice("water_protection", "protection against the water at the place", ["covers", "partly", "lacks"], {
    needs: ["ip_rating", "wetting"],
    formula:
      "second digits of the IP code against those that splashes (4), hoses (5), hot jets (9) and being under water (8) ask for",
    formulaSource: "IEC 60529, from quotations of clause 6; which digit a place asks for is common practice",
  }),
];
