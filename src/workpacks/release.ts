import type { PlainDay } from "../base/index.js";
import type { Finding, PointWithFacts } from "../screening/index.js";

/** Why a point is held back. */
export type HeldBackCause =
  /** The set of rules does not ask what can hurt somebody; said of the whole run. */
  | "set-too-small"
  /** The survey was not screened as a proposal; said of the whole run. */
  | "stage"
  | "no-id"
  /** A rule marked `releases: never` fails, warns, is undecided or was not asked. */
  | "never-fails"
  | "never-warns"
  | "never-undecided"
  | "never-not-asked"
  /** A finding that nobody has accepted. */
  | "not-accepted"
  /** The acceptance is over before the outage in which the work is to be done. */
  | "acceptance-ends";

/** One reason why a point is held back. */
export interface HeldBack {
  readonly cause: HeldBackCause;
  /** The rule that speaks; null where none does. */
  readonly rule: string | null;
  readonly text: string;
  /** What to do. */
  readonly remedy: string;
}

/** A finding that somebody has accepted, on which a release rests. */
export interface AcceptedFinding {
  readonly finding: Finding;
  readonly reason: string;
  readonly acceptedBy: string;
  readonly from: PlainDay;
  /** First day not in force. */
  readonly until: PlainDay;
}

/** Whether work may be planned on a point: no reason, and what was accepted, or the reasons against it. */
export interface Release {
  readonly released: boolean;
  readonly reasons: readonly HeldBack[];
  /** Of a released point that does not pass: every finding that keeps it from passing. */
  readonly accepted: readonly AcceptedFinding[];
}

/** A point of a run with all its facts, and whether work may be planned on it. */
export interface PointOfRun extends PointWithFacts {
  readonly release: Release;
}
