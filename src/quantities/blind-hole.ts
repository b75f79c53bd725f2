import type { Interval } from "../base/index.js";
import { requireNotNegative, requirePositive, requireWithin } from "./require-number.js";

/** Forms of tap by length of chamfer; A to F are those of DIN 2197, the words those of inch practice. */
export type TapForm = "A" | "B" | "C" | "D" | "E" | "F" | "taper" | "plug" | "modified-bottoming" | "bottoming";

/**
 * Length of the chamfer of a tap, in pitches, by form: so many threads at the end of its cut are not full.
 *
 * Source: DIN 2197 and inch practice as two tool catalogues print them (read 2026-11-26; the standard was not opened).
 */
const CHAMFER_IN_PITCHES: Readonly<Record<TapForm, Interval>> = {
  A: { lowest: 6, highest: 8 },
  B: { lowest: 3.5, highest: 5.5 },
  C: { lowest: 2, highest: 3 },
  D: { lowest: 3.5, highest: 5 },
  E: { lowest: 1.5, highest: 2 },
  F: { lowest: 1, highest: 1.5 },
  taper: { lowest: 7, highest: 10 },
  plug: { lowest: 3, highest: 5 },
  "modified-bottoming": { lowest: 2, highest: 2.5 },
  bottoming: { lowest: 1, highest: 2 },
};

/** Length of the chamfer of a tap, in pitches. */
export function tapChamferInPitches(form: TapForm): Interval {
  return CHAMFER_IN_PITCHES[form];
}

/**
 * Length of the point of a drill, mm: half the diameter over the tangent of half the point angle. For 118 degrees 0.300 of
 * the diameter, for 135 degrees 0.207.
 *
 * Source: derivation, cone; the chisel edge makes it a little shorter.
 *
 * @param pointAngleDeg - included angle of the point, degrees, 60 to 180 (180 for a flat bottom)
 * @throws RangeError outside that, or for a diameter that is not above 0
 */
export function drillPointMm(drillMm: number, pointAngleDeg: number): number {
  requirePositive("drillMm", drillMm);
  const angleDeg = requireWithin("pointAngleDeg", pointAngleDeg, 60, 180);
  return angleDeg === 180 ? 0 : drillMm / 2 / Math.tan((angleDeg * Math.PI) / 360);
}

/** A blind hole in a wall; depths from the seat, mm. */
export interface BlindHole {
  readonly wallMm: number;
  /** How deep the seat is cut into the wall. */
  readonly seatDepthMm: number;
  /** Depth of the hole to its full diameter, without the drill point. */
  readonly holeDepthMm: number;
  readonly drillPointMm: number;
}

/**
 * Wall left under the drill point of a blind hole, mm; 0 or below where the drill comes through.
 *
 * Source: derivation.
 *
 * @throws RangeError for a wall that is not above 0 or another size below 0
 */
export function wallLeftMm({ wallMm, seatDepthMm, holeDepthMm, drillPointMm: pointMm }: BlindHole): number {
  requirePositive("wallMm", wallMm);
  requireNotNegative("seatDepthMm", seatDepthMm);
  requireNotNegative("holeDepthMm", holeDepthMm);
  return wallMm - seatDepthMm - holeDepthMm - requireNotNegative("drillPointMm", pointMm);
}

/**
 * Wall that a blind hole needs, mm; the inverse of {@link wallLeftMm}.
 *
 * @param hole - the hole without its wall
 * @param leftMm - wall that is to be left, mm
 */
export function wallNeededMm(hole: Omit<BlindHole, "wallMm">, leftMm: number): number {
  const cutMm =
    requireNotNegative("seatDepthMm", hole.seatDepthMm) +
    requireNotNegative("holeDepthMm", hole.holeDepthMm) +
    requireNotNegative("drillPointMm", hole.drillPointMm);
  return cutMm + requireNotNegative("leftMm", leftMm);
}

/**
 * Depth of full thread in a blind hole, mm: depth of the hole less the chamfer of the tap and what is left free under
 * it, and never below 0. Lowest with the longest chamfer.
 *
 * Source: derivation. Add a countersink to `freeMm` if depths are counted from the face.
 *
 * @param holeDepthMm - depth of the hole to its full diameter, mm
 * @param chamferInPitches - as {@link tapChamferInPitches}
 * @param freeMm - room for chips and overrun under the tap, mm; usual is one pitch
 * @throws RangeError for a pitch that is not above 0 or another number below 0
 */
export function fullThreadDepthMm(
  holeDepthMm: number,
  pitchMm: number,
  chamferInPitches: Interval,
  freeMm: number,
): Interval {
  const room = requireNotNegative("holeDepthMm", holeDepthMm) - requireNotNegative("freeMm", freeMm);
  const pitch = requirePositive("pitchMm", pitchMm);
  const least = requireNotNegative("chamferInPitches.lowest", chamferInPitches.lowest);
  const most = requireWithin("chamferInPitches.highest", chamferInPitches.highest, least, 20);
  return { lowest: Math.max(0, room - most * pitch), highest: Math.max(0, room - least * pitch) };
}

/**
 * Depth to which a hole must be drilled for a depth of full thread, mm; highest with the longest chamfer.
 *
 * Source: derivation; the usual rule adds one pitch beyond the chamfer as `freeMm`.
 *
 * @throws RangeError as {@link fullThreadDepthMm}
 */
export function holeDepthNeededMm(
  threadDepthMm: number,
  pitchMm: number,
  chamferInPitches: Interval,
  freeMm: number,
): Interval {
  const base = requireNotNegative("threadDepthMm", threadDepthMm) + requireNotNegative("freeMm", freeMm);
  const pitch = requirePositive("pitchMm", pitchMm);
  const least = requireNotNegative("chamferInPitches.lowest", chamferInPitches.lowest);
  const most = requireWithin("chamferInPitches.highest", chamferInPitches.highest, least, 20);
  return { lowest: base + least * pitch, highest: base + most * pitch };
}

/** How a bolt sits in a blind hole. */
export interface BoltInHole {
  /** Length of full thread that bolt and hole share, mm. */
  readonly engagementMm: number;
  /** Full thread left under the tip of the bolt, mm; below 0 by how far the bolt is too long. */
  readonly spareMm: number;
  /** Whether the bolt runs onto the unfinished thread before the parts are clamped. */
  readonly bottoms: boolean;
}

/**
 * How a bolt sits in a blind hole, before it is stretched.
 *
 * Source: derivation.
 *
 * @param boltLengthMm - length of the bolt under the head, or of the stud beyond its shoulder, mm
 * @param clampedMm - thickness of what lies between head and hole (base, washers), mm
 * @param threadDepthMm - depth of full thread in the hole, mm
 * @param threadLostMm - depth from the face without full thread (countersink, counterbore), mm
 * @throws RangeError for a bolt length that is not above 0 or another number below 0
 */
export function boltInBlindHole(
  boltLengthMm: number,
  clampedMm: number,
  threadDepthMm: number,
  threadLostMm = 0,
): BoltInHole {
  const reach = requirePositive("boltLengthMm", boltLengthMm) - requireNotNegative("clampedMm", clampedMm);
  requireNotNegative("threadDepthMm", threadDepthMm);
  requireNotNegative("threadLostMm", threadLostMm);
  return {
    engagementMm: Math.max(0, Math.min(reach, threadDepthMm) - threadLostMm),
    spareMm: threadDepthMm - reach,
    bottoms: reach > threadDepthMm,
  };
}
