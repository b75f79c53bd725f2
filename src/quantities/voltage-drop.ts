import { resistanceAtTemperature } from "./conductors.js";
import { requireNotNegative, requirePositive } from "./require-number.js";

/**
 * Resistance of both conductors of a run.
 *
 * Source: derivation; current flows out and back. Contacts are not in it.
 *
 * @param oneWayLengthM - length of the cable, m
 * @param resistanceOhmPerKm - of one conductor, at its temperature, Ω/km, above 0
 * @returns Ω
 */
export function loopResistanceOhm(oneWayLengthM: number, resistanceOhmPerKm: number): number {
  requireNotNegative("oneWayLengthM", oneWayLengthM);
  requirePositive("resistanceOhmPerKm", resistanceOhmPerKm);
  return (2 * oneWayLengthM * resistanceOhmPerKm) / 1000;
}

/**
 * Voltage at a load that draws a steady current.
 *
 * Source: Ohm's law.
 *
 * @param supplyV - V, above 0; the lowest is the worst case
 * @param loopOhm - both conductors, Ω
 * @param currentA - A
 * @returns V; below 0 where the run could not carry the current at all
 */
export function voltageAtLoadV(supplyV: number, loopOhm: number, currentA: number): number {
  requirePositive("supplyV", supplyV);
  requireNotNegative("loopOhm", loopOhm);
  requireNotNegative("currentA", currentA);
  return supplyV - loopOhm * currentA;
}

/**
 * Voltage at a load that draws a steady power, as a switching converter does: the less voltage, the more current.
 *
 * Source: derivation; V = Vs − R P/V solved for the upper, stable root (Vs + √(Vs² − 4 R P))/2.
 *
 * @param supplyV - V, above 0
 * @param loopOhm - Ω
 * @param powerW - W
 * @returns V, or null where the run cannot deliver the power
 */
export function voltageAtSteadyPowerV(supplyV: number, loopOhm: number, powerW: number): number | null {
  requirePositive("supplyV", supplyV);
  requireNotNegative("loopOhm", loopOhm);
  requireNotNegative("powerW", powerW);
  const discriminant = supplyV ** 2 - 4 * loopOhm * powerW;
  return discriminant < 0 ? null : (supplyV + Math.sqrt(discriminant)) / 2;
}

/** One run of cable to a single load. */
export interface CableRun {
  readonly oneWayLengthM: number;
  /** Of one conductor at 20 °C. */
  readonly resistanceAt20OhmPerKm: number;
  /** The hottest the copper gets. */
  readonly hottestCopperC: number;
}

/**
 * The lowest voltage that a load can see: lowest supply, hottest copper, highest current.
 *
 * Source: the functions above.
 *
 * @returns V; below 0 where the run could not carry the current at all
 */
export function lowestVoltageAtLoadV(lowestSupplyV: number, highestCurrentA: number, run: CableRun): number {
  const hot = resistanceAtTemperature(run.resistanceAt20OhmPerKm, run.hottestCopperC);
  return voltageAtLoadV(lowestSupplyV, loopResistanceOhm(run.oneWayLengthM, hot), highestCurrentA);
}

/**
 * The longest cable that leaves a load its voltage.
 *
 * Source: derivation; (Vs − Vmin)/(2 R I).
 *
 * @param lowestSupplyV - V, above 0
 * @param neededV - V, above 0
 * @param highestCurrentA - A, above 0
 * @param resistanceOhmPerKm - of one conductor, hot, Ω/km, above 0
 * @returns one-way length, m; 0 where the supply itself is too low
 */
export function longestCableM(
  lowestSupplyV: number,
  neededV: number,
  highestCurrentA: number,
  resistanceOhmPerKm: number,
): number {
  requirePositive("lowestSupplyV", lowestSupplyV);
  requirePositive("neededV", neededV);
  requirePositive("highestCurrentA", highestCurrentA);
  requirePositive("resistanceOhmPerKm", resistanceOhmPerKm);
  return Math.max(0, (1000 * (lowestSupplyV - neededV)) / (2 * resistanceOhmPerKm * highestCurrentA));
}

/**
 * The least nominal size that leaves a load its voltage, by the greatest resistance that the standard allows.
 *
 * Source: the functions above. The current that the insulation bears is not looked at.
 *
 * @param sizes - nominal sizes in mm², rising, each with its greatest resistance at 20 °C in Ω/km
 * @returns mm², or null where none of the sizes is enough
 */
export function leastCrossSectionMm2(
  lowestSupplyV: number,
  neededV: number,
  highestCurrentA: number,
  run: Omit<CableRun, "resistanceAt20OhmPerKm">,
  sizes: readonly (readonly [crossSectionMm2: number, ohmPerKm: number])[],
): number | null {
  requirePositive("neededV", neededV);
  const enough = sizes.find(
    ([, resistanceAt20OhmPerKm]) =>
      lowestVoltageAtLoadV(lowestSupplyV, highestCurrentA, { ...run, resistanceAt20OhmPerKm }) >= neededV,
  );
  return enough?.[0] ?? null;
}
