import { requireNotNegative, requirePositive } from "./require-number.js";

/** Torsion modulus of a disc or ring, mm³: π (D⁴ - d⁴)/(16 D). */
function torsionModulusMm3(outerMm: number, innerMm: number): number {
  const outer = requirePositive("outerMm", outerMm);
  const inner = requireNotNegative("innerMm", innerMm);
  if (inner >= outer) throw new RangeError(`a hole of ${inner} mm leaves nothing of a pad of ${outer} mm`);
  return (Math.PI * (outer ** 4 - inner ** 4)) / (16 * outer);
}

/**
 * Highest shear stress in the bond of a round pad, MPa, at its rim, while a sensor on it is tightened and the pad is not
 * held: 16 T/(π D³) for a disc, 16 T D/(π (D⁴ - d⁴)) for a ring.
 *
 * Source: derivation, elastic torsion of a round section; both faces stiff against the adhesive, bond without voids.
 *
 * @param torqueNm - torque that the bond has to take, N·m
 * @param innerMm - diameter of the part in the middle that is not bonded, mm; 0 for a full disc
 * @throws RangeError for a negative torque, or a hole not smaller than the pad
 */
export function bondShearMPa(torqueNm: number, outerMm: number, innerMm = 0): number {
  return (requireNotNegative("torqueNm", torqueNm) * 1000) / torsionModulusMm3(outerMm, innerMm);
}

/**
 * Torque, N·m, at which the shear stress at the rim of a bond reaches this; the inverse of {@link bondShearMPa}.
 *
 * @param shearMPa - shear stress allowed, MPa: the strength reached so far over the safety wanted
 * @throws RangeError for a negative stress, or a hole not smaller than the pad
 */
export function bondTorqueNm(shearMPa: number, outerMm: number, innerMm = 0): number {
  return (requireNotNegative("shearMPa", shearMPa) * torsionModulusMm3(outerMm, innerMm)) / 1000;
}
