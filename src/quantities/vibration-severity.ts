import type { Interval } from "../base/index.js";
import { requireNotNegative, requirePositive, requireWithin } from "./require-number.js";
import {
  CLASS_LIMITS_MM_PER_S,
  GROUP_LIMITS,
  type GroupLimits,
  type MachineClass,
  type MachineGroup,
  MOTOR_LIMITS,
  type MotorLimits,
  type SupportClass,
  type ZoneLimits,
} from "./tables/vibration-severity.js";

export type Zone = "A" | "B" | "C" | "D";

/**
 * The zone of a reading.
 *
 * Source: ISO 10816; that a reading equal to a limit stays in the better zone is a convention.
 *
 * @param reading - r.m.s., in the unit of the limits, not negative
 */
export function zoneOf(reading: number, limits: ZoneLimits): Zone {
  requireNotNegative("reading", reading);
  if (!(limits.ab > 0 && limits.ab < limits.bc && limits.bc < limits.cd && limits.cd <= 1e12)) {
    throw new RangeError(`limits must be above 0 and rise, got ${limits.ab}, ${limits.bc}, ${limits.cd}`);
  }
  if (reading <= limits.ab) return "A";
  if (reading <= limits.bc) return "B";
  return reading <= limits.cd ? "C" : "D";
}

/**
 * The worse of several zones, as where velocity and displacement were both measured.
 *
 * Source: ISO 10816-3:2009 5.2.3 as the tests of an open library cite it: the more restrictive grading holds.
 *
 * @throws RangeError where there is none
 */
export function worstZone(zones: readonly Zone[]): Zone {
  const worst = [...zones].sort().at(-1);
  if (worst === undefined) throw new RangeError("zones must hold at least one zone");
  return worst;
}

/** Limits of velocity by class of machine, mm/s r.m.s., 10 to 1000 Hz; see the table for the source. */
export function limitsOfClassMmPerS(machineClass: MachineClass): ZoneLimits {
  return CLASS_LIMITS_MM_PER_S[machineClass];
}

/**
 * The class of a driven or driving machine in the sense of ISO 10816-1 annex B.
 *
 * Source: ship classification rules that reprint it: I to 15 kW; II to 75 kW, or to 300 kW on a special foundation; above
 * that III on a rigid, IV on a soft foundation.
 *
 * @param ratedPowerKw - kW, above 0
 * @param foundation - "ordinary" up to 75 kW; "special" rigid foundation up to 300 kW
 * @param support - of large machines; null where it is not known
 * @returns the class, or null where it hangs on the support that is not known
 */
export function machineClassOf(
  ratedPowerKw: number,
  foundation: "ordinary" | "special",
  support: SupportClass | null,
): MachineClass | null {
  requirePositive("ratedPowerKw", ratedPowerKw);
  if (ratedPowerKw <= 15) return "I";
  if (ratedPowerKw <= (foundation === "special" ? 300 : 75)) return "II";
  if (support === null) return null;
  return support === "rigid" ? "III" : "IV";
}

/** Limits of velocity (mm/s r.m.s.) and displacement (µm r.m.s.) by group and support; see the table for the source. */
export function limitsOfGroup(group: MachineGroup, support: SupportClass): GroupLimits {
  return GROUP_LIMITS[group][support];
}

/**
 * The group of a machine in the sense of ISO 10816-3.
 *
 * Source: manual and open programs that reprint it: electrical machines by shaft height (1 from 315 mm, 2 from 160 mm),
 * others by power (1 above 300 kW to 50 MW, 2 above 15 kW). Pumps were taken out in 2009 (ISO 10816-7).
 *
 * @param ratedPowerKw - kW, above 0
 * @param motorShaftHeightMm - of an electrical machine, mm; null of any other machine
 * @returns the group, or null where the machine is outside the standard
 */
export function machineGroupOf(ratedPowerKw: number, motorShaftHeightMm: number | null): MachineGroup | null {
  requirePositive("ratedPowerKw", ratedPowerKw);
  if (ratedPowerKw <= 15 || ratedPowerKw > 50_000) return null;
  if (motorShaftHeightMm === null) return ratedPowerKw > 300 ? 1 : 2;
  requirePositive("motorShaftHeightMm", motorShaftHeightMm);
  if (motorShaftHeightMm < 160) return null;
  return motorShaftHeightMm >= 315 ? 1 : 2;
}

