import { requirePositive } from "./require-number.js";
import type { Thread } from "./thread-designation.js";

/** Height of the fundamental triangle of a 60 degree thread over its pitch: half the root of three. */
const TRIANGLE_HEIGHT = Math.sqrt(3) / 2;

/** Basic diameters of a thread, mm, before any tolerance. */
export interface ThreadDiameters {
  readonly majorMm: number;
  /** Pitch diameter of both threads, d2 = D2. */
  readonly pitchDiameterMm: number;
  /** Minor diameter of the internal thread, D1. */
  readonly internalMinorMm: number;
  /** Minor diameter of the external thread at the rounded root, d3. */
  readonly externalMinorMm: number;
}

/**
 * Basic diameters of a thread: d2 = d - 3/4 H, D1 = d - 5/4 H; at the rounded root d3 = d - 17/12 H for a metric
 * thread and d - 11/8 H for a unified one (UNR), with H the height of the triangle.
 *
 * Source: ISO 68-1 and ISO 724, ASME B1.1, as thread tables reprint them.
 *
 * @throws RangeError if a size is not a number above 0, or the pitch is too large for the diameter
 */
export function threadDiameters(thread: Pick<Thread, "system" | "majorMm" | "pitchMm">): ThreadDiameters {
  const major = requirePositive("majorMm", thread.majorMm);
  const height = TRIANGLE_HEIGHT * requirePositive("pitchMm", thread.pitchMm);
  const root = (thread.system === "metric" ? 17 / 12 : 11 / 8) * height;
  if (root >= major)
    throw new RangeError(`a pitch of ${thread.pitchMm} mm leaves no core in a diameter of ${major} mm`);
  return {
    majorMm: major,
    pitchDiameterMm: major - 0.75 * height,
    internalMinorMm: major - 1.25 * height,
    externalMinorMm: major - root,
  };
}

/**
 * Area that carries tension in an external thread, mm²: the circle of diameter (d2 + d3)/2, that is d - 0.9382 P, for
 * a metric thread; of d - 9/8 H, that is d - 0.9743 P, for a unified one.
 *
 * Source: ISO 898-1 and ASME B1.1 as fastener tables reprint them. For steels below about 1,200 MPa.
 *
 * @throws RangeError as {@link threadDiameters}
 */
export function tensileStressAreaMm2(thread: Pick<Thread, "system" | "majorMm" | "pitchMm">): number {
  return circleMm2(stressDiameterMm(thread));
}

/** Diameter of the circle of the tensile stress area, mm. */
export function stressDiameterMm(thread: Pick<Thread, "system" | "majorMm" | "pitchMm">): number {
  const { majorMm, pitchDiameterMm, externalMinorMm } = threadDiameters(thread);
  return thread.system === "metric"
    ? (pitchDiameterMm + externalMinorMm) / 2
    : majorMm - (9 / 8) * TRIANGLE_HEIGHT * thread.pitchMm;
}

/**
 * Area at the root of an external thread, mm²: the circle of d3 for a metric thread, of d - 3/2 H (sharp root, as the
 * tables of ASME B1.1 have it) for a unified one.
 *
 * @throws RangeError as {@link threadDiameters}
 */
export function rootAreaMm2(thread: Pick<Thread, "system" | "majorMm" | "pitchMm">): number {
  const { majorMm, externalMinorMm } = threadDiameters(thread);
  return circleMm2(thread.system === "metric" ? externalMinorMm : majorMm - 1.5 * TRIANGLE_HEIGHT * thread.pitchMm);
}

function circleMm2(diameterMm: number): number {
  return (Math.PI / 4) * diameterMm * diameterMm;
}
