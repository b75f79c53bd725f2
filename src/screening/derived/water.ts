import type { FactState, Facts } from "../../facts/index.js";
import { readIpCode, type WaterExposure, waterProtection } from "../../quantities/index.js";
import { type Derivation, known, lackingAmong, stateOf, unknownFor } from "./deriving.js";

/** What the water of a place does to the sensor. */
export const WATER_DERIVED: Readonly<Record<string, Derivation>> = { water_protection: deriveWaterProtection };

const PARTS = ["wetting", "ip_rating"] as const;
const EXPOSURES: readonly WaterExposure[] = ["dry", "splash", "jets", "hot-high-pressure", "submerged"];

function deriveWaterProtection(facts: Facts): FactState {
  const [wetting, rating] = PARTS.map((id) => stateOf(facts, id));
  const exposure = wetting?.known ? EXPOSURES.find((one) => one === wetting.value) : undefined;
  // In a dry place any rating does, also one that nobody wrote down.
  if (exposure === "dry") return known("covers", ["wetting"], facts);
  const code = rating?.known && typeof rating.value === "string" ? readIpCode(rating.value) : null;
  const protection = exposure !== undefined && code ? waterProtection(code, exposure) : null;
  if (protection !== null) return known(protection, PARTS, facts);
  const isOfUse = (id: string): boolean => (id === "wetting" ? exposure !== undefined : code !== null);
  return unknownFor(lackingAmong(PARTS, facts, isOfUse) ?? "ip_rating", PARTS, facts);
}
