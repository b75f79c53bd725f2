import { requirePositive } from "./require-number.js";

/** Strengths of a bolt, MPa: least tensile strength, yield point (ReL or Rp0.2), stress under proof load. */
export interface BoltStrength {
  readonly tensileMPa: number;
  readonly yieldMPa: number;
  readonly proofMPa: number;
}

/**
 * Load of a bolt, N, at which its tensile stress reaches a strength: strength times tensile stress area.
 *
 * Source: ISO 898-1. Printed tables take the area to three figures and round the load, so differ by up to 0.5 per cent.
 *
 * @throws RangeError for a strength or an area that is not above 0
 */
export function boltLoadN(strengthMPa: number, stressAreaMm2: number): number {
  return requirePositive("strengthMPa", strengthMPa) * requirePositive("stressAreaMm2", stressAreaMm2);
}
