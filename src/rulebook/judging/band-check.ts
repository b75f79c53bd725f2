import { anyOf, type Interval, isAtOrBelow, isBelow, type Truth } from "../../base/index.js";
import { type Check, joinedCheck, type Look, leafCheck, numberIn } from "../book/check.js";
import { boundSide, type NumberSide } from "../book/number-sides.js";
import type { Band } from "../book/rule.js";
import { conditionCheck, membershipCheck, type NamedConditions } from "./condition-check.js";

/** A band made ready: the check, and its bounds where it has any. */
export interface ReadyBand {
  readonly band: Band;
  readonly check: Check;
  /** One bound, two for `outside`, none for choices and conditions. */
  readonly sides: readonly NumberSide[];
}

/**
 * Makes a band ready for the judged fact of a stage.
 *
 * @throws RangeError for a band that needs a judged fact where there is none; loading has refused that
 */
export function readyBand(band: Band, judged: string | null, named: NamedConditions): ReadyBand {
  if (band.is === "when") return { band, check: conditionCheck(band.condition, named), sides: [] };
  if (judged === null) throw new RangeError(`the band "${band.is}" needs a judged fact`);
  if ("choices" in band) {
    return { band, check: membershipCheck(judged, band.choices, band.is === "oneOf"), sides: [] };
  }
  if (band.is === "outside") {
    const [low, high] = [boundSide(band.bounds[0], judged), boundSide(band.bounds[1], judged)];
    const checks = [sideCheck(judged, low, BREAKS.below), sideCheck(judged, high, BREAKS.above)];
    return { band, check: joinedCheck(checks, anyOf), sides: [low, high] };
  }
  const side = boundSide(band.bound, judged);
  return { band, check: sideCheck(judged, side, BREAKS[band.is]), sides: [side] };
}

type Breaks = (value: Interval, bound: Interval) => Truth;

const BREAKS: Readonly<Record<"below" | "above" | "atOrBelow" | "atOrAbove", Breaks>> = {
  below: isBelow,
  above: (value, bound) => isBelow(bound, value),
  atOrBelow: isAtOrBelow,
  atOrAbove: (value, bound) => isAtOrBelow(bound, value),
};

function sideCheck(judged: string, side: NumberSide, breaks: Breaks): Check {
  const facts = side.fact === null ? [judged] : [judged, side.fact];
  return leafCheck(facts, (look: Look) => {
    const value = numberIn(look, judged);
    const bound = side.read(look);
    return value === null || bound === null ? null : breaks(value, bound);
  });
}
