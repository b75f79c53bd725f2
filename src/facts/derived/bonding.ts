import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

/** What a bond does. */
export const BONDING_DERIVED: readonly DerivedDefinition[] = [
  {
    ...derivedIn("mounting").quantity(
      "bond_gap_filled",
      "greatest gap that the adhesive fills, by its sheet or its kind",
      "length",
      "mm",
      {
        needs: ["adhesive_gap_max", "table.bond_gap_max"],
        formula: "greatest gap of the adhesive's own sheet, else that of its kind",
        formulaSource: "definition; kinds of adhesives from the table of the rulebook",
      },
    ),
    plausible: { lowest: 0.01, highest: 20 },
  },
];
