import { type Interval, isSingle } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { intervalOf, known, lackingAmong, rounded, stateOf, unknownFor } from "./deriving.js";

/** Which way a quantity goes as one of its parts grows; a count is widened to whole numbers of at least one. */
export type Way = "rises" | "falls" | "rises-whole" | "falls-whole";

/** Less than this is counted as nothing: an accuracy may carry the lower end of a small number there. */
const LEAST = 1e-12;

/**
 * A quantity that rises with some of its parts, is nothing where one of those is, and falls with the others all the way,
 * so that its ends belong to theirs. A falling part that may be nothing, or any part without an end, leaves the quantity
 * without the end it gives.
 *
 * @param parts - by id of a fact, in the order in which the quantity takes them
 * @returns unknown for the sake of a part that is not known; known facts that are uncertain come first in its origin
 */
export function monotone(
  facts: Facts,
  parts: Readonly<Record<string, Way>>,
  quantity: (...values: number[]) => number,
): FactState {
  const ids = Object.keys(parts);
  const intervalFor = (id: string): Interval | null => intervalOf(stateOf(facts, id));
  const isOfUse = (id: string): boolean => {
    const highest = intervalFor(id)?.highest ?? Number.NEGATIVE_INFINITY;
    return parts[id]?.startsWith("rises") ? highest >= 0 : highest >= LEAST;
  };
  const lacking = lackingAmong(ids, facts, isOfUse);
  if (lacking !== undefined) return unknownFor(lacking, ids, facts);
  const read = ids.map((id) => ({ id, way: parts[id] ?? "rises", ends: intervalFor(id) ?? NOTHING }));
  const corners = read.map(({ way, ends }) => {
    const { lowest, highest } = way.endsWith("whole") ? wholeCount(ends) : ends;
    return way.startsWith("rises") ? { least: lowest, most: highest } : { least: highest, most: lowest };
  });
  const rising = read.map(({ way }) => way.startsWith("rises"));
  const ends = {
    lowest: at(
      corners.map(({ least }) => least),
      rising,
      Number.NEGATIVE_INFINITY,
      quantity,
    ),
    highest: at(
      corners.map(({ most }) => most),
      rising,
      Number.POSITIVE_INFINITY,
      quantity,
    ),
  };
  return known(rounded(ends), uncertainFirst(ids, facts), facts);
}

/** The quantity at one corner of its parts; without an end where one of them has none there. */
function at(
  values: readonly number[],
  rising: readonly boolean[],
  endless: number,
  quantity: (...values: number[]) => number,
): number {
  if (values.some((value, i) => !Number.isFinite(value) || value < (rising[i] ? 0 : LEAST))) return endless;
  return values.some((value) => value < LEAST) ? 0 : quantity(...values);
}

const NOTHING: Interval = { lowest: 0, highest: 0 };

/** What would settle a comparison is asked for first: what is uncertain, before what is exact. */
export function uncertainFirst(ids: readonly string[], facts: Facts): readonly string[] {
  const isExact = (id: string): boolean => {
    const interval = intervalOf(stateOf(facts, id));
    return interval === null ? stateOf(facts, id).known : isSingle(interval);
  };
  return [...ids.filter((id) => !isExact(id)), ...ids.filter(isExact)];
}

/** A count stated with an accuracy, widened to whole numbers of at least one. */
export function wholeCount({ lowest, highest }: Interval): Interval {
  return { lowest: Math.max(1, Math.floor(lowest)), highest: Math.max(1, Math.ceil(highest)) };
}
