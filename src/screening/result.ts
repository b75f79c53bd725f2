import type { Verdict } from "../base/index.js";
import type { Facts } from "../facts/index.js";
import type { Finding } from "./finding.js";
import type { ResultHead } from "./result-head.js";
import type { Distributions, Freeing } from "./summary-parts.js";

export type { ChangeFound, FactShown, Finding, MeasureTo, MissingFact } from "./finding.js";
export type {
  Disagreement,
  GroupRow,
  GroupShown,
  LimitShown,
  ModelShown,
  NotAsked,
  ReadingSettled,
  ResultHead,
  RuleShown,
  SurveyShown,
  TableShown,
} from "./result-head.js";
export type {
  Bin,
  Distributions,
  FreedByRule,
  Freeing,
  FreeingStep,
  MarginSpread,
  Spread,
} from "./summary-parts.js";

/**
 * One mounting method in place of the proposed one, with all rules of the run. Facts that belong to one method (hole
 * depth, setting time) stay as the survey has them; those that it lacks leave rules undecided.
 */
export interface MethodTried {
  readonly method: string;
  readonly proposed: boolean;
  /** The site allows it here, or says nothing about methods. */
  readonly allowed: boolean;
  /** By the rules asked; a method of which nothing was asked passes easily. */
  readonly verdict: Verdict;
  /** Rules of the run by what they say, in the order of the rulebook. */
  readonly fails: readonly string[];
  readonly warns: readonly string[];
  readonly undecided: readonly string[];
  /** Survey, site and model facts that the undecided ones are short of. */
  readonly missing: readonly string[];
  /** Rules that put this very method to the test: they name it beside other facts, and apply. */
  readonly asked: readonly string[];
  /** Rules that concern this method and that the survey cannot be asked for lack of a column. */
  readonly notAsked: readonly string[];
}

/** The method that would pass, or the one that comes closest. */
export interface MethodAdvised {
  readonly method: string;
  readonly verdict: Verdict;
  /** It would not pass the rules asked, or a rule that gates it was not asked. */
  readonly closest: boolean;
}

/** One point with its verdict. */
export interface PointResult {
  /** UUID version 5, or null where the row says too little. */
  readonly id: string | null;
  /** The point as the survey names it, or null. */
  readonly point: string | null;
  readonly machine: string | null;
  /** The tag of the machine as the register has it, or null. */
  readonly assetTag: string | null;
  /** Where on the machine, as the catalogue's words; null where the row does not say. */
  readonly component: string | null;
  readonly bearingPosition: string | null;
  readonly direction: string | null;
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly verdict: Verdict;
  /** It does not pass, and every finding that keeps it from passing is accepted. The verdict stays what it is. */
  readonly accepted: boolean;
  /**
   * The proposed method and those that the site allows, best first. Of proposals that do not pass, and on request of
   * all; null for other points and for what is built.
   */
  readonly methods: readonly MethodTried[] | null;
  /** The best of them that was put to the test; null where the point passes, or none was. */
  readonly methodAdvised: MethodAdvised | null;
  /**
   * The fewest facts that, once known, surely settle the verdict; null where nothing is undecided, where the point
   * fails whatever they are, and where no fact would settle it.
   */
  readonly settledBy: readonly string[] | null;
  readonly findings: readonly Finding[];
}

/**
 * Outcomes of one rule over all points. A rule of groups counts at every point with the outcome of its group; at a
 * point that is in none because its key is not known, as undecided unless it cannot apply.
 */
export interface RuleCounts {
  readonly rule: string;
  readonly pass: number;
  readonly warn: number;
  readonly fail: number;
  readonly undecided: number;
  readonly notApplicable: number;
  readonly noLimitInForce: number;
}

/** Machines and points of one class of criticality. */
export interface ClassCounts {
  /** A, B or C; null where no row of the machine states it, or the rows disagree. */
  readonly criticality: string | null;
  /** By asset tag (and site). */
  readonly machines: number;
  /** Points on these machines; one without an asset tag counts by its own row. */
  readonly points: number;
}

/** What stands after the points. */
export interface Summary {
  readonly points: number;
  readonly pass: number;
  readonly warn: number;
  readonly fail: number;
  /** Points that warn only because something is undecided. */
  readonly warnOnlyUndecided: number;
  /** Points that do not pass, with everything that keeps them from passing accepted. */
  readonly accepted: number;
  readonly problems: number;
  readonly byRule: readonly RuleCounts[];
  /** By the class of the machine; a class without points is left out. */
  readonly byCriticality: readonly ClassCounts[];
  /** Facts that stand in the way, with the number of points that each leaves open; most first. */
  readonly toMeasure: readonly { readonly fact: string; readonly points: number }[];
  /** What to fetch one after the other, each step the facts that settle the most further points per fact. */
  readonly settling: readonly SettlingStep[];
  readonly openPoints: OpenPoints;
  /** For points that do not pass: by another method than the proposed one, how many would pass or come closest. */
  readonly otherMethods: readonly OtherMethod[];
  readonly freeing: Freeing;
  readonly distributions: Distributions;
}

/** One step in settling what is open. */
export interface SettlingStep {
  readonly facts: readonly string[];
  /** Points whose verdict is settled by this step, with what was fetched before. */
  readonly points: number;
  readonly pointsSoFar: number;
}

/** Points with something undecided. */
export interface OpenPoints {
  /** The verdict is open, and facts would settle it. */
  readonly toSettle: number;
  /** They fail whatever the missing facts are, so that their verdict is settled. */
  readonly failAnyway: number;
  /** No fact would settle them: no limit is in force on the day. */
  readonly notByFacts: number;
}

/** How often another method than the proposed one is advised. */
export interface OtherMethod {
  readonly method: string;
  readonly wouldPass: number;
  readonly closest: number;
}

/** A point with its verdict, and the facts behind it, worked out when asked for. */
export interface PointWithFacts {
  readonly point: PointResult;
  readonly facts: Facts;
}

/** A screening run: the head, the points as they are judged (iterate once), and the summary when all are done. */
export interface Screening {
  readonly head: ResultHead;
  points(): IterableIterator<PointResult>;
  /** The same points, each with all that is known of it, derived and model facts too; for what results do not carry. */
  pointsWithFacts(): IterableIterator<PointWithFacts>;
  /** @throws Error before all points have been iterated */
  summary(): Summary;
}
