import { formatNumber } from "../../../base/index.js";
import { findFact, plainWords } from "../../../facts/index.js";
import type { ModelShown } from "../../../screening/index.js";

/** A value of a sensor model for people. */
export function valueInWords({ fact, value, unit }: ModelShown["facts"][number]): string {
  if (value === null) return "not stated";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return formatNumber(value, unit);
  return findFact(fact)?.kind === "choice" ? plainWords(value) : value;
}
