import type { FactDefinition } from "../definition.js";

/** What the sensor sits on. */
export const SEAT_DERIVED: readonly FactDefinition[] = [
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
