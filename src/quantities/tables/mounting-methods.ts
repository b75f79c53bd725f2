import type { Interval } from "../../base/index.js";

/** How a sensor can be held, also for a trial; not the choices of the survey, which names permanent methods. */
export type HoldingMethod = "stud" | "adhesive" | "flat-magnet" | "two-pole-magnet" | "hand-probe";

/**
 * Up to which frequency a method is usually said to be good, Hz, from the most cautious to the boldest author.
 * Common practice and from memory: authors differ by a factor of two and more, so each row spans one. Measured or computed
 * resonances always come first.
 */
export const USUAL_UPPER_FREQUENCY_HZ: Readonly<Record<HoldingMethod, Interval>> = {
  stud: { lowest: 7000, highest: 15_000 },
  adhesive: { lowest: 5000, highest: 10_000 },
  "flat-magnet": { lowest: 3000, highest: 7000 },
  "two-pole-magnet": { lowest: 1500, highest: 3000 },
  "hand-probe": { lowest: 500, highest: 1500 },
};
