import { formatNumber } from "../../base/index.js";
import { findFact, plainWords } from "../../facts/index.js";
import type { FactShown } from "../../screening/index.js";
import type { AllowedBand } from "../../workpacks/index.js";
import { factValueInWords } from "../wording/facts.js";

/** Digits of what is computed: more than any gauge shows would only hide the rest. */
const DIGITS = 4;
/** Cells named; the rest are counted, and stand in the JSON. */
const CELLS_SHOWN = 3;

/** Whether a value can be told; one that cannot is a box to be filled in. */
export function isKnown({ value, lowest, highest }: FactShown): boolean {
  return value !== null || lowest !== null || highest !== null;
}

/** The value for people; what is computed with few digits, everything else as stated. */
export function valueText(fact: FactShown): string {
  const { value, lowest, highest, unit } = fact;
  if (value !== null || lowest === null || highest === null) return factValueInWords(fact);
  const [low, high] = [formatNumber(lowest, null, DIGITS), formatNumber(highest, null, DIGITS)];
  return low === high ? formatNumber(lowest, unit, DIGITS) : `${low} to ${formatNumber(highest, unit, DIGITS)}`;
}

/** How far it may lie off the plan ("15 to 19.4 mm", "at least 33 mm"). */
export function bandText({ lowest, highest, unit }: AllowedBand): string {
  if (lowest !== null && highest !== null) return `${formatNumber(lowest)} to ${formatNumber(highest, unit)}`;
  if (lowest !== null) return `at least ${formatNumber(lowest, unit)}`;
  return highest === null ? "" : `at most ${formatNumber(highest, unit)}`;
}

/**
 * Where a value comes from ("K11", "computed from K11, L11", "rules/models/baseline.yaml:21").
 *
 * @param home - sheet of the point, which is not repeated with every cell
 */
export function sourceText(fact: FactShown, home: string | null): string {
  if (fact.assumed !== null) return fact.assumed;
  const shown = fact.cells
    .slice(0, CELLS_SHOWN)
    .map(({ sheet, cell }) => (sheet === null || sheet === home ? cell : `${sheet}!${cell}`));
  const more = fact.cells.length > shown.length ? ` and ${fact.cells.length - shown.length} more` : "";
  const source = findFact(fact.fact)?.source;
  const line = fact.origin === null ? "" : `${fact.origin.file}:${fact.origin.line}`;
  if (source === "model" || source === "table" || shown.length === 0) return line;
  return `${source === "derived" ? "computed from " : ""}${shown.join(", ")}${more}`;
}

/** The day of an outage, or that none is stated. */
export function outageText(outage: string | null): string {
  return outage ?? "no day stated";
}

/** A mounting method for people. */
export function methodText(method: string | null): string {
  return method === null ? "method not known" : plainWords(method);
}
