import { type Interval, isSingle } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { intervalOf, known, lackingAmong, rounded, stateOf, unknownFor } from "./deriving.js";

/** Which way a quantity goes as one of its parts grows; a count is widened to whole numbers of at least one. */
export type Way = "rises" | "falls" | "rises-whole" | "falls-whole";

/** Less than this is counted as nothing: an accuracy may carry the lower end of a small number there. */
const LEAST = 1e-9;

/**
 * A quantity above 0 that rises with some of its parts and falls with the others all the way, so that its ends belong to
 * theirs. Parts are above 0 too; one that may be nothing, or has no end, leaves the quantity without the end it gives.
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
  const lacking = lackingAmong(ids, facts, (id) => (intervalFor(id)?.highest ?? 0) >= LEAST);
  if (lacking !== undefined) return unknownFor(lacking, ids, facts);
  const read = ids.map((id) => ({ id, way: parts[id] ?? "rises", ends: intervalFor(id) ?? NOTHING }));
  const rising = read.map(({ way, ends }) => {
    const { lowest, highest } = way.endsWith("whole") ? wholeCount(ends) : ends;
    return way.startsWith("rises") ? { lowest, highest } : { lowest: highest, highest: lowest };
  });
  const ends = {
    lowest: rising.every(({ lowest }) => lowest >= LEAST && Number.isFinite(lowest))
      ? quantity(...rising.map(({ lowest }) => lowest))
      : Number.NEGATIVE_INFINITY,
    highest: rising.every(({ highest }) => highest >= LEAST && Number.isFinite(highest))
      ? quantity(...rising.map(({ highest }) => highest))
      : Number.POSITIVE_INFINITY,
  };
  return known(rounded(ends), uncertainFirst(ids, facts), facts);
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
