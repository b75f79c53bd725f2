import { isOpen, type Verdict } from "../base/index.js";
import type { PointRecord, Survey } from "../records/index.js";
import type { GroupBook } from "./groups/group-book.js";
import type { ScreeningInput } from "./input.js";
import type { ReadyRule } from "./judge-point.js";
import type { PointOnItsWay } from "./point-facts.js";
import type { PointResult, PointWithFacts, ResultHead, Screening, Summary } from "./result.js";
import { Run } from "./run.js";
import { Tally } from "./tally.js";

/**
 * Screens the points of all surveys with one rulebook. Points are judged while they are iterated.
 *
 * @throws RangeError if the rulebook has no such set
 * @throws UnclearDeviations if it is not clear what a deviation speaks of
 */
export function screen(input: ScreeningInput): Screening {
  const { rulebook, options } = input;
  const run = new Run(input);
  const head = run.head();
  let done = false;
  // Every pass over the points gives the same: they are counted in the first that comes to its end.
  let summary: Summary | null = null;
  function* judged(): IterableIterator<PointWithFacts> {
    const tally = summary === null ? new Tally(head.rules) : null;
    done = false;
    for (const point of run.points()) yield { point: run.judge(point, tally), facts: point.facts };
    if (tally !== null) run.countGroups(tally);
    const problems = head.surveys.reduce((sum, survey) => sum + survey.problems.length, 0);
    summary ??= tally?.summary(problems, run.classes.counts()) ?? null;
    done = true;
  }
  return {
    head,
    points: function* () {
      for (const { point } of judged()) yield point;
    },
    pointsWithFacts: judged,
    summary: () => {
      if (done && summary !== null) return summary;
      throw new Error(`the points of this run (${rulebook.name}, ${options.set}) are not all judged yet`);
    },
  };
}

/** The points of a run with all their facts, its groups and its rules; the points are not judged. */
export function factsOfRun(input: ScreeningInput): {
  readonly points: Iterable<PointOnItsWay>;
  readonly groups: GroupBook;
  readonly rules: readonly ReadyRule[];
} {
  const run = new Run(input);
  run.gather();
  return { points: run.points(), groups: run.groups, rules: run.rules };
}

/** Judges the points of a run one by one, in any order. */
export interface PointJudge {
  readonly head: ResultHead;
  /** @param survey - the survey of the run that the record stands in */
  judge(record: PointRecord, survey: Survey): PointResult;
  /** Which rules are asked of the point, by their ids. */
  asks(record: PointRecord, survey: Survey): (rule: string) => boolean;
}

/**
 * The same run as `screen` makes, for comparing it with another one point by point: nothing is counted.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function pointJudge(input: ScreeningInput): PointJudge {
  const run = new Run(input);
  const head = run.head();
  return {
    head,
    judge: (record, survey) => run.judge(run.pointOf(record, survey), null),
    asks: (record, survey) => run.asks(run.pointOf(record, survey)),
  };
}

/** A run whose points are judged by somebody else: by outcomes alone, which cost less than findings. */
export interface BareRun {
  readonly head: ResultHead;
  /** Rules of points and of groups. */
  readonly rules: readonly ReadyRule[];
  points(): Iterable<PointOnItsWay>;
  /** Which rules are asked of a point. */
  asks(point: PointOnItsWay): (rule: string) => boolean;
  /** What its groups and what no rulebook holds give it. */
  verdictBeside(point: PointOnItsWay): Verdict;
}

/** @throws RangeError if the rulebook has no such set */
export function bareRun(input: ScreeningInput): BareRun {
  const run = new Run(input);
  return {
    head: run.head(),
    rules: run.rules,
    points: () => run.points(),
    asks: (point) => run.asks(point),
    verdictBeside: (point) => run.verdictBeside(point),
  };
}

/** Whether a result reached the level at which a run is to end with exit code 1. */
export function reachesLevel(point: PointResult, level: "fail" | "warn" | "undecided"): boolean {
  if (level === "undecided") return point.verdict === "fail" || point.findings.some((f) => isOpen(f.outcome));
  return level === "warn" ? point.verdict !== "pass" : point.verdict === "fail";
}
