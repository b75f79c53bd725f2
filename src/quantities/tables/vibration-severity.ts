/** Upper limits of the zones A, B and C; above the last lies zone D. */
export interface ZoneLimits {
  readonly ab: number;
  readonly bc: number;
  readonly cd: number;
}

export type MachineClass = "I" | "II" | "III" | "IV";
export type MachineGroup = 1 | 2;
export type SupportClass = "rigid" | "flexible";

/**
 * Typical limits by class of machine, mm/s r.m.s.: ISO 10816-1:1995 annex B, the same as ISO 2372.
 * I, II, IV: read in a reprinted chart. III: three open programs that agree, read 2026-11-26; the standard was not read.
 */
export const CLASS_LIMITS_MM_PER_S: Readonly<Record<MachineClass, ZoneLimits>> = {
  I: { ab: 0.71, bc: 1.8, cd: 4.5 },
  II: { ab: 1.12, bc: 2.8, cd: 7.1 },
  III: { ab: 1.8, bc: 4.5, cd: 11.2 },
  IV: { ab: 2.8, bc: 7.1, cd: 18 },
};

/** Limits of velocity and displacement of one group and support. */
export interface GroupLimits {
  readonly velocityMmPerS: ZoneLimits;
  readonly displacementUm: ZoneLimits;
}

/**
 * ISO 10816-3:2009 tables A.1 and A.2, r.m.s.; read 2026-11-26 as the tests of an open acoustics library print them, which
 * name the tables and the page, and in agreement with a motor manual (group 1, rigid) and several open programs.
 * Superseded by ISO 20816-3:2022, which was not read.
 */
export const GROUP_LIMITS: Readonly<Record<MachineGroup, Readonly<Record<SupportClass, GroupLimits>>>> = {
  1: {
    rigid: { velocityMmPerS: { ab: 2.3, bc: 4.5, cd: 7.1 }, displacementUm: { ab: 29, bc: 57, cd: 90 } },
    flexible: { velocityMmPerS: { ab: 3.5, bc: 7.1, cd: 11 }, displacementUm: { ab: 45, bc: 90, cd: 140 } },
  },
  2: {
    rigid: { velocityMmPerS: { ab: 1.4, bc: 2.8, cd: 4.5 }, displacementUm: { ab: 22, bc: 45, cd: 71 } },
    flexible: { velocityMmPerS: { ab: 2.3, bc: 4.5, cd: 7.1 }, displacementUm: { ab: 37, bc: 71, cd: 113 } },
  },
};

/** Acceptance limits of a motor in the test field, uncoupled, r.m.s. */
export interface MotorLimits {
  readonly displacementUm: number;
  readonly velocityMmPerS: number;
  readonly accelerationMPerS2: number;
}

type ByMounting = { readonly "free-suspension": MotorLimits; readonly rigid: MotorLimits | null };

function limits(displacementUm: number, velocityMmPerS: number, accelerationMPerS2: number): MotorLimits {
  return { displacementUm, velocityMmPerS, accelerationMPerS2 };
}

/**
 * IEC 60034-14, by grade and by shaft height (56 to 132, above 132 to 280, above 280 mm); read 2026-11-26 in a motor
 * manual, in agreement with another maker's sheet. Grade B has no rigid limit for the smallest shaft heights.
 */
export const MOTOR_LIMITS: Readonly<
  Record<"A" | "B", readonly [small: ByMounting, medium: ByMounting, large: ByMounting]>
> = {
  A: [
    { "free-suspension": limits(25, 1.6, 2.5), rigid: limits(21, 1.3, 2.0) },
    { "free-suspension": limits(35, 2.2, 3.5), rigid: limits(29, 1.8, 2.8) },
    { "free-suspension": limits(45, 2.8, 4.4), rigid: limits(37, 2.3, 3.6) },
  ],
  B: [
    { "free-suspension": limits(11, 0.7, 1.1), rigid: null },
    { "free-suspension": limits(18, 1.1, 1.7), rigid: limits(14, 0.9, 1.4) },
    { "free-suspension": limits(29, 1.8, 2.8), rigid: limits(24, 1.5, 2.4) },
  ],
};
