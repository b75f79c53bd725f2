import { type Outcome, type PlainDay, round12 } from "../../base/index.js";
import type { Deviation, LimitSpoken } from "../../rulebook/index.js";
import type { Finding } from "../result.js";
import type { Accepted } from "./deviation-shown.js";

/** Whether a deviation in force covers a finding, and if not, why. */
export type Cover = "covered" | "worse-than-accepted" | "limit-changed";

/** Undecided is worse than a warning: it may turn out as a fail. Outcomes that need no acceptance are not in it. */
const WORSE: ReadonlyMap<Outcome, number> = new Map([
  ["warn", 1],
  ["undecided", 2],
  ["no-limit-in-force", 2],
  ["fail", 3],
]);

/** How bad an outcome is, from 0 for one that does not keep a point from passing. */
export function badness(outcome: Outcome): number {
  return WORSE.get(outcome) ?? 0;
}

/** Whether a deviation is in force on the day. */
export function isInForce({ from, until }: Pick<Deviation, "from" | "until">, asOf: PlainDay): boolean {
  return from <= asOf && asOf < until;
}

/**
 * Whether a deviation from the rule of a finding covers it: an outcome and a value not worse than what was accepted, under
 * the same limit.
 */
export function coverOf(
  { outcome, limit, value }: Pick<Deviation, "outcome" | "limit" | "value">,
  finding: Pick<Finding, "outcome" | "limit" | "facts">,
): Cover {
  if (badness(finding.outcome) > badness(outcome)) return "worse-than-accepted";
  if (limit !== null && !isLimit(limit.values, finding.limit)) return "limit-changed";
  const [accepted] = value?.values ?? [];
  return accepted === undefined || isNoWorse(accepted, finding) ? "covered" : "worse-than-accepted";
}

/** Whether the whole judged value lies no farther on the bad side than the accepted one; of an unknown value it does not. */
function isNoWorse(accepted: number, { limit, facts: [judged] }: Pick<Finding, "limit" | "facts">): boolean {
  const [lowest, highest] = [judged?.lowest ?? null, judged?.highest ?? null];
  switch (limit?.is) {
    case "below":
    case "atOrBelow":
      return lowest !== null && lowest >= accepted;
    case "above":
    case "atOrAbove":
      return highest !== null && highest <= accepted;
    case "outside": {
      const [low, high] = Array.isArray(limit.value) ? limit.value : [];
      if (typeof low !== "number" || typeof high !== "number" || lowest === null || highest === null) return false;
      return lowest >= Math.min(accepted, low) && highest <= Math.max(accepted, high);
    }
    default:
      return false;
  }
}

function isLimit(accepted: readonly number[], limit: LimitSpoken | null): boolean {
  const value = limit?.value ?? null;
  const found = value === null ? [] : [value].flat();
  return found.length === accepted.length && accepted.every((one, i) => round12(one) === found[i]);
}

/** What a finding says of the deviation that covers it. */
export function acceptedBy({ reason, acceptedBy, from, until, at }: Deviation): Accepted {
  return { reason, acceptedBy, from, until, origin: { file: at.file, line: at.line } };
}

/**
 * The findings of a point with those marked that a deviation in force covers. Outcomes stay as they are, and findings
 * that nothing covers stay the very same objects.
 *
 * @param deviations - of this point
 */
export function withAccepted(
  findings: readonly Finding[],
  deviations: readonly Deviation[],
  asOf: PlainDay,
): readonly Finding[] {
  const inForce = deviations.filter((one) => isInForce(one, asOf));
  if (inForce.length === 0) return findings;
  return findings.map((finding) => {
    if (badness(finding.outcome) === 0) return finding;
    const covering = inForce.find((one) => one.rule === finding.rule && coverOf(one, finding) === "covered");
    return covering ? { ...finding, accepted: acceptedBy(covering) } : finding;
  });
}

/** Whether a point does not pass, and everything that keeps it from passing is accepted. */
export function isAccepted(findings: readonly Pick<Finding, "outcome" | "accepted">[]): boolean {
  const grave = findings.filter(({ outcome }) => badness(outcome) > 0);
  return grave.length > 0 && grave.every(({ accepted }) => accepted !== null);
}
