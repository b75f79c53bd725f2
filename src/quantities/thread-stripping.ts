import { requireNotNegative, requirePositive, requireWithin } from "./require-number.js";
import type { Thread } from "./thread-designation.js";
import { threadLimits } from "./thread-limits.js";
import { threadDiameters } from "./thread-profile.js";

/** Tangent of the half angle of a 60 degree thread. */
const HALF_ANGLE = 1 / Math.sqrt(3);

/** Sizes between which a thread shears, mm. */
export interface StrippingSizes {
  readonly pitchMm: number;
  /** Major diameter of the bolt at its smallest: where the thread of the hole shears. */
  readonly externalMajorMm: number;
  /** Pitch diameter of the bolt at its smallest. */
  readonly externalPitchMm: number;
  /** Pitch diameter of the hole at its largest. */
  readonly internalPitchMm: number;
  /** Minor diameter of the hole at its largest: where the thread of the bolt shears. */
  readonly internalMinorMm: number;
}

/** "worst" takes the limits of size that meet least; "basic" the sizes without tolerance, about a quarter stronger. */
export type StrippingFit = "worst" | "basic";

/**
 * The sizes between which a thread shears, at the limits of the usual fit (6g in 6H, 2A in 2B) or basic.
 *
 * @throws RangeError as {@link threadLimits}
 */
export function strippingSizes(thread: Thread, fit: StrippingFit): StrippingSizes {
  const basic = threadDiameters(thread);
  if (fit === "basic") {
    return {
      pitchMm: thread.pitchMm,
      externalMajorMm: basic.majorMm,
      externalPitchMm: basic.pitchDiameterMm,
      internalPitchMm: basic.pitchDiameterMm,
      internalMinorMm: basic.internalMinorMm,
    };
  }
  const limits = threadLimits(thread);
  return {
    pitchMm: thread.pitchMm,
    externalMajorMm: limits.externalMajorMm.lowest,
    externalPitchMm: limits.externalPitchMm.lowest,
    internalPitchMm: limits.internalPitchMm.highest,
    internalMinorMm: limits.internalMinorMm.highest,
  };
}

/**
 * Area over which the thread of the hole shears, mm²: π (L/P) d [P/2 + (d - D2)/√3] with d the major diameter of the bolt
 * and D2 the pitch diameter of the hole.
 *
 * Source: FED-STD-H28/2 and ASME B1.1, as quoted. Takes full engagement, no widening of the hole; incomplete threads
 * do not count into the length.
 *
 * @param engagementMm - length of full engagement, mm
 * @throws RangeError for a negative length, sizes that are not above 0 or do not meet
 */
export function internalShearAreaMm2(
  sizes: Pick<StrippingSizes, "pitchMm" | "externalMajorMm" | "internalPitchMm">,
  engagementMm: number,
): number {
  return shearAreaMm2(
    sizes.pitchMm,
    engagementMm,
    sizes.externalMajorMm,
    sizes.externalMajorMm - sizes.internalPitchMm,
  );
}

/**
 * Area over which the thread of the bolt shears, mm²: π (L/P) D1 [P/2 + (d2 - D1)/√3] with D1 the minor diameter of the hole
 * and d2 the pitch diameter of the bolt.
 *
 * Source and limits as {@link internalShearAreaMm2}.
 */
export function externalShearAreaMm2(
  sizes: Pick<StrippingSizes, "pitchMm" | "externalPitchMm" | "internalMinorMm">,
  engagementMm: number,
): number {
  return shearAreaMm2(
    sizes.pitchMm,
    engagementMm,
    sizes.internalMinorMm,
    sizes.externalPitchMm - sizes.internalMinorMm,
  );
}

function shearAreaMm2(pitchMm: number, engagementMm: number, diameterMm: number, overlapMm: number): number {
  requirePositive("pitchMm", pitchMm);
  requirePositive("diameter", diameterMm);
  const height = pitchMm / 2 + HALF_ANGLE * overlapMm;
  if (!(height > 0 && height < 2 * pitchMm)) throw new RangeError("the diameters given do not meet in one thread");
  return ((Math.PI * requireNotNegative("engagementMm", engagementMm)) / pitchMm) * diameterMm * height;
}

/**
 * Shear strength over tensile strength, where no measured shear strength is at hand: 0.6.
 *
 * Source: handbooks, for steel and aluminium. Cast iron is given higher, so this is on the safe side for it.
 */
export const SHEAR_OVER_TENSILE = 0.6;

/**
 * Load that strips a thread, N: area times shear strength.
 *
 * @throws RangeError for a negative area or a strength that is not above 0
 */
export function strippingLoadN(shearAreaMm2: number, shearStrengthMPa: number): number {
  return requireNotNegative("shearAreaMm2", shearAreaMm2) * requirePositive("shearStrengthMPa", shearStrengthMPa);
}

/**
 * Least full engagement, mm, at which a thread carries a load: the load over its shear strength and its area per length.
 * With the load that breaks the bolt, the bolt breaks before the thread strips.
 *
 * @param shearAreaPerMm - shear area for 1 mm of engagement, mm²/mm
 * @throws RangeError for a negative load or another number that is not above 0
 */
export function leastEngagementMm(loadN: number, shearStrengthMPa: number, shearAreaPerMm: number): number {
  const perMm =
    requirePositive("shearStrengthMPa", shearStrengthMPa) * requirePositive("shearAreaPerMm", shearAreaPerMm);
  return requireNotNegative("loadN", loadN) / perMm;
}

/**
 * Least full engagement, mm, at which a bolt breaks before either thread strips, both threads at the worst limits.
 *
 * Source: derivation from the shear areas of FED-STD-H28/2; the shear ratio is {@link SHEAR_OVER_TENSILE}.
 *
 * @param boltTensileMPa - tensile strength of the bolt, at its highest if it is to break for certain
 * @param tappedTensileMPa - least tensile strength of the tapped material
 * @throws RangeError for a strength that is not above 0, or as {@link threadLimits}
 */
export function engagementToBreakBoltMm(
  thread: Thread,
  stressAreaMm2: number,
  boltTensileMPa: number,
  tappedTensileMPa: number,
  shearRatio = SHEAR_OVER_TENSILE,
): { readonly forHoleMm: number; readonly forBoltMm: number } {
  requireWithin("shearRatio", shearRatio, 0.3, 1.5);
  const breakingN = requirePositive("stressAreaMm2", stressAreaMm2) * requirePositive("boltTensileMPa", boltTensileMPa);
  const sizes = strippingSizes(thread, "worst");
  return {
    forHoleMm: leastEngagementMm(breakingN, shearRatio * tappedTensileMPa, internalShearAreaMm2(sizes, 1)),
    forBoltMm: leastEngagementMm(breakingN, shearRatio * boltTensileMPa, externalShearAreaMm2(sizes, 1)),
  };
}
