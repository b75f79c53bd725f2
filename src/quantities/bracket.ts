import type { Interval } from "../base/index.js";
import { requireBounded, requireNotNegative, requirePositive } from "./require-number.js";

/**
 * Second moment of area of a round bar or tube about its middle, mm⁴: π (D⁴ - d⁴)/64.
 *
 * Source: handbooks. `innerMm` 0 for a bar.
 *
 * @throws RangeError if the bore is not smaller than the tube
 */
export function roundSecondMomentMm4(outerMm: number, innerMm = 0): number {
  const outer = requirePositive("outerMm", outerMm);
  const inner = requireNotNegative("innerMm", innerMm);
  if (inner >= outer) throw new RangeError(`a bore of ${inner} mm leaves nothing of ${outer} mm`);
  return (Math.PI / 64) * (outer ** 4 - inner ** 4);
}

/**
 * Second moment of area of a rectangular section, mm⁴: b h³/12.
 *
 * Source: handbooks.
 *
 * @param heightMm - size in the direction in which it bends, mm
 * @throws RangeError for a size that is not above 0
 */
export function rectangleSecondMomentMm4(widthMm: number, heightMm: number): number {
  return (requirePositive("widthMm", widthMm) * requirePositive("heightMm", heightMm) ** 3) / 12;
}

/**
 * Bending stiffness of a cantilever at its tip, N/mm: 3 E I/L³.
 *
 * Source: handbooks; slender beam (length at least five times the height), root held rigidly.
 *
 * @throws RangeError for a number that is not above 0
 */
export function cantileverStiffnessNPerMm(youngsModulusMPa: number, secondMomentMm4: number, lengthMm: number): number {
  const rigidity =
    requirePositive("youngsModulusMPa", youngsModulusMPa) * requirePositive("secondMomentMm4", secondMomentMm4);
  return (3 * rigidity) / requirePositive("lengthMm", lengthMm) ** 3;
}

/** Share of a cantilever's own mass that moves as if it sat at the tip. */
const OWN_MASS_SHARE = 33 / 140;

/**
 * First natural frequency of a bracket with a mass at its tip, Hz: √(k/(M + 33/140 m))/(2π).
 *
 * Source: Rayleigh's method with the bent shape under a tip load; at most 1.5 per cent above the exact frequency, without
 * a tip mass, and closer with one. A real root gives way, so a real bracket lies lower.
 *
 * @param bracketMassKg - mass of the bracket's free length; 0 neglects it
 * @throws RangeError for a stiffness that is not above 0, a negative mass or no mass at all
 */
export function bracketFrequencyHz(stiffnessNPerMm: number, tipMassKg: number, bracketMassKg = 0): number {
  const massKg =
    requireNotNegative("tipMassKg", tipMassKg) + OWN_MASS_SHARE * requireNotNegative("bracketMassKg", bracketMassKg);
  const stiffnessNPerM = requirePositive("stiffnessNPerMm", stiffnessNPerMm) * 1000;
  return Math.sqrt(stiffnessNPerM / requirePositive("mass", massKg)) / (2 * Math.PI);
}

/**
 * First natural frequency with stiffness and tip mass known within intervals, Hz; lowest for the softest bracket with the
 * largest mass.
 *
 * @throws RangeError as {@link bracketFrequencyHz}
 */
export function bracketFrequencyRangeHz(stiffnessNPerMm: Interval, tipMassKg: Interval, bracketMassKg = 0): Interval {
  requireBounded("stiffnessNPerMm", stiffnessNPerMm);
  requireBounded("tipMassKg", tipMassKg);
  return {
    lowest: bracketFrequencyHz(stiffnessNPerMm.lowest, tipMassKg.highest, bracketMassKg),
    highest: bracketFrequencyHz(stiffnessNPerMm.highest, tipMassKg.lowest, bracketMassKg),
  };
}
