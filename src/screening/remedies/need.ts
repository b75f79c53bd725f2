import { formatNumber, single } from "../../base/index.js";
import { factOf } from "../../facts/index.js";
import { MEASURED_STEPS, STEPS, type Steps } from "../../quantities/index.js";
import type { Finding } from "../result.js";
import { laddersOf } from "./ladder.js";
import { nearestThatHelps } from "./nearest.js";
import { type Asked, asking } from "./solve.js";

/** What to do about an open finding with the values that would be enough, where one unknown number leaves it open. */
export function remedyWithNeed(finding: Finding, asked: Asked): string | null {
  const [only, another] = finding.missing;
  if (finding.outcome !== "undecided" || finding.remedy === null || !only || another) return finding.remedy;
  // Of a known number that is too close to the limit, the limit is known already.
  const need = only.reason === "too-close" ? null : needInWords(only.fact, asked);
  return need === null ? finding.remedy : `${finding.remedy} (${need} is enough)`;
}

/** The values of a number by which the rule passes; null where there are none, or gaps among them. */
function needInWords(fact: string, asked: Asked): string | null {
  const definition = factOf(fact);
  const steps = stepsOf(fact);
  if (!steps || !definition.plausible) return null;
  const { lowest } = definition.plausible;
  const { more: all } = laddersOf(steps, definition, single(lowest - (steps.by === "step" ? steps.step : 1)));
  const ask = asking(fact, all, asked);
  const last = all.count - 1;
  const least = nearestThatHelps(all.count, ask);
  const most = least === null ? null : nearestThatHelps(all.count, (from, to) => ask(last - from, last - to));
  if (least === null || most === null || ask(least, last - most) !== "helps") return null;
  const unit = definition.unit ?? null;
  if (most === 0) return least === 0 ? null : `at least ${formatNumber(all.at(least), unit)}`;
  if (least === 0) return `at most ${formatNumber(all.at(last - most), unit)}`;
  return `${formatNumber(all.at(least))} to ${formatNumber(all.at(last - most), unit)}`;
}

function stepsOf(fact: string): Extract<Steps, { readonly by: "step" | "sizes" }> | null {
  const measured = MEASURED_STEPS.get(fact);
  if (measured !== undefined) return { by: "step", step: measured, onceBuilt: "freely" };
  const steps = STEPS.get(fact);
  return steps?.by === "step" || steps?.by === "sizes" ? steps : null;
}
