import type { Interval } from "../base/index.js";
import { PITCH_DIAMETER_TOLERANCES, TOLERANCES_BY_PITCH } from "./tables/thread-tolerances.js";
import { MM_PER_INCH, type Thread } from "./thread-designation.js";
import { threadDiameters } from "./thread-profile.js";

/** Limits of size of a bolt and a tapped hole, mm. */
export interface ThreadLimits {
  readonly externalMajorMm: Interval;
  readonly externalPitchMm: Interval;
  readonly internalPitchMm: Interval;
  readonly internalMinorMm: Interval;
}

/**
 * Limits of size of the usual fit: 6g in 6H for a metric thread, 2A in 2B for a unified one, before coating.
 *
 * Source: metric, the tables of ISO 965-1 for normal length of engagement; unified, the formulas of ASME B1.1 for an
 * engagement of one diameter, both as reprinted (read 2026-11-26), rounded to 1 µm and 0.0001 in as there.
 *
 * @throws RangeError for a thread whose tolerances are not in the tables (M1.6x0.2, M2x0.25)
 */
export function threadLimits(thread: Thread): ThreadLimits {
  return thread.system === "metric" ? metricLimits(thread) : unifiedLimits(thread);
}

function metricLimits(thread: Thread): ThreadLimits {
  const byPitch = TOLERANCES_BY_PITCH.find(([pitchMm]) => pitchMm === thread.pitchMm);
  const byDiameter = PITCH_DIAMETER_TOLERANCES.find(
    ({ aboveMm, upToMm }) => thread.majorMm > aboveMm && thread.majorMm <= upToMm,
  )?.rows.find(([pitchMm]) => pitchMm === thread.pitchMm);
  if (!byPitch || !byDiameter) throw new RangeError(`no tolerances are known for ${thread.designation}`);
  const [, deviation, major6, minor6] = byPitch;
  const [, external6, internal6] = byDiameter;
  const basic = threadDiameters(thread);
  const um = (valueMm: number): number => Math.round(valueMm * 1000);
  return {
    externalMajorMm: below(um(basic.majorMm) - deviation, major6, 1000),
    externalPitchMm: below(um(basic.pitchDiameterMm) - deviation, external6, 1000),
    internalPitchMm: above(um(basic.pitchDiameterMm), internal6, 1000),
    internalMinorMm: above(um(basic.internalMinorMm), minor6, 1000),
  };
}

function unifiedLimits(thread: Thread): ThreadLimits {
  const basic = threadDiameters(thread);
  const majorIn = thread.majorMm / MM_PER_INCH;
  const pitchIn = thread.pitchMm / MM_PER_INCH;
  const crest = pitchIn ** (2 / 3);
  // The standard rounds this one to six decimals before it goes into the others.
  const pitchTolerance = Math.round(1500 * (Math.cbrt(majorIn) + Math.sqrt(majorIn) + 10 * crest)) / 1e6;
  const tenths = (valueIn: number): number => Math.round(valueIn * 10_000);
  const perInch = 10_000 / MM_PER_INCH;
  const allowance = tenths(0.3 * pitchTolerance);
  const pitchDiameter = tenths(basic.pitchDiameterMm / MM_PER_INCH);
  return {
    externalMajorMm: below(tenths(majorIn) - allowance, tenths(0.06 * crest), perInch),
    externalPitchMm: below(pitchDiameter - allowance, tenths(pitchTolerance), perInch),
    internalPitchMm: above(pitchDiameter, tenths(1.3 * pitchTolerance), perInch),
    internalMinorMm: above(
      tenths(basic.internalMinorMm / MM_PER_INCH),
      tenths(unifiedMinorTolerance(majorIn, pitchIn)),
      perInch,
    ),
  };
}

/** Tolerance of the minor diameter of a 2B thread, in; the sizes below 1/4 in have a formula of their own. */
function unifiedMinorTolerance(majorIn: number, pitchIn: number): number {
  const common = 0.25 * pitchIn - 0.4 * pitchIn * pitchIn;
  if (majorIn >= 0.25) return common;
  const small = 0.05 * pitchIn ** (2 / 3) + (0.03 * pitchIn) / majorIn - 0.002;
  return Math.min(Math.max(small, common), 0.394 * pitchIn);
}

function below(highest: number, tolerance: number, perMm: number): Interval {
  return { lowest: (highest - tolerance) / perMm, highest: highest / perMm };
}

function above(lowest: number, tolerance: number, perMm: number): Interval {
  return { lowest: lowest / perMm, highest: (lowest + tolerance) / perMm };
}
