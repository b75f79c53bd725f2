import type { FactDefinition } from "../definition.js";

/** What the water of a place does to the sensor. */
export const WATER_DERIVED: readonly FactDefinition[] = [
  {
    id: "water_protection",
    name: "protection against the water at the place",
    kind: "choice",
    source: "derived",
    group: "environment",
    choices: ["covers", "partly", "lacks"],
    needs: ["ip_rating", "wetting"],
  },
];
