import type { FactDefinition } from "../definition.js";

/** What a bond does. */
export const BONDING_DERIVED: readonly FactDefinition[] = [
  {
    id: "bond_gap_filled",
    name: "greatest gap that the adhesive fills, by its sheet or its kind",
    kind: "quantity",
    source: "derived",
    group: "mounting",
    dimension: "length",
    unit: "mm",
    plausible: { lowest: 0.01, highest: 20 },
    needs: ["adhesive_gap_max", "table.bond_gap_max"],
  },
];
