import { requireNotNegative, requirePositive } from "./require-number.js";

/** A length of trunk, and what is taken off at its far end. */
export interface TrunkSection {
  /** Both conductors of this length, Ω. */
  readonly loopOhm: number;
  /** Taken by the points at the end of this length, A; 0 where nothing is. */
  readonly takenA: number;
}

/**
 * Voltages along a trunk that feeds one point after the other. Each length carries the current of all that follows.
 *
 * Source: Kirchhoff's laws, points drawing steady currents.
 *
 * @param supplyV - V, above 0
 * @param sections - from the supply outwards
 * @returns V at the end of each section; below 0 where the trunk could not carry the currents at all
 */
export function trunkVoltagesV(supplyV: number, sections: readonly TrunkSection[]): readonly number[] {
  requirePositive("supplyV", supplyV);
  for (const { loopOhm, takenA } of sections) {
    requireNotNegative("loopOhm", loopOhm);
    requireNotNegative("takenA", takenA);
  }
  let currentA = sections.reduce((sum, { takenA }) => sum + takenA, 0);
  let voltageV = supplyV;
  return sections.map(({ loopOhm, takenA }) => {
    voltageV -= loopOhm * currentA;
    currentA -= takenA;
    return voltageV;
  });
}

/** A point with an outgoing conductor of its own. */
export interface PointOnCommonReturn {
  /** Outgoing conductor alone, Ω. */
  readonly outgoingOhm: number;
  readonly currentA: number;
}

/**
 * Voltages at points that have an outgoing conductor each and one return conductor for all of them.
 *
 * Source: Kirchhoff's laws; the return carries the sum of the currents, so each point lowers the voltage of all.
 *
 * @param supplyV - V, above 0
 * @param points - at the far end of the return
 * @param returnOhm - return conductor, Ω
 * @returns V at each point; below 0 where the conductors could not carry the currents at all
 */
export function commonReturnVoltagesV(
  supplyV: number,
  points: readonly PointOnCommonReturn[],
  returnOhm: number,
): readonly number[] {
  requirePositive("supplyV", supplyV);
  requireNotNegative("returnOhm", returnOhm);
  for (const { outgoingOhm, currentA } of points) {
    requireNotNegative("outgoingOhm", outgoingOhm);
    requireNotNegative("currentA", currentA);
  }
  const returnDropV = returnOhm * points.reduce((sum, { currentA }) => sum + currentA, 0);
  return points.map(({ outgoingOhm, currentA }) => supplyV - outgoingOhm * currentA - returnDropV);
}
