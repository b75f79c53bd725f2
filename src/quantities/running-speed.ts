/** What the survey says of the way a shaft is driven; null where nothing is stated. */
export type Drive = "yes" | "no" | null;

/** How slowly a shaft may turn: exactly so, or at most so fast. */
export type LowestRunning = { readonly rpm: number; readonly bound: "exact" | "at-most" };

/**
 * Whether the speed of a shaft varies: a range says so; else the drive's word.
 *
 * Source: common practice.
 *
 * @param lowestRpm - lowest speed, r/min, or null
 * @param highestRpm - highest speed, r/min, or null
 * @param drive - the drive's word
 * @returns true, false, or null where neither a range nor the drive says anything
 */
export function speedVaries(lowestRpm: number | null, highestRpm: number | null, drive: Drive): boolean | null {
  if (lowestRpm !== null && highestRpm !== null && lowestRpm !== highestRpm) return true;
  return drive === null ? null : drive === "yes";
}

/**
 * The lowest speed at which a shaft runs. A single speed is also the lowest where the drive is fixed or not
 * stated; under a variable drive it says only how fast the shaft can turn.
 *
 * Source: common practice.
 *
 * @param lowestRpm - lowest speed as stated, r/min, or null
 * @param nominalRpm - the single speed as stated, r/min, or null
 * @param drive - the drive's word; null where it is not stated
 * @returns the speed in r/min, or null where no speed is stated
 */
export function lowestRunningSpeed(
  lowestRpm: number | null,
  nominalRpm: number | null,
  drive: Drive,
): LowestRunning | null {
  if (lowestRpm !== null) return { rpm: lowestRpm, bound: "exact" };
  if (nominalRpm === null) return null;
  return { rpm: nominalRpm, bound: drive === "yes" ? "at-most" : "exact" };
}
