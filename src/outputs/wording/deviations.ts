import type { Accepted, DeviationShown, DeviationStatus, Finding, PointResult } from "../../screening/index.js";
import { markedOutcome } from "./outcomes.js";

/** The verdict of a point with shape and word, and whether it is accepted ("■ fail, accepted"). */
export function markedPoint({ verdict, accepted }: Pick<PointResult, "verdict" | "accepted">): string {
  return `${markedOutcome(verdict)}${accepted ? ", accepted" : ""}`;
}

/** The outcome of a finding with shape and word, and whether it is accepted ("▲ warn, accepted"). */
export function markedFinding({ outcome, accepted }: Pick<Finding, "outcome" | "accepted">): string {
  return `${markedOutcome(outcome)}${accepted === null ? "" : ", accepted"}`;
}

/** Until when, by whom and why a finding is accepted ("accepted until 2027-01-01 by N. Nemo, because …"). */
export function acceptedInWords({ until, acceptedBy, reason }: Accepted): string {
  return `accepted until ${until} by ${acceptedBy}, because ${reason}`;
}

/** What is accepted on a point, finding by finding; empty where nothing is. */
export function acceptedOnPoint({ findings }: Pick<PointResult, "findings">): readonly string[] {
  return findings.flatMap(({ rule, accepted }) => (accepted === null ? [] : [`${rule}: ${acceptedInWords(accepted)}`]));
}

/** How the statuses of deviations are called where they are counted. */
export const STATUS_WORDS: Readonly<Record<DeviationStatus, string>> = {
  expired: "expired",
  "limit-changed": "accepted under another limit",
  "worse-than-accepted": "worse than accepted",
  "point-not-found": "of a point that is not there",
  "rule-not-asked": "of a rule that is not asked",
  "nothing-to-accept": "with nothing to accept",
  "not-yet-in-force": "not yet in force",
  "in-use": "in use",
};

/** What there is to know of a deviation, with its line ("P-1, hole-depth: ended on …"); of one simply in use, that. */
export function deviationInWords(deviation: DeviationShown): string {
  const { point, rule, acceptedBy, origin } = deviation;
  return `${point}, ${rule}: ${standingInWords(deviation)} (${acceptedBy}; ${origin.file}:${origin.line})`;
}

/** How a deviation stands ("ended on 2026-06-01, and the finding stands again: ■ fail"). */
export function standingInWords(deviation: DeviationShown): string {
  const { status, from, until, remark, endsSoon } = deviation;
  switch (status) {
    case "expired":
      return `ended on ${until}, and ${sinceInWords(deviation)}`;
    case "not-yet-in-force":
      return `in force from ${from}`;
    case "point-not-found":
      return "no such point in these surveys";
    case "rule-not-asked":
      return "the rule is not asked here";
    case "nothing-to-accept":
      return "the rule says nothing against the point";
    case "limit-changed":
    case "worse-than-accepted":
      return `covers nothing: ${remark ?? STATUS_WORDS[status]}`;
    case "in-use":
      return [endsSoon ? `ends on ${until}` : `in use until ${until}`, ...(remark === null ? [] : [remark])].join("; ");
  }
}

function sinceInWords({ found, open }: DeviationShown): string {
  if (found === null) return "nothing is left of it";
  return open ? `the finding stands again: ${markedOutcome(found)}` : "another has taken its place";
}

/** Deviations that somebody has to act on, the most pressing first: all but those that are simply in use or to come. */
export function toActOn(list: readonly DeviationShown[]): readonly DeviationShown[] {
  const urgencies = list.flatMap((one) => {
    const urgency = urgencyOf(one);
    return urgency === null ? [] : [{ one, urgency }];
  });
  return urgencies.sort((a, b) => a.urgency - b.urgency).map(({ one }) => one);
}

function urgencyOf({ status, open, endsSoon, remark }: DeviationShown): number | null {
  if (status === "expired" && open) return 0;
  if (status === "limit-changed" || status === "worse-than-accepted") return 1;
  if (endsSoon) return 2;
  if (status === "in-use") return remark === null ? null : 3;
  if (status === "not-yet-in-force") return null;
  return status === "expired" ? 5 : 4;
}
