import type { Interval } from "../../base/index.js";

/** What is on the threads of a bolt when it is tightened; "locked" is an adhesive still wet. */
export type ThreadState = "dry" | "oiled" | "greased" | "locked";

/** What bolt or tapped hole is made of, as far as friction goes. */
export type BoltMaterial = "carbon-steel" | "austenitic-stainless";

/**
 * Coefficients of friction in the thread and under the head, by material and state.
 *
 * Source: the friction classes of VDI 2230 part 1 as two pages reprint their table (read 2026-11-26): class B for oil and
 * grease, C for bare steel as delivered and for adhesive, D for oiled austenitic steel, C for pastes on it, E
 * (0.30 and above) for dry austenitic steel, whose upper end of 0.50 is from a maker of stainless fasteners. The
 * table has no adhesive on austenitic steel. Adhesive still wet can also lubricate: see the lowest nut factor, which amounts
 * to a friction of about 0.10; a worst case takes the wider of the two.
 */
export const FRICTION: Readonly<Record<BoltMaterial, Readonly<Record<ThreadState, Interval | null>>>> = {
  "carbon-steel": {
    dry: { lowest: 0.14, highest: 0.24 },
    oiled: { lowest: 0.08, highest: 0.16 },
    greased: { lowest: 0.08, highest: 0.16 },
    locked: { lowest: 0.14, highest: 0.24 },
  },
  "austenitic-stainless": {
    dry: { lowest: 0.3, highest: 0.5 },
    oiled: { lowest: 0.2, highest: 0.35 },
    greased: { lowest: 0.14, highest: 0.24 },
    locked: null,
  },
};

/**
 * Nut factors K of T = K d F for carbon steel.
 *
 * Source: dry, oiled and greased (anti-seize) from a published note on steel on steel; locked spans 0.14 of another
 * note to the K that friction 0.24 gives. Sources differ: a table of finishes has 0.18 to 0.27 dry, 0.10 to 0.26 with
 * machine oil (read 2026-11-26).
 */
export const NUT_FACTORS: Readonly<Record<ThreadState, Interval>> = {
  dry: { lowest: 0.2, highest: 0.25 },
  oiled: { lowest: 0.15, highest: 0.2 },
  greased: { lowest: 0.12, highest: 0.16 },
  locked: { lowest: 0.14, highest: 0.31 },
};
