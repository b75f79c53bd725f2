import { formatNumber, type Outcome, round12 } from "../../base/index.js";
import type { LimitShown } from "../../screening/index.js";
import { boundInWords } from "../wording/facts.js";
import type { BoundValue, BoundValues } from "./bound-values.js";

type ShownBound = LimitShown["bounds"][number];

/** A band that a line of numbers can show. */
export interface NumberBand {
  readonly outcome: "fail" | "warn";
  readonly is: LimitShown["is"];
  readonly bounds: readonly ShownBound[];
}

/** A limit where one outcome ends and another begins. */
export interface Border {
  /** "30 mm", or the name of the fact that is the limit. */
  readonly words: string;
  /** The value that the rulebook gives it, and what says so; null where the words are the value, or nobody knows. */
  readonly value: { readonly by: string; readonly words: string } | null;
}

/** A stretch of values with one outcome, from one border to the next; null where it has no end. */
export interface Zone {
  readonly outcome: Extract<Outcome, "fail" | "warn" | "pass">;
  readonly from: { readonly border: number; readonly included: boolean } | null;
  readonly to: { readonly border: number; readonly included: boolean } | null;
}

/** What the bands of a limit make of all values, in rising order. */
export interface Zones {
  readonly zones: readonly Zone[];
  readonly borders: readonly Border[];
  /** In which order limits that are not known were drawn, in words; null where there is no doubt. */
  readonly drawnFor: string | null;
}

interface Cut {
  readonly bound: ShownBound;
  readonly number: number | null;
  /** From what fails for being low (0) to what fails for being high (3). */
  readonly rank: number;
}

/**
 * The zones that bands of numbers leave, failing before warning. Limits that are facts are put in order by the values
 * that the rulebook has for them, else as they are meant: what fails for being low lies lowest.
 *
 * @param boundValue - what the rulebook has for a fact
 */
export function zonesOf(bands: readonly NumberBand[], unit: string | null, boundValue: BoundValues): Zones {
  const knownOf = (bound: ShownBound): BoundValue | null => scaled(bound, boundValue);
  const numberOf = (bound: ShownBound): number | null => {
    const value = knownOf(bound);
    return bound.value ?? (value !== null && value.lowest === value.highest ? value.lowest : null);
  };
  const nameOf = (bound: ShownBound): string => boundInWords(bound, unit).replace(/^the /, "");
  const { cuts, drawnFor } = inOrder(bands, numberOf, nameOf);
  const at = (bound: ShownBound): number => 2 * cuts.findIndex((cut) => isSame(cut.bound, bound)) + 1;
  const outcomeAt = (place: number): Zone["outcome"] => {
    const held = bands.filter((band) => holds(band, place, at)).map(({ outcome }) => outcome);
    return held.includes("fail") ? "fail" : held.includes("warn") ? "warn" : "pass";
  };
  const border = ({ bound }: Cut): Border => {
    const value = knownOf(bound);
    return { words: nameOf(bound), value: value === null ? null : { by: value.by, words: rangeInWords(value, unit) } };
  };
  const zones = mergedZones(cuts.length, outcomeAt);
  // A limit behind a stricter one, or met twice by number, is the end of no zone.
  const ends = [...new Set(zones.flatMap(({ from, to }) => [from?.border ?? -1, to?.border ?? -1]))];
  const kept = cuts.map((_, index) => index).filter((index) => ends.includes(index));
  const anew = (end: Zone["from"]): Zone["from"] =>
    end === null ? null : { ...end, border: kept.indexOf(end.border) };
  return {
    zones: zones.map((zone) => ({ ...zone, from: anew(zone.from), to: anew(zone.to) })),
    borders: cuts.filter((_, index) => kept.includes(index)).map(border),
    drawnFor,
  };
}

/** What a fact, scaled and shifted as the limit is, can be. */
function scaled({ value, fact, times, plus }: ShownBound, boundValue: BoundValues): BoundValue | null {
  const own = value !== null || fact === null ? null : boundValue(fact);
  if (own === null) return null;
  const ends = [own.lowest, own.highest].map((end) => round12(end * times + plus));
  return { by: own.by, lowest: Math.min(...ends), highest: Math.max(...ends) };
}

function rangeInWords({ lowest, highest }: BoundValue, unit: string | null): string {
  return lowest === highest ? formatNumber(lowest, unit) : `${formatNumber(lowest)} to ${formatNumber(highest, unit)}`;
}

/** Whether a band holds at a place: borders are odd places, what lies between them even ones. */
function holds({ is, bounds }: NumberBand, place: number, at: (bound: ShownBound) => number): boolean {
  const [low = 0, high = low] = bounds.map(at);
  if (is === "below") return place < low;
  if (is === "atOrBelow") return place <= low;
  if (is === "above") return place > low;
  if (is === "atOrAbove") return place >= low;
  return place < low || place > high;
}

function mergedZones(cuts: number, outcomeAt: (place: number) => Zone["outcome"]): readonly Zone[] {
  const zones: Zone[] = [];
  let start = 0;
  for (let place = 1; place <= 2 * cuts + 1; place++) {
    const outcome = outcomeAt(start);
    if (place <= 2 * cuts && outcomeAt(place) === outcome) continue;
    const last = place - 1;
    zones.push({ outcome, from: start === 0 ? null : endAt(start, -1), to: last === 2 * cuts ? null : endAt(last, 1) });
    start = place;
  }
  return zones;
}

/** The end of a zone at a place: a border itself is included, what lies beside it ends at the border without it. */
function endAt(place: number, outwards: -1 | 1): NonNullable<Zone["from"]> {
  const isBorder = place % 2 === 1;
  return { border: ((isBorder ? place : place + outwards) - 1) / 2, included: isBorder };
}

function inOrder(
  bands: readonly NumberBand[],
  numberOf: (bound: ShownBound) => number | null,
  nameOf: (bound: ShownBound) => string,
): { readonly cuts: readonly Cut[]; readonly drawnFor: string | null } {
  const cuts: Cut[] = [];
  for (const band of bands) {
    for (const [index, bound] of band.bounds.entries()) {
      if (cuts.some((cut) => isSame(cut.bound, bound))) continue;
      const isLow = band.is === "below" || band.is === "atOrBelow" || (band.is === "outside" && index === 0);
      const rank = isLow ? (band.outcome === "fail" ? 0 : 1) : band.outcome === "warn" ? 2 : 3;
      cuts.push({ bound, number: numberOf(bound), rank });
    }
  }
  if (cuts.every(({ number }) => number !== null)) {
    return { cuts: cuts.sort((a, b) => (a.number ?? 0) - (b.number ?? 0) || a.rank - b.rank), drawnFor: null };
  }
  const [first] = cuts;
  if (cuts.every(({ bound }) => bound.fact !== null && bound.fact === first?.bound.fact)) {
    const sorted = cuts.sort((a, b) => a.bound.times - b.bound.times || a.bound.plus - b.bound.plus);
    return { cuts: sorted, drawnFor: null };
  }
  const names = cuts.sort((a, b) => a.rank - b.rank).map(({ bound }) => nameOf(bound));
  return { cuts, drawnFor: bands.length < 2 ? null : `drawn for the case that ${names.join(" < ")}` };
}

function isSame(a: ShownBound, b: ShownBound): boolean {
  return a.value === b.value && a.fact === b.fact && a.times === b.times && a.plus === b.plus;
}
