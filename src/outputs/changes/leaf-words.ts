import type { LeafChange } from "../../comparing/index.js";
import { findFact } from "../../facts/index.js";

/** The steps from a dated value down to its number, which say nothing to a reader. */
const NUMBER = /^state > value > (?:lowest|highest)$/;
const NUMBER_STEPS = 3;

/** Changed data in words, one line for each; a number that is kept as an interval of one value is said once, with its unit. */
export function leavesInWords(leaves: readonly LeafChange[]): readonly string[] {
  const lines = leaves.map(({ path, before, after }) => {
    const isNumber = NUMBER.test(path.slice(-NUMBER_STEPS).join(" > "));
    const unit = isNumber ? path.map((step) => findFact(step)?.unit).find((one) => one !== undefined) : undefined;
    const withUnit = (value: unknown): string => (value === null || !unit ? shown(value) : `${shown(value)} ${unit}`);
    const place = (isNumber ? path.slice(0, -NUMBER_STEPS) : path).join(" > ");
    return `${place}: ${withUnit(before)} becomes ${withUnit(after)}`;
  });
  return [...new Set(lines)];
}

function shown(value: unknown): string {
  return value === null ? "nothing" : typeof value === "string" ? `"${value}"` : JSON.stringify(value);
}
