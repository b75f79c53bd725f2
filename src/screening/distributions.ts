import { bisectRight, nice, ticks } from "d3-array";
import type { Outcome } from "../base/index.js";
import { type Facts, findFact } from "../facts/index.js";
import type { Margin } from "../rulebook/index.js";
import type { Bin, Distributions, MarginSpread, Spread } from "./summary-parts.js";

const SPEED = "lowest_running_speed";
/** About so many bins of speeds. */
const SPEED_BINS = 20;
/** Speeds outside this share of the points lie in the open bins at the ends: one turbine must not squeeze all others. */
const SPEEDS_AT_END = 0.01;

/** Between the bins of margins, the same for all rules, so that they can be compared: from minus the limit to twice it. */
const FRACTIONS = ticks(-1, 1, 20);
/** Of a temperature no fraction has a meaning: kelvin between the limit and the value. */
const KELVINS = ticks(-50, 50, 20);

/** Margins of one rule, counted while points pass by; cheap, since every judgement comes here. */
export class MarginCounts {
  #fractions: Uint32Array | null = null;
  #values: Uint32Array | null = null;
  #without = 0;
  counts: MarginSpread["counts"] = "points";

  add(outcome: Outcome, margin: Margin | null): void {
    if (outcome === "not-applicable" || outcome === "no-limit-in-force") return;
    if (margin === null || outcome === "undecided") {
      this.#without += 1;
      return;
    }
    const { value, fraction } = margin;
    if (fraction === null) {
      this.#values ??= new Uint32Array(KELVINS.length + 1);
      count(this.#values, KELVINS, value, outcome);
    } else {
      this.#fractions ??= new Uint32Array(FRACTIONS.length + 1);
      count(this.#fractions, FRACTIONS, fraction, outcome);
    }
  }

  /** @param judged - the fact that the rule judges; null margins for a rule that decided nothing */
  spread(rule: string, judged: string | null): MarginSpread | null {
    const fact = judged === null ? undefined : findFact(judged);
    // A limit of 0 leaves no fraction either; the bins are those of temperatures alone.
    const isTemperature = fact?.dimension === "temperature";
    const inBins = isTemperature ? this.#values : this.#fractions;
    if (inBins === null) return null;
    const bins = withoutEmptyEnds(binsOf(isTemperature ? KELVINS : FRACTIONS, inBins));
    const known = inBins.reduce((sum, points) => sum + points, 0);
    return { rule, counts: this.counts, unit: isTemperature ? "K" : null, known, notKnown: this.#without, bins };
  }
}

/** What lies on the limit and fails stands on the bad side of it. */
function count(counts: Uint32Array, edges: readonly number[], value: number, outcome: Outcome): void {
  const place = outcome === "fail" && value >= 0 ? edges.indexOf(0) : bisectRight(edges, value);
  counts[place] = (counts[place] ?? 0) + 1;
}

/** Lowest speeds of points, counted while they pass by. */
export class SpeedCounts {
  readonly #points = new Map<number, number>();
  #notKnown = 0;

  add(facts: Facts): void {
    const state = facts.get(SPEED);
    const lowest = state?.known && typeof state.value === "object" ? state.value.lowest : Number.NaN;
    if (Number.isFinite(lowest)) {
      // A survey of very many different speeds is still to be kept in little room; bins are never narrower.
      const speed = Math.floor(lowest);
      this.#points.set(speed, (this.#points.get(speed) ?? 0) + 1);
    } else this.#notKnown += 1;
  }

  spread(): Spread {
    const unit = findFact(SPEED)?.unit ?? null;
    const sorted = [...this.#points].sort(([a], [b]) => a - b);
    const known = sorted.reduce((sum, [, points]) => sum + points, 0);
    if (known === 0) return { unit, known, notKnown: this.#notKnown, bins: [] };
    const edges = edgesOf(speedAt(sorted, known * SPEEDS_AT_END), speedAt(sorted, known * (1 - SPEEDS_AT_END)));
    const counts = new Uint32Array(edges.length + 1);
    for (const [speed, points] of sorted) {
      const place = bisectRight(edges, speed);
      counts[place] = (counts[place] ?? 0) + points;
    }
    return { unit, known, notKnown: this.#notKnown, bins: withoutEmptyEnds(binsOf(edges, counts)) };
  }
}

/** The speed of the point at a place in the order of speeds. */
function speedAt(sorted: readonly (readonly [number, number])[], place: number): number {
  let seen = 0;
  for (const [speed, points] of sorted) {
    seen += points;
    if (seen > place) return speed;
  }
  return sorted.at(-1)?.[0] ?? 0;
}

/** Round numbers from below the lowest to above the highest, no closer than 1. */
function edgesOf(lowest: number, highest: number): readonly number[] {
  const bins = Math.min(SPEED_BINS, Math.max(1, highest - lowest));
  const [from, to] = nice(lowest, highest + 1, bins);
  return ticks(from, to, bins);
}

function binsOf(edges: readonly number[], counts: Uint32Array): readonly Bin[] {
  return Array.from(counts, (points, place) => ({
    from: edges[place - 1] ?? null,
    to: edges[place] ?? null,
    points,
  }));
}

/** Bins at either end that nothing lies in say nothing; those between others do. */
function withoutEmptyEnds(bins: readonly Bin[]): readonly Bin[] {
  const first = bins.findIndex(({ points }) => points > 0);
  const last = bins.findLastIndex(({ points }) => points > 0);
  return first < 0 ? [] : bins.slice(first, last + 1);
}

/** How speeds and margins are spread, counted while points are judged. */
export function distributionsOf(
  speeds: SpeedCounts,
  margins: Iterable<readonly [string, MarginCounts]>,
  judgedBy: (rule: string) => string | null,
): Distributions {
  return {
    lowestSpeed: speeds.spread(),
    margins: [...margins].flatMap(([rule, counts]) => counts.spread(rule, judgedBy(rule)) ?? []),
  };
}
