import { requireNotNegative, requirePositive } from "./require-number.js";

/** What of a bolted joint takes part in the torque, mm. */
export interface TorqueGeometry {
  readonly pitchMm: number;
  readonly pitchDiameterMm: number;
  /** Mean diameter on which head, nut or sensor base rubs. */
  readonly headFrictionDiameterMm: number;
}

/** Coefficients of friction in the thread and under the head. */
export interface Friction {
  readonly thread: number;
  readonly head: number;
}

/** Torque per preload in millimetres, by what takes it up. */
interface TorqueArms {
  readonly leadMm: number;
  readonly threadMm: number;
  readonly headMm: number;
}

/** Secant of the half angle of a 60 degree thread. */
const FLANK = 2 / Math.sqrt(3);

/**
 * Mean friction diameter of a ring-shaped bearing face, mm: half the sum of outer and hole diameter.
 *
 * Source: ISO 16047, as quoted. A face that carries evenly has a slightly larger one.
 *
 * @throws RangeError if the hole is not smaller than the face
 */
export function headFrictionDiameterMm(faceDiameterMm: number, holeDiameterMm: number): number {
  requireNotNegative("holeDiameterMm", holeDiameterMm);
  if (!(requirePositive("faceDiameterMm", faceDiameterMm) > holeDiameterMm)) {
    throw new RangeError(`a hole of ${holeDiameterMm} mm leaves no face of ${faceDiameterMm} mm`);
  }
  return (faceDiameterMm + holeDiameterMm) / 2;
}

/**
 * Torque for a preload, N·m, by the exact expression
 * T = F [ (P + (2/√3) π µ d2) / (2 (π - (2/√3) µ P / d2)) + µ Db / 2 ].
 *
 * Source: ISO 16047, as quoted, where 2/√3 is printed as 1.154. Valid for 60 degree threads turned at the head or nut.
 *
 * @throws RangeError for a negative preload or friction, or a size that is not above 0
 */
export function torqueForPreloadNm(preloadN: number, geometry: TorqueGeometry, friction: Friction): number {
  return (requireNotNegative("preloadN", preloadN) * exactArmMm(geometry, friction)) / 1000;
}

/** Preload, N, that a torque gives by the exact expression; the inverse of {@link torqueForPreloadNm}. */
export function preloadForTorqueN(torqueNm: number, geometry: TorqueGeometry, friction: Friction): number {
  return (requireNotNegative("torqueNm", torqueNm) * 1000) / exactArmMm(geometry, friction);
}

/**
 * Torque for a preload, N·m, by the short form T = F (0.16 P + 0.58 d2 µG + µK DKm / 2).
 *
 * Source: VDI 2230 part 1, as quoted. For standard threads and frictions of 0.04 to 0.35 up to 2.7 per cent below the
 * exact expression and 0.3 per cent above it; within 1 per cent where both frictions are alike and at most 0.2.
 *
 * @throws RangeError as {@link torqueForPreloadNm}
 */
export function shortFormTorqueNm(preloadN: number, geometry: TorqueGeometry, friction: Friction): number {
  const { leadMm, threadMm, headMm } = shortArms(geometry, friction);
  return (requireNotNegative("preloadN", preloadN) * (leadMm + threadMm + headMm)) / 1000;
}

/** Preload, N, by the short form; the inverse of {@link shortFormTorqueNm}. */
export function shortFormPreloadN(torqueNm: number, geometry: TorqueGeometry, friction: Friction): number {
  const { leadMm, threadMm, headMm } = shortArms(geometry, friction);
  return (requireNotNegative("torqueNm", torqueNm) * 1000) / (leadMm + threadMm + headMm);
}

/**
 * Where the torque goes, as fractions that sum to 1: stretching the bolt (lead), friction in the thread, friction
 * under the head; by the short form.
 *
 * @throws RangeError as {@link torqueForPreloadNm}
 */
export function torqueShares(
  geometry: TorqueGeometry,
  friction: Friction,
): { readonly lead: number; readonly thread: number; readonly head: number } {
  const { leadMm, threadMm, headMm } = shortArms(geometry, friction);
  const all = leadMm + threadMm + headMm;
  return { lead: leadMm / all, thread: threadMm / all, head: headMm / all };
}

/**
 * Nut factor K of T = K d F that these frictions amount to, by the short form.
 *
 * @throws RangeError as {@link torqueForPreloadNm}
 */
export function nutFactor(nominalDiameterMm: number, geometry: TorqueGeometry, friction: Friction): number {
  return shortFormTorqueNm(1000, geometry, friction) / requirePositive("nominalDiameterMm", nominalDiameterMm);
}

/**
 * Torque, N·m, by T = K d F.
 *
 * Source: handbooks. K lumps thread, head and lead together and holds only for the finish it was measured on.
 *
 * @throws RangeError if K or the diameter is not above 0, or the preload is negative
 */
export function torqueByNutFactorNm(preloadN: number, nominalDiameterMm: number, factor: number): number {
  requirePositive("nominalDiameterMm", nominalDiameterMm);
  return (requireNotNegative("preloadN", preloadN) * nominalDiameterMm * requirePositive("factor", factor)) / 1000;
}

/** Preload, N, by T = K d F; the inverse of {@link torqueByNutFactorNm}. */
export function preloadByNutFactorN(torqueNm: number, nominalDiameterMm: number, factor: number): number {
  requirePositive("nominalDiameterMm", nominalDiameterMm);
  return (requireNotNegative("torqueNm", torqueNm) * 1000) / (nominalDiameterMm * requirePositive("factor", factor));
}

function exactArmMm(geometry: TorqueGeometry, friction: Friction): number {
  requireFriction(geometry, friction);
  const { pitchMm, pitchDiameterMm, headFrictionDiameterMm: head } = geometry;
  const rub = FLANK * friction.thread;
  const wedge = Math.PI - (rub * pitchMm) / pitchDiameterMm;
  if (!(wedge > 0)) throw new RangeError("so steep a thread cannot be turned with so much friction");
  return (pitchMm + Math.PI * rub * pitchDiameterMm) / (2 * wedge) + (friction.head * head) / 2;
}

function shortArms(geometry: TorqueGeometry, friction: Friction): TorqueArms {
  requireFriction(geometry, friction);
  return {
    leadMm: 0.16 * geometry.pitchMm,
    threadMm: 0.58 * geometry.pitchDiameterMm * friction.thread,
    headMm: (friction.head * geometry.headFrictionDiameterMm) / 2,
  };
}

function requireFriction(geometry: TorqueGeometry, friction: Friction): void {
  requirePositive("pitchMm", geometry.pitchMm);
  requirePositive("pitchDiameterMm", geometry.pitchDiameterMm);
  requirePositive("headFrictionDiameterMm", geometry.headFrictionDiameterMm);
  requireNotNegative("friction.thread", friction.thread);
  requireNotNegative("friction.head", friction.head);
}
