import type { FactState, Facts } from "../../facts/index.js";
import { readIpCode, type WaterExposure, waterProtection } from "../../quantities/index.js";
import { type Derivation, known, stateOf, unknownFor } from "./deriving.js";

/** What the water of a place does to the sensor. */
export const WATER_DERIVED: Readonly<Record<string, Derivation>> = { water_protection: deriveWaterProtection };

const PARTS = ["wetting", "ip_rating"] as const;
const EXPOSURES: readonly WaterExposure[] = ["dry", "splash", "jets", "hot-high-pressure", "submerged"];

function deriveWaterProtection(facts: Facts): FactState {
  const [wetting, rating] = PARTS.map((id) => stateOf(facts, id));
  const exposure = wetting?.known ? EXPOSURES.find((one) => one === wetting.value) : undefined;
  if (exposure === undefined) return unknownFor("wetting", PARTS, facts);
  // In a dry place any rating does, also one that nobody wrote down.
  if (exposure === "dry") return known("covers", ["wetting"], facts);
  const code = rating?.known && typeof rating.value === "string" ? readIpCode(rating.value) : null;
  const protection = code && waterProtection(code, exposure);
  return protection === null ? unknownFor("ip_rating", PARTS, facts) : known(protection, PARTS, facts);
}
