import type { Outcome } from "../../base/index.js";
import type { BuiltPoint, Difference, LikelyPartner, RowAt, Turned } from "../../built/index.js";
import { factName } from "../../facts/index.js";
import type { FactShown } from "../../screening/index.js";
import { factValueInWords } from "../wording/facts.js";
import { markedOutcome } from "../wording/outcomes.js";
import { rowInWords } from "../wording/places.js";

/** A difference with both values and both cells ("hole depth: 16 mm proposed (L8), 12 mm built (D2)"). */
export function differenceInWords({ fact, proposed, built }: Difference): string {
  return `${factName(fact)}: ${sideInWords(proposed, "proposed")}, ${sideInWords(built, "built")}`;
}

function sideInWords(fact: FactShown, side: string): string {
  const line = fact.origin === null ? "" : ` (${fact.origin.file} line ${fact.origin.line})`;
  const place = fact.cells.length === 0 ? line : ` (${fact.cells.map(({ cell }) => cell).join(", ")})`;
  return `${factValueInWords(fact)} ${side}${place}`;
}

/** The rules that stand in the way now and did not before, or did less; those that fail first, open ones last. */
export function worseRules(point: BuiltPoint): readonly Turned[] {
  const gravity = ({ now }: Turned): number => (now === null ? GRAVEST.length : GRAVEST.indexOf(now.outcome));
  return point.turned.filter(({ worse }) => worse).sort((a, b) => gravity(a) - gravity(b));
}

const GRAVEST: readonly Outcome[] = ["fail", "warn", "undecided", "no-limit-in-force"];

/** A rule that turned, with the reason ("tightening-torque: pass or not asked, now fail: the torque …"). */
export function turnedInWords({ rule, before, now, asked }: Turned): string {
  const was = before === null ? "" : ` (was ${before.outcome})`;
  const reason = now?.message ?? null;
  if (now === null) return `${rule}${was}: ${asked ? "no longer stands in the way" : "is not asked of what was built"}`;
  return `${rule}${was}: ${reason ?? now.outcome}`;
}

/** The verdicts then and now, with shape and word. */
export function verdictsInWords({ verdictThen, verdictNow }: BuiltPoint): string {
  const then = verdictThen === null ? "no verdict" : markedOutcome(verdictThen);
  return verdictNow === null ? then : `${then} → ${markedOutcome(verdictNow)}`;
}

/** A likely partner ("P-1101-3 in built.csv, line 7"). */
export function partnerInWords({ id, point, at }: LikelyPartner): string {
  return `${point ?? id ?? "a point without an id"} in ${rowInWords(at)}`;
}

/** Rows, one after the other. */
export function rowsInWords(rows: readonly RowAt[]): string {
  return rows.map(rowInWords).join("; ");
}

/**
 * Whether what was built is not what was approved: its order is recalled, or it was built without a verdict that covers
 * it, or against one.
 */
export function isRecalledOrUncovered({ recall, needsNewVerdict, againstVerdict }: BuiltPoint): boolean {
  return recall || needsNewVerdict || againstVerdict;
}
