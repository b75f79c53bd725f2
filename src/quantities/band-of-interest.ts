import type { Interval } from "../base/index.js";
import { componentFrequencyHz, shaftFrequencyHz } from "./machine-frequencies.js";
import { requireCount, requirePositive } from "./require-number.js";

/** Multiples up to which a component is usually looked at: of the turning, tooth-mesh and blade-pass frequency. */
export const USUAL_MULTIPLES = {
  /** Common practice; sources range from 40 to 70 times the turning frequency. */
  rollingBearing: { lowest: 40, highest: 70 },
  /** Common practice; three harmonics of the mesh with their side bands. */
  toothMesh: { lowest: 3.25, highest: 3.5 },
  /** Common practice; three harmonics. */
  bladePass: { lowest: 3, highest: 3 },
} as const satisfies Record<string, Interval>;

/** What is to be seen on a shaft; absent where the shaft has none, or none of interest. */
export interface ComponentsOfInterest {
  readonly rollingBearing?: boolean;
  readonly gearTeeth?: number;
  readonly blades?: number;
}

/**
 * The highest frequency that matters on a shaft, between the least and the most that usual practice asks for.
 *
 * Source: common practice, see {@link USUAL_MULTIPLES}.
 *
 * @param highestShaftRpm - highest running speed, r/min, above 0
 * @param components - at least one
 * @param multiples - other multiples than the usual ones
 * @returns Hz
 */
export function highestFrequencyOfInterestHz(
  highestShaftRpm: number,
  components: ComponentsOfInterest,
  multiples: Readonly<Record<keyof typeof USUAL_MULTIPLES, Interval>> = USUAL_MULTIPLES,
): Interval {
  const turning = shaftFrequencyHz(highestShaftRpm);
  const { rollingBearing, gearTeeth, blades } = components;
  const wanted: [baseHz: number, multiple: Interval][] = [];
  if (rollingBearing) wanted.push([turning, multiples.rollingBearing]);
  if (gearTeeth !== undefined) {
    requireCount("gearTeeth", gearTeeth, 3);
    wanted.push([gearTeeth * turning, multiples.toothMesh]);
  }
  if (blades !== undefined) {
    requireCount("blades", blades, 1);
    wanted.push([blades * turning, multiples.bladePass]);
  }
  if (wanted.length === 0) throw new RangeError("components must name a bearing, teeth or blades");
  for (const [, multiple] of wanted) {
    requirePositive("lowest multiple", multiple.lowest);
    requirePositive("highest multiple", multiple.highest);
  }
  return {
    lowest: Math.max(...wanted.map(([baseHz, multiple]) => baseHz * multiple.lowest)),
    highest: Math.max(...wanted.map(([baseHz, multiple]) => baseHz * multiple.highest)),
  };
}

/**
 * The lowest frequency that matters on a shaft.
 *
 * Source: common practice: the turning frequency itself, or the cage of a rolling bearing at about 0.4 of it.
 *
 * @param lowestShaftRpm - lowest running speed, r/min, above 0
 * @param order - lowest order of interest: 1 for the turning frequency, about 0.4 for the cage
 * @returns Hz
 */
export function lowestFrequencyOfInterestHz(lowestShaftRpm: number, order = 1): number {
  return componentFrequencyHz(order, lowestShaftRpm);
}
