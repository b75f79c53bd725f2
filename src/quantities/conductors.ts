import type { Interval } from "../base/index.js";
import { requireBounded, requirePositive, requireWithin } from "./require-number.js";

/** Change of copper's resistance per kelvin from 20 °C, the physical value (IACS; handbooks). */
export const COPPER_COEFFICIENT_PER_K = 0.00393;

/** The rounded value from which the correction table of IEC 60228 is made, as cable makers reprint it. */
export const CABLE_TABLE_COEFFICIENT_PER_K = 0.004;

/** Resistivity of annealed copper at 20 °C, Ω·mm²/km: 0.15328 Ω·g/m² over 8.89 g/cm³ (IACS, quoted after NBS Handbook 100). */
export const COPPER_RESISTIVITY_OHM_MM2_PER_KM = 17.241;

/** Temperatures between which the linear law is good to about a per cent, °C; no copper of a sensor cable is outside. */
export const COPPER_TEMPERATURES_C = { lowest: -50, highest: 200 } as const;

/**
 * Resistance of a copper conductor of exactly this area, without stranding or tolerance.
 *
 * Source: derivation; resistivity over area. Real conductors lie above it by 2 to 15 %: lay of the strands, sizes
 * rounded up. For sizes missing in the table, and as the lower bound of a nominal size made to its full area.
 *
 * @param areaMm2 - mm², above 0
 * @returns Ω/km at 20 °C
 */
export function copperResistanceOhmPerKm(areaMm2: number): number {
  requirePositive("areaMm2", areaMm2);
  return COPPER_RESISTIVITY_OHM_MM2_PER_KM / areaMm2;
}

/**
 * What a resistance at 20 °C becomes at another temperature of the copper.
 *
 * Source: linear law, R = R20 (1 + α (t − 20)); handbooks.
 *
 * @param resistanceAt20 - Ω or Ω/km, above 0
 * @param copperTemperatureC - °C, −50 to 200; the hottest is the worst case
 * @param coefficientPerK - {@link COPPER_COEFFICIENT_PER_K}, or the table's {@link CABLE_TABLE_COEFFICIENT_PER_K}
 * @returns in the unit given
 */
export function resistanceAtTemperature(
  resistanceAt20: number,
  copperTemperatureC: number,
  coefficientPerK: number = COPPER_COEFFICIENT_PER_K,
): number {
  requirePositive("resistanceAt20", resistanceAt20);
  requireWithin("copperTemperatureC", copperTemperatureC, COPPER_TEMPERATURES_C.lowest, COPPER_TEMPERATURES_C.highest);
  requireWithin("coefficientPerK", coefficientPerK, 0, 0.01);
  return resistanceAt20 * (1 + coefficientPerK * (copperTemperatureC - 20));
}

/**
 * Between which ends the resistance of a conductor can lie, however little is known of it.
 *
 * Source: the functions above. A listed size lies between bare copper and the greatest value that its standard allows. Any
 * other size (sensor leads below 0.5 mm², wire gauges), and one that is known with an accuracy only, is taken to lie above
 * bare copper by no more than a factor.
 *
 * @param areaMm2 - ends of the area, mm², above 0
 * @param greatestOhmPerKm - greatest resistance at 20 °C of a listed size, Ω/km; null for any other
 * @param overCopper - the factor, 1 to 10
 * @param copperTemperatureC - ends of the temperature of the copper, °C
 * @returns Ω/km of one conductor
 */
export function resistanceRangeOhmPerKm(
  areaMm2: Interval,
  greatestOhmPerKm: number | null,
  overCopper: number,
  copperTemperatureC: Interval,
): Interval {
  requireWithin("overCopper", overCopper, 1, 10);
  requireBounded("copperTemperatureC", copperTemperatureC);
  const greatest = greatestOhmPerKm ?? copperResistanceOhmPerKm(areaMm2.lowest) * overCopper;
  return {
    lowest: resistanceAtTemperature(copperResistanceOhmPerKm(areaMm2.highest), copperTemperatureC.lowest),
    highest: resistanceAtTemperature(greatest, copperTemperatureC.highest),
  };
}
