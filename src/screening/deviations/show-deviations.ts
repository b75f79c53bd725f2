import { formatNumber, laterDay, type PlainDay } from "../../base/index.js";
import type { Deviation } from "../../rulebook/index.js";
import type { PointOnItsWay } from "../point-facts.js";
import type { Finding, PointResult } from "../result.js";
import { badness, coverOf, isInForce } from "./covering.js";
import type { DeviationShown, DeviationStatus, DeviationsShown } from "./deviation-shown.js";
import type { DeviationsOnPoints } from "./deviations-on-points.js";

/** What a run knows of itself when its deviations are told of. */
export interface RunAsked {
  readonly asOf: PlainDay;
  readonly endingWithin: number;
  /** Whether the rule is asked of the survey in which the point stands. */
  isAsked(rule: string, point: PointOnItsWay): boolean;
  judge(point: PointOnItsWay): PointResult;
}

/** Every deviation and how it stands on the day; the points they speak of are judged for it. */
export function showDeviations(onPoints: DeviationsOnPoints, run: RunAsked): DeviationsShown {
  const { file, digest, entries } = onPoints.deviations;
  const list = entries.map((entry) => shown(entry, onPoints, run));
  return { file, digest, endingWithin: run.endingWithin, list };
}

function shown(entry: Deviation, onPoints: DeviationsOnPoints, run: RunAsked): DeviationShown {
  const rows = onPoints.rowsOf(entry);
  const asked = rows.filter(({ point }) => run.isAsked(entry.rule, point));
  const findings = asked
    .flatMap(({ point }) => run.judge(point).findings)
    .filter((finding) => finding.rule === entry.rule && badness(finding.outcome) > 0)
    .sort((a, b) => badness(b.outcome) - badness(a.outcome));
  const [worst] = findings;
  const status = statusOf(entry, { rows: rows.length, asked: asked.length, findings }, run.asOf);
  const follower = onPoints.followerOf(entry);
  return {
    point: entry.point,
    rule: entry.rule,
    outcome: entry.outcome,
    limit: entry.limit?.written ?? null,
    value: entry.value?.written ?? null,
    reason: entry.reason,
    acceptedBy: entry.acceptedBy,
    from: entry.from,
    until: entry.until,
    origin: { file: entry.at.file, line: entry.at.line },
    status,
    pointId: rows[0]?.id ?? null,
    found: worst?.outcome ?? null,
    open: findings.some(({ accepted }) => accepted === null),
    endsSoon: status === "in-use" && follower === null && entry.until <= laterDay(run.asOf, run.endingWithin),
    remark: remarkOn(entry, status, findings),
  };
}

function statusOf(
  entry: Deviation,
  met: { readonly rows: number; readonly asked: number; readonly findings: readonly Finding[] },
  asOf: PlainDay,
): DeviationStatus {
  if (entry.until <= asOf) return "expired";
  if (!isInForce(entry, asOf)) return "not-yet-in-force";
  if (met.rows === 0) return "point-not-found";
  if (met.asked === 0) return "rule-not-asked";
  if (met.findings.length === 0) return "nothing-to-accept";
  const covers = met.findings.map((finding) => coverOf(entry, finding));
  if (covers.includes("limit-changed")) return "limit-changed";
  return covers.includes("worse-than-accepted") ? "worse-than-accepted" : "in-use";
}

function remarkOn(entry: Deviation, status: DeviationStatus, findings: readonly Finding[]): string | null {
  const limit = findings.find((finding) => finding.limit !== null)?.limit ?? null;
  if (status === "limit-changed") {
    const now = limit?.value ?? null;
    const shown = typeof now === "number" ? [now] : now?.every((one) => typeof one === "number") ? now : null;
    const found =
      shown === null ? "is no number" : `is ${shown.map((one) => formatNumber(one, limit?.unit)).join(" to ")}`;
    return `accepted under a limit of ${entry.limit?.written}, and the one that speaks now ${found}`;
  }
  if (status === "worse-than-accepted") {
    const [worst] = findings;
    if (worst && badness(worst.outcome) > badness(entry.outcome)) {
      return `accepted as ${entry.outcome}, and now ${worst.outcome}`;
    }
    return `accepted at ${entry.value?.written}, and what is found now is not as good, or not known`;
  }
  if (status !== "in-use" || entry.limit !== null || limit === null || limit.from <= entry.from) return null;
  return `the limit that speaks is in force from ${limit.from}, after it was accepted; see whether it still holds`;
}
