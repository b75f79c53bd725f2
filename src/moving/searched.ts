import { round12 } from "../base/index.js";
import type { LikePoints } from "../screening/index.js";
import type { LikeJudge } from "./like-judge.js";

/**
 * The values at which something changes for points whose facts are computed from the number, found by trying: between
 * two neighbouring values that come out otherwise, the range is halved down to the last digit.
 *
 * @param values - tried first; what comes and goes between two of them is not found
 */
export function searchedValues(
  like: readonly LikePoints[],
  judge: LikeJudge,
  values: readonly number[],
): ReadonlyMap<LikePoints, readonly number[]> {
  const found = new Map<LikePoints, number[]>(like.map((one) => [one, []]));
  const before = new Map<LikePoints, string>();
  for (const [i, value] of values.entries()) {
    for (const one of like) {
      const said = judge.at(value, one);
      const last = before.get(one);
      before.set(one, said);
      const low = values[i - 1];
      if (low === undefined || last === undefined || last === said) continue;
      found.get(one)?.push(...between(one, judge, [low, last], value));
    }
  }
  return found;
}

/** The two neighbouring numbers of 12 digits between which it changes. */
function between(
  like: LikePoints,
  judge: LikeJudge,
  [from, said]: readonly [number, string],
  to: number,
): readonly number[] {
  let [low, high] = [from, to];
  for (;;) {
    const middle = round12(low + (high - low) / 2);
    if (middle <= low || middle >= high) return [low, high];
    if (judge.at(middle, like) === said) low = middle;
    else high = middle;
  }
}
