import { type Interval, isSingle, round12 } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { Steps } from "../../quantities/index.js";

/** Values to one side of the present one, the nearest first. */
export interface Ladder {
  readonly count: number;
  at(index: number): number;
}

const NONE: Ladder = { count: 0, at: () => Number.NaN };

/**
 * The values above and below a number that a fact can be changed to.
 *
 * @param present - what it is now; on a side where it has no end there is nothing to count from
 */
export function laddersOf(
  steps: Extract<Steps, { readonly by: "step" | "sizes" }>,
  { plausible }: FactDefinition,
  present: Interval,
): { readonly more: Ladder; readonly less: Ladder } {
  if (steps.by === "sizes") {
    const sizes = seriesOf(steps.series, present);
    return {
      more: listed(sizes.filter((size) => size > present.highest)),
      less: listed(sizes.filter((size) => size < present.lowest).reverse()),
    };
  }
  if (!plausible) return { more: NONE, less: NONE };
  const { step } = steps;
  // Divided, not multiplied: 3 × 0.1 is not 0.3, and 3 / 10 is.
  const parts = Math.round(1 / step);
  const value = (index: number): number => (step < 1 ? index / parts : index * step);
  return { more: above(), less: below() };

  function above(): Ladder {
    if (!Number.isFinite(present.highest)) return NONE;
    let first = Math.max(Math.floor(present.highest / step), Math.floor((plausible?.lowest ?? 0) / step));
    while (value(first) <= present.highest || value(first) < (plausible?.lowest ?? 0)) first += 1;
    const last = Math.floor(round12((plausible?.highest ?? 0) / step));
    return { count: Math.max(0, last - first + 1), at: (index) => value(first + index) };
  }

  function below(): Ladder {
    if (!Number.isFinite(present.lowest)) return NONE;
    let first = Math.min(Math.ceil(present.lowest / step), Math.ceil((plausible?.highest ?? 0) / step));
    while (value(first) >= present.lowest || value(first) > (plausible?.highest ?? 0)) first -= 1;
    const last = Math.ceil(round12((plausible?.lowest ?? 0) / step));
    return { count: Math.max(0, first - last + 1), at: (index) => value(first - index) };
  }
}

function listed(values: readonly number[]): Ladder {
  return { count: values.length, at: (index) => values[index] ?? Number.NaN };
}

/** A size that stands in a series is changed within it: who wrote a wire gauge buys the next one. */
function seriesOf(series: readonly (readonly number[])[], present: Interval): readonly number[] {
  const own = series.find((sizes) => isSingle(present) && sizes.includes(present.lowest));
  return own ?? series[0] ?? [];
}
