import type { LikePoints } from "../screening/index.js";
import type { Counted, LikeJudge, SaidKey } from "./like-judge.js";

/** All values of the number between two others, at which the same comes out. */
export interface Stretch {
  readonly from: number;
  /** Whether the first value itself belongs to it. */
  readonly fromIncluded: boolean;
  readonly to: number;
  readonly toIncluded: boolean;
  readonly counted: Counted;
}

/** Points that are alike, with the values of the number at which something may change for them. */
export interface LikeMeeting {
  readonly like: LikePoints;
  readonly meets: readonly number[];
}

/**
 * Goes through all values of the number from the lowest to the highest and tells where a count moves. Between two
 * neighbouring values at which some point meets the limit nothing changes, so that each such value is looked at, and
 * one value between each two; only points that meet the limit there are judged anew.
 */
export function stretchesOf(
  meetings: readonly LikeMeeting[],
  judge: LikeJudge,
  [from, to]: readonly [number, number],
): readonly Stretch[] {
  const met = new Map<number, LikePoints[]>();
  for (const { like, meets } of meetings) {
    for (const value of new Set(meets)) {
      if (value <= from || value > to) continue;
      const there = met.get(value) ?? [];
      there.push(like);
      met.set(value, there);
    }
  }
  const all = meetings.map(({ like }) => like);
  const values = [...new Set([from, ...met.keys(), to])].sort((a, b) => a - b);
  const counting = new Counting(judge);
  const stretches: Stretch[] = [];
  for (const [i, value] of values.entries()) {
    const next = values[i + 1];
    const moving = i === 0 ? all : (met.get(value) ?? []);
    counting.judge(moving, value);
    add(stretches, { from: value, fromIncluded: true, to: value, toIncluded: true, counted: counting.now() });
    if (next === undefined) break;
    counting.judge(moving, value + (next - value) / 2);
    add(stretches, { from: value, fromIncluded: false, to: next, toIncluded: false, counted: counting.now() });
  }
  return stretches;
}

function add(stretches: Stretch[], next: Stretch): void {
  const last = stretches.at(-1);
  if (last === undefined || !isSameCount(last.counted, next.counted)) stretches.push(next);
  else stretches[stretches.length - 1] = { ...last, to: next.to, toIncluded: next.toIncluded };
}

/** Whether all counts are the same. */
export function isSameCount(one: Counted, other: Counted): boolean {
  if (one === other) return true;
  const [a, b] = [one.rule, other.rule];
  return (
    a.pass === b.pass &&
    a.warn === b.warn &&
    a.fail === b.fail &&
    a.undecided === b.undecided &&
    a.notApplicable === b.notApplicable &&
    a.notAsked === b.notAsked &&
    one.points.pass === other.points.pass &&
    one.points.warn === other.points.warn &&
    one.points.fail === other.points.fail
  );
}

/** What all points come to, kept while some of them are judged anew. */
class Counting {
  readonly #judge: LikeJudge;
  readonly #said = new Map<LikePoints, SaidKey>();
  readonly #points = new Map<SaidKey, number>();
  #counted: Counted | null = null;

  constructor(judge: LikeJudge) {
    this.#judge = judge;
  }

  judge(moving: readonly LikePoints[], value: number): void {
    for (const like of moving) {
      const before = this.#said.get(like);
      const after = this.#judge.at(value, like);
      if (before === after) continue;
      if (before !== undefined) this.#add(before, -like.points);
      this.#add(after, like.points);
      this.#said.set(like, after);
      this.#counted = null;
    }
  }

  now(): Counted {
    this.#counted ??= this.#judge.count(this.#points);
    return this.#counted;
  }

  #add(key: SaidKey, points: number): void {
    this.#points.set(key, (this.#points.get(key) ?? 0) + points);
  }
}
