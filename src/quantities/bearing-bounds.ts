import type { Interval } from "../base/index.js";
import { type BearingOrderBounds, FITTING_SLACK } from "./bearing-frequencies.js";
import { requireBounded, requirePositive, requireWithin } from "./require-number.js";

/** What may be known of the geometry of a rolling bearing: each within an interval, or not at all. */
export interface BearingGeometryBounds {
  /** Rolling elements of one row; the widest that is possible where the number is not known. */
  readonly elements: Interval;
  /** Diameter of the elements over the pitch diameter; null where it is not known. */
  readonly diameterRatio: Interval | null;
  /** Degrees, from 0 to 90; null where it is not known. */
  readonly contactAngleDeg: Interval | null;
}

const ANY_ANGLE: Interval = { lowest: 0, highest: 90 };

/**
 * Certain bounds of the orders of a rolling bearing, however little of its geometry is known; turning inner ring.
 *
 * Source: kinematics of pure rolling as in `bearingOrders`. With k = (d/D) cos α the cage turns at (1 − k)/2, n (1 − k)/2 and
 * n (1 + k)/2 elements pass the races, and a fault on an element strikes (1 − k²) D/d times. Elements fit on their circle
 * only if d/D ≤ sin(π/n), with a per cent for rounded diameters, so that each order rises or falls with each part all the way.
 *
 * @returns the bounds, or null where elements of these sizes fit on no such circle
 */
export function bearingOrdersWithin(geometry: BearingGeometryBounds): BearingOrderBounds | null {
  const { diameterRatio, contactAngleDeg } = geometry;
  const counted = geometry.elements;
  requireBounded("elements", counted);
  requireWithin("elements", counted.lowest, 3, counted.highest);
  requirePositive("elements", counted.highest);
  const angle = contactAngleDeg ?? ANY_ANGLE;
  requireBounded("contactAngleDeg", angle);
  requireWithin("contactAngleDeg", angle.lowest, 0, 90);
  requireWithin("contactAngleDeg", angle.highest, 0, 90);
  if (diameterRatio) {
    requireBounded("diameterRatio", diameterRatio);
    requirePositive("diameterRatio", diameterRatio.highest);
  }
  const least = diameterRatio ? requirePositive("diameterRatio", diameterRatio.lowest) : 0;
  const most = diameterRatio?.highest ?? Number.POSITIVE_INFINITY;
  const fitting = (count: number): number => FITTING_SLACK * Math.sin(Math.PI / count);
  if (least > fitting(counted.lowest)) return null;
  // No more of them are there than fit, however few of them were counted.
  const fit = least > 0 ? Math.floor(Math.PI / Math.asin(Math.min(1, least / FITTING_SLACK)) + 1e-9) : counted.highest;
  const elements: Interval = {
    lowest: counted.lowest,
    highest: Math.min(counted.highest, Math.max(counted.lowest, fit)),
  };
  const cosine = { lowest: cosineOf(angle.highest), highest: cosineOf(angle.lowest) };
  const widest = (count: number): number => Math.min(most, fitting(count));
  const few = widest(elements.lowest);
  const k = { lowest: least * cosine.lowest, highest: few * cosine.highest };
  const ofMany = widest(elements.highest) * cosine.highest;
  const fault = (ratio: number, cos: number): number => 1 / ratio - ratio * cos * cos;
  const spin: Interval = {
    lowest: fault(few, cosine.highest) / 2,
    highest: least > 0 ? fault(least, cosine.lowest) / 2 : Number.POSITIVE_INFINITY,
  };
  return {
    cage: { lowest: (1 - k.highest) / 2, highest: (1 - k.lowest) / 2 },
    outerRace: { lowest: (elements.lowest * (1 - k.highest)) / 2, highest: (elements.highest * (1 - k.lowest)) / 2 },
    innerRace: { lowest: (elements.lowest * (1 + k.lowest)) / 2, highest: (elements.highest * (1 + ofMany)) / 2 },
    elementSpin: spin,
    elementFault: { lowest: 2 * spin.lowest, highest: 2 * spin.highest },
  };
}

/** Exactly 0 at 90 degrees, where the cosine of a double is a hair above. */
function cosineOf(degrees: number): number {
  return degrees === 90 ? 0 : Math.cos((degrees * Math.PI) / 180);
}
