import { type Interval, round12 } from "../../base/index.js";
import { factOf } from "../../facts/index.js";
import { type Look, numberIn } from "../book/check.js";
import type { LimitSpoken, Margin } from "../book/judgement.js";
import type { LimitEntry } from "../book/rule.js";
import type { ReadyBand } from "./band-check.js";

/** The good side of a bound: how far a value may go before the band is broken. */
type Side = "low" | "high";

function sidesOf(ready: ReadyBand): readonly Side[] {
  switch (ready.band.is) {
    case "outside":
      return ["low", "high"];
    case "below":
    case "atOrBelow":
      return ["low"];
    case "above":
    case "atOrAbove":
      return ["high"];
    default:
      return [];
  }
}

/** The strictest number that the bound can be; null while it is unknown or has no end there. */
function strictest(bound: Interval | null, side: Side): number | null {
  const end = side === "low" ? bound?.highest : bound?.lowest;
  return end !== undefined && Number.isFinite(end) ? end : null;
}

/** The limit as a finding shows it. */
export function showLimit(ready: ReadyBand, judged: string | null, entry: LimitEntry, look: Look): LimitSpoken {
  const { band, sides } = ready;
  const fact = sides.find((side) => side.fact !== null)?.fact ?? null;
  return {
    is: band.is,
    value: shownValue(ready, look),
    unit: sides.length > 0 && judged !== null ? (factOf(judged).unit ?? null) : null,
    from: entry.from,
    fact,
    origin: originOf(ready, fact, look),
    cites: entry.cites,
  };
}

function shownValue(ready: ReadyBand, look: Look): LimitSpoken["value"] {
  const { band } = ready;
  if (band.is === "oneOf" || band.is === "noneOf") return band.choices;
  const values = sidesOf(ready).map((side, index) => strictest(ready.sides[index]?.read(look) ?? null, side));
  const [first = null, second = null] = values;
  if (values.length < 2) return first;
  return first === null || second === null ? null : [first, second];
}

function originOf(ready: ReadyBand, fact: string | null, look: Look): LimitSpoken["origin"] {
  const { file, line } = ready.band.at;
  if (fact === null) return { file, line };
  const { source } = factOf(fact);
  const { origin } = look(fact);
  if (source === "table" && origin.kind === "derived") return origin.at ?? { file, line };
  return source === "model" && origin.kind === "statement" ? { file: origin.file, line: origin.line } : { file, line };
}

/** How far the worst end of the judged interval lies on the good side of a bound, with the bound. */
interface Distance {
  readonly ready: ReadyBand;
  readonly distance: number;
  readonly bound: number;
}

/** The nearest of some bands, as the worst end of the judged fact sees them; null where no distance is known. */
function nearest(bands: readonly ReadyBand[], judged: string | null, look: Look): Distance | null {
  if (judged === null) return null;
  let best: Distance | null = null;
  for (const ready of bands) {
    const distance = distanceTo(ready, judged, look);
    if (distance && (best === null || distance.distance < best.distance)) best = distance;
  }
  return best;
}

function distanceTo(ready: ReadyBand, judged: string, look: Look): Distance | null {
  const sides = sidesOf(ready);
  const value = sides.length > 0 ? numberIn(look, judged) : null;
  if (value === null) return null;
  let best: Distance | null = null;
  for (const [index, side] of sides.entries()) {
    const bound = strictest(ready.sides[index]?.read(look) ?? null, side);
    if (bound === null) return null;
    const distance = side === "low" ? value.lowest - bound : bound - value.highest;
    if (!Number.isFinite(distance)) return null;
    if (best === null || distance < best.distance) best = { ready, distance, bound };
  }
  return best;
}

/** The band nearest to being broken; the first one where no distance is known; null where there is none. */
export function nearestBand(bands: readonly ReadyBand[], judged: string | null, look: Look): ReadyBand | null {
  return nearest(bands, judged, look)?.ready ?? bands[0] ?? null;
}

/** Distance to the nearest failing limit; null where it is not known or not a number. */
export function marginOf(failing: readonly ReadyBand[], judged: string | null, look: Look): Margin | null {
  const near = nearest(failing, judged, look);
  if (near === null || judged === null) return null;
  const value = roundDifference(near.distance, near.bound);
  const hasNoFraction = near.bound === 0 || factOf(judged).dimension === "temperature";
  return { value, fraction: hasNoFraction ? null : round12(value / Math.abs(near.bound)) };
}

/**
 * A difference to the 12th digit of the number it was taken from: 28.9 less 28.8 is 0.1. One so small that nothing
 * would be left of it stays, so that its sign still tells the good side.
 */
function roundDifference(difference: number, from: number): number {
  const digit = 10 ** (Math.floor(Math.log10(Math.max(Math.abs(from), Math.abs(difference), Number.MIN_VALUE))) - 11);
  const rounded = round12(Math.round(difference / digit) * digit);
  return rounded === 0 || !Number.isFinite(rounded) ? round12(difference) : rounded;
}
