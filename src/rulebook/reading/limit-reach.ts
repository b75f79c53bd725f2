import { formatNumber, type Interval } from "../../base/index.js";
import { type FactDefinition, factOf } from "../../facts/index.js";
import { boundSide } from "../book/number-sides.js";
import type { Band, Bound } from "../book/rule.js";
import { below, type Report } from "../text/source.js";

type NumberBand = Exclude<Band, { readonly is: "oneOf" | "noneOf" | "when" }>;

/** Whether a limit is broken by every plausible value or by none; null where it tells values apart. */
type Reach = "always" | "never" | null;

/**
 * Reports a band that every plausible value of the judged fact breaks, or none: a limit that asks nothing, most
 * often because of a slip in a number or its unit. Where two facts are judged, one of them is enough to be asked.
 *
 * @param pointer - of the value beside the name of the band
 */
export function checkReach(band: Band, pointer: string, judged: readonly FactDefinition[], report: Report): void {
  const [first] = judged;
  if (first === undefined || band.is === "when") return;
  const reaches = judged.map((definition) => reachOf(band, definition));
  const [reach] = reaches;
  if (!reach || reaches.some((other) => other !== reach)) return;
  const code = reach === "always" ? "always-broken" : "never-broken";
  if ("choices" in band) {
    const rest = reach === "always" ? "the good ones" : "the bad ones";
    const text = `"${band.is}" names every choice of "${first.id}", so this limit is ${reach} broken; leave out ${rest}`;
    report.atKey(pointer, code, text);
    return;
  }
  const range = rangeInWords(plausibleOf(first), first);
  const which = reach === "always" ? "every" : "no";
  const text = `${which} plausible ${first.name} (${range}) lies ${bandInWords(band, first)}, so this limit is ${reach} broken; check number and unit`;
  report.atValue(band.is === "outside" ? below(pointer, 0) : pointer, code, text);
}

function reachOf(band: Exclude<Band, { readonly is: "when" }>, judged: FactDefinition): Reach {
  if ("choices" in band) {
    const every = (judged.choices ?? []).every((choice) => band.choices.includes(choice));
    return every ? (band.is === "oneOf" ? "always" : "never") : null;
  }
  const value = plausibleOf(judged);
  if (band.is !== "outside") return sideReach(band.is, value, rangeOf(band.bound, judged));
  const sides = [
    sideReach("below", value, rangeOf(band.bounds[0], judged)),
    sideReach("above", value, rangeOf(band.bounds[1], judged)),
  ];
  if (sides.includes("always")) return "always";
  return sides.every((side) => side === "never") ? "never" : null;
}

function sideReach(is: Exclude<NumberBand["is"], "outside">, value: Interval | null, bound: Interval | null): Reach {
  if (!value || !bound) return null;
  switch (is) {
    case "below":
      return value.highest < bound.lowest ? "always" : value.lowest >= bound.highest ? "never" : null;
    case "atOrBelow":
      return value.highest <= bound.lowest ? "always" : value.lowest > bound.highest ? "never" : null;
    case "above":
      return value.lowest > bound.highest ? "always" : value.highest <= bound.lowest ? "never" : null;
    case "atOrAbove":
      return value.lowest >= bound.highest ? "always" : value.highest < bound.lowest ? "never" : null;
  }
}

/** The values a fact can plausibly have; of a derived one, those of the like facts that it is computed from. */
function plausibleOf(definition: FactDefinition): Interval | null {
  if (definition.plausible) return definition.plausible;
  const ranges = (definition.needs ?? []).flatMap((id) => {
    const { dimension, unit, plausible } = factOf(id);
    return plausible && dimension === definition.dimension && unit === definition.unit ? [plausible] : [];
  });
  if (ranges.length === 0) return null;
  return {
    lowest: Math.min(...ranges.map(({ lowest }) => lowest)),
    highest: Math.max(...ranges.map(({ highest }) => highest)),
  };
}

/** What a bound can come to, in the unit of the judged fact. */
function rangeOf(bound: Bound, judged: FactDefinition): Interval | null {
  if (bound.kind === "number") return { lowest: bound.value, highest: bound.value };
  const range = plausibleOf(factOf(bound.fact));
  if (!range) return null;
  const side = boundSide(bound, judged.id);
  const [a, b] = [side.of(range.lowest), side.of(range.highest)];
  return { lowest: Math.min(a, b), highest: Math.max(a, b) };
}

const SIDES: Readonly<Record<Exclude<NumberBand["is"], "outside">, string>> = {
  below: "below",
  above: "above",
  atOrBelow: "at or below",
  atOrAbove: "at or above",
};

function bandInWords(band: NumberBand, judged: FactDefinition): string {
  const words = (bound: Bound): string => rangeInWords(rangeOf(bound, judged), judged);
  if (band.is !== "outside") return `${SIDES[band.is]} ${words(band.bound)}`;
  return `below ${words(band.bounds[0])} or above ${words(band.bounds[1])}`;
}

function rangeInWords(range: Interval | null, { unit = "" }: FactDefinition): string {
  if (!range) return "any bound";
  if (range.lowest === range.highest) return formatNumber(range.lowest, unit);
  return `${formatNumber(range.lowest)} to ${formatNumber(range.highest, unit)}`;
}
