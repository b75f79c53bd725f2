import { boltLoadsN, hasStrength, type PropertyClass } from "./bolt-strength.js";
import { frictionOf, nutFactor, nutFactorOf, preloadByNutFactorN, type ThreadState } from "./bolt-torque.js";
import type { Thread } from "./thread-designation.js";
import { tensileStressAreaMm2, threadDiameters } from "./thread-profile.js";

/** Mean friction diameter under the smallest usual head, in nominal diameters: a face of 1.5 d round a hole of 1.1 d. */
const SMALLEST_HEAD = 1.3;

/**
 * The least nut factor K that is to be expected of a bolt, the one that gives the highest preload.
 *
 * Source: carbon steel, the factors of {@link nutFactorOf}; austenitic steel, the least friction of {@link frictionOf}
 * under the smallest usual head. Where that table has nothing (adhesive still wet on austenitic steel), the factor of
 * carbon steel stands in, which is lower.
 */
function leastNutFactor(thread: Thread, propertyClass: PropertyClass, state: ThreadState): number {
  const friction = propertyClass.startsWith("A") ? frictionOf("austenitic-stainless", state) : null;
  if (!friction) return nutFactorOf(state).lowest;
  const geometry = {
    pitchMm: thread.pitchMm,
    pitchDiameterMm: threadDiameters(thread).pitchDiameterMm,
    headFrictionDiameterMm: SMALLEST_HEAD * thread.majorMm,
  };
  return nutFactor(thread.majorMm, geometry, { thread: friction.lowest, head: friction.lowest });
}

/**
 * The highest preload to be expected of a torque, per cent of the proof load of the bolt: T/(K d) at the least K.
 *
 * Source: T = K d F of the handbooks; ISO 898-1 and ISO 3506-1 for the proof load, see `boltStrength`.
 *
 * @param torqueNm - 0 or above
 * @returns per cent, or null where the class has no such diameter
 * @throws RangeError for a negative torque
 */
export function highestPreloadPct(
  torqueNm: number,
  thread: Thread,
  propertyClass: PropertyClass,
  state: ThreadState,
): number | null {
  if (!hasStrength(propertyClass, thread.majorMm)) return null;
  const { proofN } = boltLoadsN(propertyClass, thread.majorMm, tensileStressAreaMm2(thread));
  return (100 * preloadByNutFactorN(torqueNm, thread.majorMm, leastNutFactor(thread, propertyClass, state))) / proofN;
}
