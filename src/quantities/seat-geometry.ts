import type { Interval } from "../base/index.js";
import { requireBounded, requireNotNegative, requirePositive, requireWithin } from "./require-number.js";

/**
 * Gap under the rim of a flat base on a cylinder, mm: R - √(R² - (w/2)²), the height of the arc over the chord w. It is
 * also the least depth of a spot-face of diameter w that gives a full flat.
 *
 * Source: derivation, circle.
 *
 * @param surfaceRadiusMm - radius of the surface, mm
 * @param baseMm - diameter of a round base, or width across the curvature, mm
 * @throws RangeError for a size that is not above 0, or a base wider than the cylinder
 */
export function rimGapMm(surfaceRadiusMm: number, baseMm: number): number {
  const radius = requirePositive("surfaceRadiusMm", surfaceRadiusMm);
  const half = requirePositive("baseMm", baseMm) / 2;
  if (half > radius) throw new RangeError(`a base of ${baseMm} mm is wider than a cylinder of radius ${radius} mm`);
  // The form without a difference of near numbers, exact for large radii too.
  return (half * half) / (radius + Math.sqrt((radius - half) * (radius + half)));
}

/**
 * Gap under the rim when the radius of the surface is known within an interval, mm; highest on the smallest radius.
 *
 * @throws RangeError as {@link rimGapMm}
 */
export function rimGapRangeMm(surfaceRadiusMm: Interval, baseMm: number): Interval {
  requireBounded("surfaceRadiusMm", surfaceRadiusMm);
  return {
    lowest: rimGapMm(surfaceRadiusMm.highest, baseMm),
    highest: rimGapMm(surfaceRadiusMm.lowest, baseMm),
  };
}

/**
 * Width of the flat, mm, that a cut of this depth leaves on a cylinder; the inverse of {@link rimGapMm}.
 *
 * Source: derivation, chord 2 √(s (2R - s)).
 *
 * @param depthMm - depth of the cut at the crown, mm, at most the radius
 * @throws RangeError outside that
 */
export function flatWidthMm(surfaceRadiusMm: number, depthMm: number): number {
  const radius = requirePositive("surfaceRadiusMm", surfaceRadiusMm);
  const depth = requireWithin("depthMm", depthMm, 0, radius);
  return 2 * Math.sqrt(depth * (2 * radius - depth));
}

/**
 * Smallest diameter of a cylinder, mm, on which the gap under a flat base is no more than this: ((w/2)² + s²)/s.
 *
 * Source: derivation, circle.
 *
 * @param gapMm - gap allowed at the rim, mm, at most half the base
 * @throws RangeError outside that
 */
export function smallestCylinderMm(baseMm: number, gapMm: number): number {
  const half = requirePositive("baseMm", baseMm) / 2;
  const gap = requireWithin("gapMm", requirePositive("gapMm", gapMm), 0, half);
  return (half * half + gap * gap) / gap;
}

/**
 * Flat diameter that a base needs, mm: the base times a factor, and room for the seat to lie off the hole.
 *
 * Source: common practice (1.1 times the base).
 *
 * @param offsetMm - how far the hole may lie off the middle of the flat, mm
 * @throws RangeError for a base that is not above 0, a factor below 1 or an offset below 0
 */
export function flatNeededMm(baseMm: number, factor = 1.1, offsetMm = 0): number {
  requireWithin("factor", factor, 1, 3);
  return requirePositive("baseMm", baseMm) * factor + 2 * requireNotNegative("offsetMm", offsetMm);
}

/**
 * Gap at the far rim, mm, of a base that stands on its other rim: diameter times sine of the angle between hole and seat.
 *
 * Source: derivation. Tightening closes it by bending bolt and base.
 *
 * @param tiltDeg - angle by which the hole is off square, degrees, below 90
 * @throws RangeError outside that
 */
export function tiltGapMm(baseMm: number, tiltDeg: number): number {
  return requirePositive("baseMm", baseMm) * Math.sin((requireWithin("tiltDeg", tiltDeg, 0, 89.9) * Math.PI) / 180);
}

/**
 * Bearing area of a round base with a hole, mm²: π/4 (D² - d²).
 *
 * @throws RangeError if the hole is not smaller than the base
 */
export function bearingAreaMm2(baseMm: number, holeMm: number): number {
  const base = requirePositive("baseMm", baseMm);
  const hole = requireNotNegative("holeMm", holeMm);
  if (hole >= base) throw new RangeError(`a hole of ${hole} mm leaves no area of a base of ${base} mm`);
  return (Math.PI / 4) * (base - hole) * (base + hole);
}

/**
 * Mean pressure under a base or head, MPa.
 *
 * Source: derivation. Where seat and base do not lie flat the pressure at the contact is far higher.
 *
 * @throws RangeError for a negative preload or an area that is not above 0
 */
export function bearingPressureMPa(preloadN: number, areaMm2: number): number {
  return requireNotNegative("preloadN", preloadN) / requirePositive("areaMm2", areaMm2);
}
