import type { Outcome, PlainDay } from "../../base/index.js";
import type { Deviation } from "../../rulebook/index.js";

/** The word of the person who accepted a finding. */
export interface Accepted {
  readonly reason: string;
  /** Name and role. */
  readonly acceptedBy: string;
  readonly from: PlainDay;
  /** First day not in force. */
  readonly until: PlainDay;
  readonly origin: { readonly file: string; readonly line: number };
}

/** How a deviation stands on the day, in the order in which a person would act on them. */
export const DEVIATION_STATUSES = [
  "expired",
  "limit-changed",
  "worse-than-accepted",
  "point-not-found",
  "rule-not-asked",
  "nothing-to-accept",
  "not-yet-in-force",
  "in-use",
] as const;

/**
 * `in-use`: it covers what the rule says of the point. `limit-changed`, `worse-than-accepted`: in force, but what the
 * rule says is not what was accepted, so that it covers nothing. `nothing-to-accept`: the rule keeps the point from
 * passing no more. `rule-not-asked`: by this set, at this stage or of this survey.
 */
export type DeviationStatus = (typeof DEVIATION_STATUSES)[number];

/** A deviation of the file, and how it stands on the day. */
export interface DeviationShown extends Accepted {
  /** As written: id or name. */
  readonly point: string;
  readonly rule: string;
  /** The worst outcome that is accepted. */
  readonly outcome: Deviation["outcome"];
  /** Limit under which it was accepted, as written; null where it names none. */
  readonly limit: string | null;
  /** Value that was found when it was accepted, as written; null where it names none. */
  readonly value: string | null;
  readonly status: DeviationStatus;
  /** Id of the point that is meant; null where the run does not have it, or has no id for it. */
  readonly pointId: string | null;
  /** What the rule says of the point on the day, where that keeps it from passing; null otherwise. */
  readonly found: Outcome | null;
  /** The finding stands, and no deviation in force covers it. */
  readonly open: boolean;
  /** In use, ends within the days asked about, and no other follows on. */
  readonly endsSoon: boolean;
  /** What speaks against relying on it further, in words; null where nothing does. */
  readonly remark: string | null;
}

/** The deviations of a run, in the order of their file. */
export interface DeviationsShown {
  readonly file: string;
  /** SHA-256 of the canonical JSON of the file's data. */
  readonly digest: string;
  /** Days ahead in which an end is told of. */
  readonly endingWithin: number;
  readonly list: readonly DeviationShown[];
}
