import { factOf, findFact, isNumeric } from "../../facts/index.js";
import type { Band, Bound, Condition, LimitEntry } from "../../rulebook/index.js";
import type { NumberBand } from "./bands.js";

/** A band of numbers with the fact that it speaks of; null where it speaks of the judged one. */
interface BandOfFact {
  readonly fact: string | null;
  readonly band: NumberBand;
}

/** The bands of a limit that a line of numbers can show, all of one fact. */
export interface BandsOnLine {
  /** What the line is of, where it is not what the rule judges. */
  readonly fact: string | null;
  readonly bands: readonly NumberBand[];
  /** The limit has other bands, too. */
  readonly hasMore: boolean;
}

/**
 * The bands of numbers of a limit: those of the judged facts, and free conditions that are no more than one comparison
 * of the same fact with a limit. Where nothing is judged, the first compared fact is the one.
 */
export function bandsOnLine(limit: LimitEntry, judged: readonly string[]): BandsOnLine | null {
  const all = [
    ...limit.fail.map((band) => bandOf(band, "fail", judged)),
    ...limit.warn.map((band) => bandOf(band, "warn", judged)),
  ];
  const found = all.filter((one) => one !== null);
  const [first] = found;
  if (first === undefined) return null;
  const own = found.filter(({ fact }) => fact === first.fact);
  return { fact: first.fact, bands: own.map(({ band }) => band), hasMore: own.length < all.length };
}

function bandOf(band: Band, outcome: "fail" | "warn", judged: readonly string[]): BandOfFact | null {
  if (band.is === "when") return compared(band.condition, outcome, judged);
  const bounds = "bound" in band ? [band.bound] : "bounds" in band ? band.bounds : [];
  if (bounds.length === 0) return null;
  return { fact: null, band: { outcome, is: band.is, bounds: bounds.map(shownBound) } };
}

const COMPARISONS: Readonly<Record<string, NumberBand["is"]>> = {
  lessThan: "below",
  lessThanInclusive: "atOrBelow",
  greaterThan: "above",
  greaterThanInclusive: "atOrAbove",
};

function compared(condition: Condition, outcome: "fail" | "warn", judged: readonly string[]): BandOfFact | null {
  if (condition.kind !== "comparison" || !isNumeric(factOf(condition.fact))) return null;
  const { fact, operator, value } = condition;
  const is = COMPARISONS[operator];
  if (is === undefined || (judged.length > 0 && !judged.includes(fact))) return null;
  if (typeof value === "number")
    return { fact: ownFact(fact, judged), band: { outcome, is, bounds: [numberBound(value)] } };
  if (typeof value !== "object" || !("fact" in value)) return null;
  const bound = { value: null, fact: value.fact, times: 1, plus: 0 };
  // Both sides of a comparison hold numbers of one unit, or there is no line for them.
  if (findFact(value.fact)?.unit !== findFact(fact)?.unit) return null;
  return { fact: ownFact(fact, judged), band: { outcome, is, bounds: [bound] } };
}

function ownFact(fact: string, judged: readonly string[]): string | null {
  return judged.length === 0 ? fact : null;
}

function shownBound(bound: Bound): NumberBand["bounds"][number] {
  if (bound.kind === "number") return numberBound(bound.value);
  return { value: null, fact: bound.fact, times: bound.times, plus: bound.plus };
}

function numberBound(value: number): NumberBand["bounds"][number] {
  return { value, fact: null, times: 1, plus: 0 };
}
