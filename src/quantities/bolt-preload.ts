import type { Interval } from "../base/index.js";
import type { BoltStrength } from "./bolt-strength.js";
import { preloadByNutFactorN, preloadForTorqueN, type TorqueGeometry } from "./bolt-torque.js";
import { requireBounded, requireNotNegative, requirePositive, requireWithin } from "./require-number.js";
import type { Thread } from "./thread-designation.js";
import { stressDiameterMm, tensileStressAreaMm2, threadDiameters } from "./thread-profile.js";

/**
 * Where the preload lies, N, when torque and friction are known within intervals: lowest with the least torque and the
 * most friction, highest with the most torque and the least friction.
 *
 * Source: derivation from the exact torque expression, which rises with torque and falls with friction.
 *
 * @throws RangeError for an open interval or a negative end
 */
export function preloadRangeN(
  torqueNm: Interval,
  geometry: TorqueGeometry,
  threadFriction: Interval,
  headFriction: Interval,
): Interval {
  requireBounded("torqueNm", torqueNm);
  requireBounded("threadFriction", threadFriction);
  requireBounded("headFriction", headFriction);
  return {
    lowest: preloadForTorqueN(torqueNm.lowest, geometry, {
      thread: threadFriction.highest,
      head: headFriction.highest,
    }),
    highest: preloadForTorqueN(torqueNm.highest, geometry, {
      thread: threadFriction.lowest,
      head: headFriction.lowest,
    }),
  };
}

/**
 * Where the preload lies, N, by T = K d F with torque and K known within intervals.
 *
 * @throws RangeError for an open interval, a negative torque or a K that is not above 0
 */
export function preloadRangeByNutFactorN(torqueNm: Interval, nominalDiameterMm: number, factor: Interval): Interval {
  requireBounded("torqueNm", torqueNm);
  requireBounded("factor", factor);
  return {
    lowest: preloadByNutFactorN(torqueNm.lowest, nominalDiameterMm, factor.highest),
    highest: preloadByNutFactorN(torqueNm.highest, nominalDiameterMm, factor.lowest),
  };
}

/**
 * How the torsion in the thread is taken: fully plastic over the section, or elastic, which counts it a third higher.
 * The tables of VDI 2230 rest on plastic torsion since 2001, on elastic torsion before, with preloads about 8 per cent
 * lower.
 */
export type TorsionModel = "plastic" | "elastic";

/** Diameter times area over torsion modulus, a quarter of it: π/12 d³ plastic, π/16 d³ elastic. */
const TORSION_FACTOR: Readonly<Record<TorsionModel, number>> = { plastic: 1.5, elastic: 2 };

/**
 * Ratio of equivalent stress to tensile stress of a bolt under tension and the torsion that thread friction leaves in
 * it: √(1 + 3 (c d2/d0 (P/(π d2) + 1.155 µ))²), c being 3/2 for plastic and 2 for elastic torsion.
 *
 * Source: VDI 2230 part 1, as quoted. d0 is the diameter of the stress area (bolts without a thinner shank).
 */
function torsionRatio(thread: Thread, threadFriction: number, torsion: TorsionModel): number {
  requireWithin("threadFriction", threadFriction, 0, 1);
  const { pitchDiameterMm } = threadDiameters(thread);
  const arm = TORSION_FACTOR[torsion] * (pitchDiameterMm / stressDiameterMm(thread));
  const shear = arm * (thread.pitchMm / (Math.PI * pitchDiameterMm) + 1.155 * threadFriction);
  return Math.sqrt(1 + 3 * shear * shear);
}

/**
 * Equivalent stress in a bolt while it is tightened, MPa (tension and torsion by the shape change hypothesis).
 *
 * Source: VDI 2230 part 1, as quoted. Bending is left out.
 *
 * @param threadFriction - coefficient of friction in the thread, 0 to 1
 * @throws RangeError for a negative preload or a friction outside 0 to 1
 */
export function equivalentStressMPa(
  thread: Thread,
  preloadN: number,
  threadFriction: number,
  torsion: TorsionModel = "plastic",
): number {
  const tensionMPa = requireNotNegative("preloadN", preloadN) / tensileStressAreaMm2(thread);
  return tensionMPa * torsionRatio(thread, threadFriction, torsion);
}

/**
 * Assembly preload, N, at which the equivalent stress uses a fraction of the yield point.
 *
 * Source: VDI 2230 part 1, as quoted (its tables use 0.9).
 *
 * @param utilisation - fraction of the yield point, above 0 and at most 1
 * @throws RangeError outside the limits named
 */
export function assemblyPreloadN(
  thread: Thread,
  yieldMPa: number,
  threadFriction: number,
  utilisation = 0.9,
  torsion: TorsionModel = "plastic",
): number {
  requirePositive("utilisation", utilisation);
  requireWithin("utilisation", utilisation, 0, 1);
  const allowedMPa = utilisation * requirePositive("yieldMPa", yieldMPa);
  return (allowedMPa * tensileStressAreaMm2(thread)) / torsionRatio(thread, threadFriction, torsion);
}

/** How far a preload uses a bolt up, as fractions. */
export interface BoltUtilisation {
  /** Equivalent stress, with torsion, over the yield point. */
  readonly ofYield: number;
  /** Preload over proof load. */
  readonly ofProof: number;
  /** Preload over the load at which the bolt breaks. */
  readonly ofTensile: number;
}

/**
 * How far a preload uses a bolt up.
 *
 * @param strength - of the property class of the bolt at its diameter
 * @throws RangeError as {@link equivalentStressMPa}
 */
export function boltUtilisation(
  thread: Thread,
  { tensileMPa, yieldMPa, proofMPa }: BoltStrength,
  preloadN: number,
  threadFriction: number,
): BoltUtilisation {
  const tensionMPa = requireNotNegative("preloadN", preloadN) / tensileStressAreaMm2(thread);
  return {
    ofYield: equivalentStressMPa(thread, preloadN, threadFriction) / yieldMPa,
    ofProof: tensionMPa / proofMPa,
    ofTensile: tensionMPa / tensileMPa,
  };
}
