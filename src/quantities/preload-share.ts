import { boltLoadN } from "./bolt-strength.js";
import { preloadByNutFactorN } from "./bolt-torque.js";
import type { Thread } from "./thread-designation.js";
import { tensileStressAreaMm2 } from "./thread-profile.js";

/**
 * The preload that a torque gives, per cent of the proof load of the bolt: T/(K d) over stress area times proof stress.
 * Highest with the least factor K.
 *
 * Source: T = K d F of the handbooks; proof load as ISO 898-1 has it.
 *
 * @param torqueNm - 0 or above
 * @param proofMPa - stress under proof load of the property class, above 0
 * @param factor - torque factor K, above 0
 * @returns per cent
 * @throws RangeError outside that
 */
export function preloadPct(torqueNm: number, thread: Thread, proofMPa: number, factor: number): number {
  const proofN = boltLoadN(proofMPa, tensileStressAreaMm2(thread));
  return (100 * preloadByNutFactorN(torqueNm, thread.majorMm, factor)) / proofN;
}
