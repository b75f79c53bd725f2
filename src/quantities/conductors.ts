import type { Interval } from "../base/index.js";
import { requirePositive, requireWithin } from "./require-number.js";
import { type ConductorClass, type ConductorCoat, GREATEST_RESISTANCE } from "./tables/conductors.js";

/** Change of copper's resistance per kelvin from 20 °C, the physical value (IACS; handbooks). */
export const COPPER_COEFFICIENT_PER_K = 0.00393;

/** The rounded value from which the correction table of IEC 60228 is made, as cable makers reprint it. */
export const CABLE_TABLE_COEFFICIENT_PER_K = 0.004;

/** Resistivity of annealed copper at 20 °C, Ω·mm²/km: 0.15328 Ω·g/m² over 8.89 g/cm³ (IACS, quoted after NBS Handbook 100). */
export const COPPER_RESISTIVITY_OHM_MM2_PER_KM = 17.241;

/** Temperatures between which the linear law is good to about a per cent, °C; no copper of a sensor cable is outside. */
export const COPPER_TEMPERATURES_C = { lowest: -50, highest: 200 } as const;

/**
 * The greatest resistance of one conductor at 20 °C that the standard allows.
 *
 * Source: IEC 60228 as reprinted, see the table.
 *
 * @param crossSectionMm2 - nominal size, mm²; only sizes of the table, from 0.5 to 10
 * @returns Ω/km of one conductor, or null for a size that is not in the table (0.25 and 0.34 mm² of sensor leads, wire gauges)
 */
export function greatestResistanceOhmPerKm(
  crossSectionMm2: number,
  conductorClass: ConductorClass,
  coat: ConductorCoat = "plain",
): number | null {
  requirePositive("crossSectionMm2", crossSectionMm2);
  return GREATEST_RESISTANCE[conductorClass][coat].find(([size]) => size === crossSectionMm2)?.[1] ?? null;
}

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
 * Between which ends the resistance of a nominal size can lie: the bare area at the coldest, the standard's greatest
 * value at the hottest.
 *
 * Source: the three functions above.
 *
 * @param copperTemperatureC - coldest and hottest copper, °C
 * @returns Ω/km of one conductor, or null for a size that is not in the table
 */
export function resistanceBoundsOhmPerKm(
  crossSectionMm2: number,
  conductorClass: ConductorClass,
  coat: ConductorCoat,
  copperTemperatureC: Interval,
): Interval | null {
  const greatest = greatestResistanceOhmPerKm(crossSectionMm2, conductorClass, coat);
  if (greatest === null) return null;
  requireWithin(
    "lowest temperature",
    copperTemperatureC.lowest,
    COPPER_TEMPERATURES_C.lowest,
    copperTemperatureC.highest,
  );
  return {
    lowest: resistanceAtTemperature(copperResistanceOhmPerKm(crossSectionMm2), copperTemperatureC.lowest),
    highest: resistanceAtTemperature(greatest, copperTemperatureC.highest),
  };
}

/** How far the greatest resistance of the table lies above bare copper of the same nominal size, at most: a factor. */
const MOST_ABOVE_COPPER = Math.max(
  ...Object.values(GREATEST_RESISTANCE).flatMap((coats) =>
    Object.values(coats).flatMap((rows) => rows.map(([size, ohmPerKm]) => ohmPerKm / copperResistanceOhmPerKm(size))),
  ),
);

/**
 * Between which ends the resistance of a conductor can lie, however little is known of it.
 *
 * Source: the functions above. A size of the table lies between bare copper and the greatest value of its class, of all
 * classes where none is stated, plain or coated. Any other size (sensor leads below 0.5 mm², wire gauges) is taken to
 * lie above bare copper by no more than the table's sizes do; makers' sheets of 0.25 and 0.34 mm² lie within that.
 *
 * @param areaMm2 - ends of the area, mm², above 0
 * @param conductorClass - null where it is not known
 * @param copperTemperatureC - ends of the temperature of the copper, °C
 * @returns Ω/km of one conductor
 */
export function resistanceRangeOhmPerKm(
  areaMm2: Interval,
  conductorClass: ConductorClass | null,
  copperTemperatureC: Interval,
): Interval {
  const classes: readonly ConductorClass[] = conductorClass === null ? [1, 2, 5] : [conductorClass];
  const ofTable = classes.flatMap((one) =>
    (["plain", "metal-coated"] as const).flatMap((coat) =>
      areaMm2.lowest === areaMm2.highest ? (greatestResistanceOhmPerKm(areaMm2.lowest, one, coat) ?? []) : [],
    ),
  );
  const greatest =
    ofTable.length > 0 ? Math.max(...ofTable) : copperResistanceOhmPerKm(areaMm2.lowest) * MOST_ABOVE_COPPER;
  return {
    lowest: resistanceAtTemperature(copperResistanceOhmPerKm(areaMm2.highest), copperTemperatureC.lowest),
    highest: resistanceAtTemperature(greatest, copperTemperatureC.highest),
  };
}