/** Powers, kW, and shaft heights, mm, at which the group changes. */
const GROUPS_CHANGE_AT = { powerKw: [15, 300, 50_000], shaftHeightMm: [160, 315] } as const;

/**
 * All groups that a machine may have whose power, and shaft height if it is a motor, are known within intervals.
 *
 * Source: {@link machineGroupOf}, at the ends, and on both sides of each change between them.
 *
 * @param powerKw - kW, above 0
 * @param motorShaftHeightMm - mm, above 0; null of a machine that is no motor
 */
export function machineGroupsWithin(
  powerKw: Interval,
  motorShaftHeightMm: Interval | null,
): ReadonlySet<MachineGroup | null> {
  const powers = sidesWithin(powerKw, GROUPS_CHANGE_AT.powerKw);
  const heights = motorShaftHeightMm ? sidesWithin(motorShaftHeightMm, GROUPS_CHANGE_AT.shaftHeightMm) : [null];
  return new Set(powers.flatMap((power) => heights.map((height) => machineGroupOf(power, height))));
}

function sidesWithin({ lowest, highest }: Interval, changes: readonly number[]): readonly number[] {
  const sides = changes.flatMap((change) => [change * (1 - 1e-9), change, change * (1 + 1e-9)]);
  return [lowest, ...sides.filter((side) => side > lowest && side < highest), highest];
}

/** Speeds for which the zones of ISO 10816-3 hold, r/min (its title; ISO 20816-3:2022 goes up to 30 000). */
export const ZONED_SPEEDS_RPM = { lowest: 120, highest: 15_000 } as const;

/**
 * Whether a support counts as rigid in the measuring direction.
 *
 * Source: ISO 10816-3 as reprinted: rigid where the lowest natural frequency of machine and support lies at least a quarter
 * above the main exciting frequency; ship rules take rigid, the stricter, where it cannot be told.
 *
 * @param lowestNaturalHz - Hz, above 0; null where it is not known
 * @param mainExcitingHz - in most cases the turning frequency, Hz, above 0
 */
export function supportClassOf(lowestNaturalHz: number | null, mainExcitingHz: number): SupportClass {
  requirePositive("mainExcitingHz", mainExcitingHz);
  if (lowestNaturalHz === null) return "rigid";
  requirePositive("lowestNaturalHz", lowestNaturalHz);
  return lowestNaturalHz >= 1.25 * mainExcitingHz ? "rigid" : "flexible";
}

/**
 * Where to set the alarm of a point with a baseline.
 *
 * Source: ISO 10816-3:2009 5.4.1 as reprinted in a motor manual and in the tests of an open library: the baseline plus a
 * quarter of the upper limit of zone B, but at most 1.25 times that limit.
 *
 * @param baselineMmPerS - baseline, mm/s r.m.s.
 * @param limits - of the machine, mm/s
 * @returns mm/s r.m.s.
 */
export function alarmFromBaselineMmPerS(baselineMmPerS: number, limits: ZoneLimits): number {
  requireNotNegative("baselineMmPerS", baselineMmPerS);
  requirePositive("limits.bc", limits.bc);
  return Math.min(baselineMmPerS + 0.25 * limits.bc, 1.25 * limits.bc);
}

/** The highest setting of a trip: 1.25 times the upper limit of zone C, mm/s r.m.s. (ISO 10816-3:2009 5.4.2 as reprinted). */
export function highestTripMmPerS(limits: ZoneLimits): number {
  requirePositive("limits.cd", limits.cd);
  return 1.25 * limits.cd;
}

/**
 * Limits that a motor meets in the test field, uncoupled; no limits for the machine in place.
 *
 * Source: IEC 60034-14 as reprinted, see the table.
 *
 * @param shaftHeightMm - 56 and above, mm
 * @returns limits, or null where the standard has none
 */
export function motorLimits(
  grade: "A" | "B",
  shaftHeightMm: number,
  mounting: "free-suspension" | "rigid",
): MotorLimits | null {
  requireWithin("shaftHeightMm", shaftHeightMm, 56, 10_000);
  const [small, medium, large] = MOTOR_LIMITS[grade];
  return (shaftHeightMm <= 132 ? small : shaftHeightMm <= 280 ? medium : large)[mounting];
}
