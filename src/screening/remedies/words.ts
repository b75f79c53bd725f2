import { convert, formatNumber, type Outcome } from "../../base/index.js";
import { factName, findFact, plainWords } from "../../facts/index.js";
import type { Alternative } from "./solve.js";
import type { Broken } from "./worse.js";

/** A way out with the change that is proposed, and the rules that it would break. */
export interface WayOut {
  readonly alternative: Alternative;
  readonly to: number | string;
  readonly breaks: readonly Broken[];
}

/** Ways that a sentence names; data lists all. */
const MOST_NAMED = 3;
const MOST_BROKEN_NAMED = 3;

/** What would be enough, and what the rule advises, in one sentence. */
export function remedyWith(ways: readonly WayOut[], advice: string | null): string | null {
  if (ways.length === 0) return advice;
  const named = ways.slice(0, MOST_NAMED).map(wayInWords);
  const enough = `enough for this rule: ${named.join(", or ")}`;
  return advice === null ? enough : `${enough}; ${advice}`;
}

function wayInWords({ alternative, to, breaks }: WayOut): string {
  const { fact, from, reach } = alternative;
  const bound = reach === "exactly" ? "" : `${reach} `;
  const asides = [
    ...(from === null ? [] : [`now ${valueInWords(fact, from)}`]),
    ...(breaks.length === 0 ? [] : [`but then ${brokenInWords(breaks)}`]),
  ];
  return `${factName(fact)} ${bound}${valueInWords(fact, to)}${asides.length > 0 ? ` (${asides.join("; ")})` : ""}`;
}

function brokenInWords(breaks: readonly Broken[]): string {
  const order = (outcome: Outcome): number => (outcome === "fail" ? 0 : outcome === "warn" ? 1 : 2);
  const sorted = [...breaks].sort((a, b) => order(a.outcome) - order(b.outcome));
  const named = sorted.slice(0, MOST_BROKEN_NAMED).map(({ ready: { rule }, outcome }) => {
    const what = outcome === "fail" ? "fails" : outcome === "warn" ? "warns" : "cannot be judged yet";
    return `${rule.id} ${what}`;
  });
  const more = sorted.length - named.length;
  return `${named.join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** Two wire gauges differ by a quarter of their areas, so that a gauge is told by its area alone. */
const GAUGE_DIGITS = 6;

function valueInWords(fact: string, value: number | string | boolean): string {
  const definition = findFact(fact);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return definition?.kind === "choice" ? plainWords(value) : value;
  const shown = formatNumber(value, definition?.unit ?? null);
  if (definition?.dimension !== "area") return shown;
  const gauge = Number(convert(value, "mm²", "AWG", "area").toFixed(GAUGE_DIGITS));
  return Number.isInteger(gauge) ? `AWG ${gauge} (${formatNumber(value, "mm²", 3)})` : shown;
}
