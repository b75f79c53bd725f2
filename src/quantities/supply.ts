import type { Interval } from "../base/index.js";
import { requireCount, requireNotNegative, requirePositive, requireWithin } from "./require-number.js";

/** Tolerance of a rated direct voltage, per cent. */
export interface SupplyTolerance {
  readonly belowPct: number;
  readonly abovePct: number;
}

/** −15 % and +20 % of the average voltage: IEC 61131-2 as drive and control manuals quote it; the standard was not read. */
export const CONTROL_SUPPLY_TOLERANCE: SupplyTolerance = { belowPct: 15, abovePct: 20 };

/**
 * Between which ends a rated direct voltage may lie.
 *
 * Source: IEC 61131-2 as quoted, see {@link CONTROL_SUPPLY_TOLERANCE}; with ripple, the ends of the band are widened by
 * it: 24 V with 5 % gives 19.2 to 30 V (job practice, as equipment sheets print it).
 *
 * @param ratedV - V, above 0
 * @param tolerance - per cent
 * @param ripplePct - peak ripple in per cent of the rated voltage, 0 to 20, added on both sides
 * @returns V
 */
export function supplyBandV(
  ratedV: number,
  tolerance: SupplyTolerance = CONTROL_SUPPLY_TOLERANCE,
  ripplePct = 0,
): Interval {
  requirePositive("ratedV", ratedV);
  requireWithin("belowPct", tolerance.belowPct, 0, 75);
  requireWithin("abovePct", tolerance.abovePct, 0, 100);
  requireWithin("ripplePct", ripplePct, 0, 20);
  return {
    lowest: ratedV * (1 - (tolerance.belowPct + ripplePct) / 100),
    highest: ratedV * (1 + (tolerance.abovePct + ripplePct) / 100),
  };
}

/** Load of a supply by all the points on it. */
export interface SupplyLoad {
  readonly runningA: number;
  readonly startingA: number;
  /** Running current in per cent of the rating. */
  readonly runningPct: number;
  /** Starting current in per cent of the rating. */
  readonly startingPct: number;
}

/**
 * How far the points on a supply load it, running and while all of them start at once.
 *
 * Source: derivation; the sum of the currents, and the sum times the inrush factor of the points.
 *
 * @param currentsA - current of each point, A
 * @param ratingA - rated current of the supply, A, above 0
 * @param inrushFactor - starting over running current of a point, 1 to 100; 1 where the points start slowly
 */
export function supplyLoad(currentsA: readonly number[], ratingA: number, inrushFactor: number): SupplyLoad {
  for (const currentA of currentsA) requireNotNegative("currentA", currentA);
  requirePositive("ratingA", ratingA);
  requireWithin("inrushFactor", inrushFactor, 1, 100);
  const runningA = currentsA.reduce((sum, currentA) => sum + currentA, 0);
  const startingA = runningA * inrushFactor;
  return { runningA, startingA, runningPct: (100 * runningA) / ratingA, startingPct: (100 * startingA) / ratingA };
}

/**
 * How many equal points a supply carries.
 *
 * Source: derivation.
 *
 * @param currentA - of one point, A, above 0
 * @param ratingA - A, above 0
 * @param usablePct - share of the rating to be used, 1 to 100 %; 80 is common practice
 */
export function mostPointsOnSupply(currentA: number, ratingA: number, usablePct: number): number {
  requirePositive("currentA", currentA);
  requirePositive("ratingA", ratingA);
  requireWithin("usablePct", usablePct, 1, 100);
  // The hair keeps 0.8 A over 0.1 A at eight points.
  const most = Math.floor(((ratingA * usablePct) / 100 / currentA) * (1 + 1e-12));
  requireCount("points on the supply", most, 0);
  return most;
}

/** Upper limits of extra-low voltage, V: direct current free of ripple (10 % r.m.s. at most) and alternating, r.m.s. */
export const EXTRA_LOW_VOLTAGE = {
  /** SELV and PELV as such. International Electrotechnical Vocabulary, entry SELV, after IEC 61558-1; read as quoted. */
  system: { dcV: 120, acV: 50 },
  /** No protection against touch needed when dry (SELV, or earthed PELV). Wiring rules 414.4.5, after IEC 60364-4-41; as quoted. */
  dry: { dcV: 60, acV: 25 },
  /** No protection against touch needed in all other cases. Source as before. */
  elsewhere: { dcV: 30, acV: 12 },
} as const;

/** How far down in extra-low voltage a circuit lies. */
export type ExtraLowVoltage = "touchable-anywhere" | "touchable-when-dry" | "extra-low" | "above";

/**
 * Which limits of extra-low voltage a circuit keeps. Says nothing on how safely it is separated: a circuit of 24 V from an
 * ordinary transformer is neither SELV nor PELV.
 *
 * Source: see {@link EXTRA_LOW_VOLTAGE}.
 *
 * @param highestV - highest nominal voltage, V, above 0; alternating r.m.s.
 */
export function extraLowVoltage(highestV: number, kind: "dc" | "ac"): ExtraLowVoltage {
  requirePositive("highestV", highestV);
  const limitOf = (limits: { readonly dcV: number; readonly acV: number }) => (kind === "dc" ? limits.dcV : limits.acV);
  if (highestV <= limitOf(EXTRA_LOW_VOLTAGE.elsewhere)) return "touchable-anywhere";
  if (highestV <= limitOf(EXTRA_LOW_VOLTAGE.dry)) return "touchable-when-dry";
  return highestV <= limitOf(EXTRA_LOW_VOLTAGE.system) ? "extra-low" : "above";
}
