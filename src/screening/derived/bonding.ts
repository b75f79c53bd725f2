import type { FactState, Facts } from "../../facts/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";

/** What a bond does. */
export const BONDING_DERIVED: Readonly<Record<string, Derivation>> = { bond_gap_filled: deriveGapFilled };

/** The figure of the adhesive's own sheet comes first; only where nobody wrote one does that of its kind count. */
function deriveGapFilled(facts: Facts): FactState {
  const sheet = stateOf(facts, "adhesive_gap_max");
  const ofSheet = intervalOf(sheet);
  if (ofSheet) return known(rounded(ofSheet), ["adhesive_gap_max"], facts);
  const ofKind = intervalOf(stateOf(facts, "table.bond_gap_max"));
  if (!sheet.known && sheet.reason === "missing" && ofKind) {
    return known(ofKind, ["table.bond_gap_max"], facts);
  }
  return unknownFor("adhesive_gap_max", ["table.bond_gap_max"], facts);
}
