import { requirePositive } from "./require-number.js";
import { type BoltStrength, PROPERTY_CLASSES, type PropertyClass } from "./tables/property-classes.js";

export type { BoltStrength, PropertyClass } from "./tables/property-classes.js";

/** The property classes known here, weakest first within each group. */
export const PROPERTY_CLASS_NAMES = Object.keys(PROPERTY_CLASSES) as readonly PropertyClass[];

/**
 * Strengths of a bolt of this property class and nominal diameter, MPa, at room temperature.
 *
 * Source: ISO 898-1 and ISO 3506-1 as reprinted; see the table.
 *
 * @throws RangeError for a diameter that the class does not have (9.8 above 16 mm, cold-worked stainless above 24 mm)
 */
export function boltStrength(propertyClass: PropertyClass, nominalDiameterMm: number): BoltStrength {
  requirePositive("nominalDiameterMm", nominalDiameterMm);
  const found = PROPERTY_CLASSES[propertyClass].find(({ upToMm }) => nominalDiameterMm <= upToMm);
  if (!found) throw new RangeError(`no strength is known for ${propertyClass} at ${nominalDiameterMm} mm`);
  const { tensileMPa, yieldMPa, proofMPa } = found;
  return { tensileMPa, yieldMPa, proofMPa };
}

/** Whether the table has strengths for this class at this nominal diameter. */
export function hasStrength(propertyClass: PropertyClass, nominalDiameterMm: number): boolean {
  return PROPERTY_CLASSES[propertyClass].some(({ upToMm }) => nominalDiameterMm <= upToMm);
}

/**
 * Loads of a bolt, N: strength times tensile stress area.
 *
 * Source: ISO 898-1. Printed tables take the area to three figures and round the load, so differ by up to 0.5 per cent.
 *
 * @throws RangeError as {@link boltStrength}, or for an area that is not above 0
 */
export function boltLoadsN(
  propertyClass: PropertyClass,
  nominalDiameterMm: number,
  stressAreaMm2: number,
): { readonly tensileN: number; readonly yieldN: number; readonly proofN: number } {
  const strength = boltStrength(propertyClass, nominalDiameterMm);
  requirePositive("stressAreaMm2", stressAreaMm2);
  return {
    tensileN: strength.tensileMPa * stressAreaMm2,
    yieldN: strength.yieldMPa * stressAreaMm2,
    proofN: strength.proofMPa * stressAreaMm2,
  };
}
