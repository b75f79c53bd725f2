import type { Interval } from "../base/index.js";
import { requireBounded, requirePositive } from "./require-number.js";
import { CUTTING_DRILLS_MM } from "./tables/tap-drills.js";
import type { Thread } from "./thread-designation.js";
import { threadLimits } from "./thread-limits.js";

/**
 * What counts as 100 per cent of thread, as the diameter taken off by the full thread in pitches. Charts of inch
 * practice use 1.299 (twice 3/4 H), catalogues after ISO 1.0825 (twice 5/8 H, the engaged height); the second
 * gives a figure 1.2 times higher for the same hole.
 */
export const FULL_THREAD_IN_PITCHES = {
  "of-1.299-pitches": 0.75 * Math.sqrt(3),
  "of-1.0825-pitches": 0.625 * Math.sqrt(3),
} as const;

/** Which of the two conventions a percentage of thread follows. */
export type PercentConvention = keyof typeof FULL_THREAD_IN_PITCHES;

/**
 * Percentage of thread that a hole leaves for the tap to cut: 100 (d - hole) / (c P). Above 100 for a hole below the
 * minor diameter.
 *
 * Source: derivation from the 60 degree profile; both values of c are in print.
 *
 * @throws RangeError for a size that is not above 0, or a hole not smaller than the thread
 */
export function percentOfThread(
  thread: Pick<Thread, "majorMm" | "pitchMm">,
  holeMm: number,
  convention: PercentConvention,
): number {
  requirePositive("holeMm", holeMm);
  if (holeMm >= thread.majorMm) throw new RangeError(`a hole of ${holeMm} mm leaves no thread in ${thread.majorMm} mm`);
  return (100 * (thread.majorMm - holeMm)) / (FULL_THREAD_IN_PITCHES[convention] * thread.pitchMm);
}

/**
 * Hole, mm, that leaves a percentage of thread; the inverse of {@link percentOfThread}.
 *
 * @throws RangeError for a percentage that is not above 0 or leaves no hole
 */
export function holeForPercentMm(
  thread: Pick<Thread, "majorMm" | "pitchMm">,
  percent: number,
  convention: PercentConvention,
): number {
  const taken = (requirePositive("percent", percent) / 100) * FULL_THREAD_IN_PITCHES[convention] * thread.pitchMm;
  return requirePositive("hole", thread.majorMm - taken);
}

/**
 * The drill of the usual charts for cutting a thread.
 *
 * @returns its diameter in mm, or null where the table has none for this thread
 */
export function cuttingDrillMm(thread: Thread): number | null {
  return CUTTING_DRILLS_MM.get(thread.designation) ?? null;
}

/**
 * Holes that suit a thread-forming tap, mm: d - 0.52 P to d - 0.40 P, with d - 0.45 P the usual middle. The right hole
 * within this depends on tap and material.
 *
 * Source: common practice; the band covers the holes that a tap catalogue prints for M4 to M12 (read 2026-11-26), whose
 * upper end for M3 is d - 0.36 P.
 */
export function formingHoleMm(thread: Pick<Thread, "majorMm" | "pitchMm">): Interval {
  requirePositive("pitchMm", thread.pitchMm);
  return { lowest: thread.majorMm - 0.52 * thread.pitchMm, highest: thread.majorMm - 0.4 * thread.pitchMm };
}

/** What a hole is good for before tapping; "neither" is too wide to cut and too narrow to form. */
export type TapHoleUse = "too-small" | "cutting" | "neither" | "forming" | "too-large";

/**
 * What a hole of this diameter is good for: cutting if it lies within the limits of the minor diameter (6H, 2B), forming
 * if within {@link formingHoleMm}. For M6: 4.917 to 5.153 mm and 5.48 to 5.60 mm, so 5.4 mm is neither.
 *
 * @param holeMm - diameter of the hole as it is, mm; a drill makes it wider, see {@link drilledHoleMm}
 * @throws RangeError if the hole is not above 0 or the thread has no tolerances
 */
export function tapHoleUse(thread: Thread, holeMm: number): TapHoleUse {
  requirePositive("holeMm", holeMm);
  const cutting = threadLimits(thread).internalMinorMm;
  const forming = formingHoleMm(thread);
  if (holeMm < cutting.lowest) return "too-small";
  if (holeMm <= cutting.highest) return "cutting";
  if (holeMm < forming.lowest) return "neither";
  return holeMm <= forming.highest ? "forming" : "too-large";
}

/**
 * What a hole known within an interval is good for.
 *
 * @returns the use if it is the same at both ends and no other lies between, else null
 * @throws RangeError as {@link tapHoleUse}, or for an open interval
 */
export function tapHoleUseWithin(thread: Thread, holeMm: Interval): TapHoleUse | null {
  requireBounded("holeMm", holeMm);
  const least = tapHoleUse(thread, holeMm.lowest);
  return least === tapHoleUse(thread, holeMm.highest) ? least : null;
}

/** Tolerances by nominal diameter in mm: up to, drill h8 (below nominal), hole IT12 (above nominal). ISO 286-1, from memory. */
const DRILLING_TOLERANCES_MM: readonly (readonly [upToMm: number, drill: number, hole: number])[] = [
  [3, 0.014, 0.1],
  [6, 0.018, 0.12],
  [10, 0.022, 0.15],
  [18, 0.027, 0.18],
  [30, 0.033, 0.21],
];

/**
 * Where the diameter of a hole lies that was drilled with a twist drill without reaming, mm: from the drill at its
 * smallest (h8) to the tolerance H12.
 *
 * Source: common practice that twist drilling reaches H12; the widths are those of ISO 286-1, from memory. A drill
 * ground off centre or guided by hand makes it wider.
 *
 * @param drillMm - nominal diameter of the drill, mm, up to 30
 * @throws RangeError outside that
 */
export function drilledHoleMm(drillMm: number): Interval {
  requirePositive("drillMm", drillMm);
  const row = DRILLING_TOLERANCES_MM.find(([upToMm]) => drillMm <= upToMm);
  if (!row) throw new RangeError(`drillMm must be at most 30, got ${drillMm}`);
  return { lowest: drillMm - row[1], highest: drillMm + row[2] };
}
