import type { Outcome, PlainDay, Verdict } from "../base/index.js";
import type { ImportProblem } from "../records/index.js";
import type { FactShown, Finding, PointNames, ResultHead } from "../screening/index.js";

/**
 * How a point of the proposal and one that was built belong together: `matched` by id; `not-built` yet; `not-proposed`
 * and built all the same; `twice`, its id stands in several rows of one side; `no-id`, its row says too little.
 */
export type MatchStatus = "matched" | "not-built" | "not-proposed" | "twice" | "no-id";

/** Every status, the ordinary one first. */
export const MATCH_STATUSES: readonly MatchStatus[] = ["matched", "not-built", "not-proposed", "twice", "no-id"];

/** A row of a survey. */
export interface RowAt {
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
}

/** A fact that proposal and built survey both state, and not alike. Cells without a file are of the row of that side. */
export interface Difference {
  readonly fact: string;
  readonly proposed: FactShown;
  readonly built: FactShown;
  /** Method or place: the verdict on the proposal does not hold for what was built. */
  readonly needsNewVerdict: boolean;
}

/** What a rule said when the order was issued. */
export interface SaidBefore {
  readonly outcome: Outcome;
  readonly message: string | null;
}

/** A rule that says something else now. Null: nothing that is listed, so it passed, did not apply or was not asked. */
export interface Turned {
  readonly rule: string;
  /** It stands in the way now, or more than before. */
  readonly worse: boolean;
  readonly before: SaidBefore | null;
  readonly now: Finding | null;
  /** Whether it is asked now: one that speaks of proposals alone is not asked of what was built. */
  readonly asked: boolean;
}

/** A point on the other side that may be the same one under another id: for a person to settle, never matched. */
export interface LikelyPartner {
  readonly id: string | null;
  readonly point: string | null;
  readonly at: RowAt;
}

/** One point with what was proposed and what was built. */
export interface BuiltPoint extends PointNames {
  readonly id: string | null;
  readonly status: MatchStatus;
  /** One row on each side of a matched point; several where the id stands in several. */
  readonly proposed: readonly RowAt[];
  readonly built: readonly RowAt[];
  /** What an order rests on; null where there is no such verdict. */
  readonly verdictThen: Verdict | null;
  /** Of what was built, or of an open order under the rules of today; null where there is nothing to judge. */
  readonly verdictNow: Verdict | null;
  readonly change: "falls" | "rises" | "same" | null;
  /** The order is to be called back: the verdict falls, or a rule fails (or counts as one) that did not before. */
  readonly recall: boolean;
  /** It is called back for no other reason than that something is not recorded. */
  readonly onlyUndecided: boolean;
  /** It was built without a verdict that covers it: method or place changed, never proposed, or never issued. */
  readonly needsNewVerdict: boolean;
  /** It was built although the verdict on the proposal was fail, and no rule that failed has been met since. */
  readonly againstVerdict: boolean;
  readonly differences: readonly Difference[];
  readonly turned: readonly Turned[];
  /** Facts that the built survey does not state and that are judged by the proposal's word. */
  readonly carried: readonly string[];
  /** Facts that the proposal states of another place, method or part than was built: to be measured anew. */
  readonly notCarried: readonly string[];
  readonly likely: readonly LikelyPartner[];
  /** What is to be said of the status, in words. */
  readonly text: string | null;
}

/** The result under which orders were issued, as far as it is compared. */
export interface IssuedShown {
  readonly file: string;
  /** SHA-256 of the file. */
  readonly digest: string;
  /** Digest of the run that it is of. */
  readonly run: string;
  readonly asOf: PlainDay;
  readonly set: string;
  readonly rulebook: { readonly name: string; readonly version: string; readonly digest: string };
  /** The rulebook of today is another one. */
  readonly rulebookChanged: boolean;
  /** The surveys it rests on; `now` is the digest of the proposed survey of that name, null if none is given. */
  readonly surveys: readonly { readonly file: string; readonly digest: string; readonly now: string | null }[];
  /** Points that it has a verdict on and that the proposed surveys no longer hold. */
  readonly gone: readonly { readonly id: string; readonly point: string | null; readonly verdict: Verdict }[];
}

/** What stands before the points. */
export interface BuiltHead {
  readonly program: ResultHead["program"];
  /** SHA-256 over the runs on both sides and the result under which orders were issued. */
  readonly digest: string;
  /** The same survey holds what was proposed and what was built. */
  readonly sameSurvey: boolean;
  /** The run over the proposal, at the stage proposed. */
  readonly proposed: ResultHead;
  /** The run over what was built, at the stage installed. */
  readonly built: ResultHead;
  readonly issued: IssuedShown | null;
  readonly remarks: readonly ImportProblem[];
  readonly cautions: readonly string[];
}

/** What stands after the points. */
export interface BuiltSummary {
  readonly points: number;
  readonly matched: number;
  readonly notBuilt: number;
  readonly notProposed: number;
  readonly twice: number;
  readonly noId: number;
  readonly recalled: number;
  readonly recalledOnlyUndecided: number;
  readonly needsNewVerdict: number;
  readonly againstVerdict: number;
  readonly differing: number;
  readonly rises: number;
  /** Verdicts on matched points as built. */
  readonly pass: number;
  readonly warn: number;
  readonly fail: number;
  /** How often each fact differs, most first. */
  readonly byFact: readonly { readonly fact: string; readonly points: number }[];
}

/** A comparison: the head, the points as they are compared, and the summary when all are done. */
export interface BuiltCheck {
  readonly head: BuiltHead;
  points(): IterableIterator<BuiltPoint>;
  /** @throws Error before all points have been iterated */
  summary(): BuiltSummary;
}
