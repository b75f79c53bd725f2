import type { Interval } from "../base/index.js";
import { boltLoadN } from "./bolt-strength.js";
import { requireNotNegative, requirePositive } from "./require-number.js";
import type { Thread } from "./thread-designation.js";
import { tensileStressAreaMm2 } from "./thread-profile.js";
import {
  externalShearAreaMm2,
  internalShearAreaMm2,
  SHEAR_OVER_TENSILE,
  strippingLoadN,
  strippingSizes,
} from "./thread-stripping.js";

/** What gives way first in a tapped joint: the bolt breaks, or one of the threads strips. */
export type WeakestPart = "bolt" | "hole-thread" | "bolt-thread";

/** Loads at which the parts of a tapped joint give way, N. */
export interface JointStrength {
  readonly boltN: number;
  readonly holeThreadN: number;
  readonly boltThreadN: number;
  readonly weakest: WeakestPart;
}

/**
 * Loads at which bolt, tapped thread and bolt thread give way, with the threads at their worst limits.
 *
 * Source: ISO 898-1 for the bolt, FED-STD-H28/2 for the areas, shear as {@link SHEAR_OVER_TENSILE} of the tensile strength.
 * The bolt is taken at its least strength; a stronger one may strip a thread that holds this one.
 *
 * @param boltTensileMPa - least tensile strength of the bolt, MPa
 * @param tappedTensileMPa - tensile strength of the tapped material, MPa
 * @param engagementMm - length of full thread that bolt and hole share, mm
 * @throws RangeError for a strength that is not above 0, a negative length, or a thread without tolerances
 */
export function jointStrength(
  thread: Thread,
  boltTensileMPa: number,
  tappedTensileMPa: number,
  engagementMm: number,
): JointStrength {
  requirePositive("tappedTensileMPa", tappedTensileMPa);
  requireNotNegative("engagementMm", engagementMm);
  const sizes = strippingSizes(thread, "worst");
  const boltN = boltLoadN(boltTensileMPa, tensileStressAreaMm2(thread));
  const holeThreadN = strippingLoadN(internalShearAreaMm2(sizes, engagementMm), SHEAR_OVER_TENSILE * tappedTensileMPa);
  const boltThreadN = strippingLoadN(externalShearAreaMm2(sizes, engagementMm), SHEAR_OVER_TENSILE * boltTensileMPa);
  const least = Math.min(boltN, holeThreadN, boltThreadN);
  const weakest = least === boltN ? "bolt" : least === holeThreadN ? "hole-thread" : "bolt-thread";
  return { boltN, holeThreadN, boltThreadN, weakest };
}

/**
 * Load that strips a thread tapped into a material, N: lowest for the weakest grade with the threads at their worst
 * limits, highest for the strongest grade with basic sizes.
 *
 * @param tappedTensileMPa - tensile strength of the material, MPa, from its weakest to its strongest grade
 * @throws RangeError as {@link jointStrength}
 */
export function holeStrippingLoadN(thread: Thread, tappedTensileMPa: Interval, engagementMm: number): Interval {
  const areaMm2 = (fit: "worst" | "basic"): number => internalShearAreaMm2(strippingSizes(thread, fit), engagementMm);
  return {
    lowest: strippingLoadN(areaMm2("worst"), SHEAR_OVER_TENSILE * tappedTensileMPa.lowest),
    highest: strippingLoadN(areaMm2("basic"), SHEAR_OVER_TENSILE * tappedTensileMPa.highest),
  };
}
