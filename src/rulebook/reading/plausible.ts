import type { Interval } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { Report } from "../text/source.js";

/** Reports a number that cannot be meant: a slip of the pen in the number or its unit. */
export function checkPlausible(value: Interval, definition: FactDefinition, at: string, report: Report): void {
  const { plausible, unit = "" } = definition;
  if (!plausible || (value.lowest >= plausible.lowest && value.highest <= plausible.highest)) return;
  const withUnit = (text: string | number): string => `${text} ${unit}`.trimEnd();
  const range = withUnit(`${plausible.lowest} to ${plausible.highest}`);
  report.atValue(
    at,
    "implausible",
    `${withUnit(value.lowest)} is no plausible ${definition.name} (${range}); check number and unit`,
  );
}
