import { formatNumber } from "../base/index.js";
import { findFact } from "./catalogue.js";
import type { FactState } from "./state.js";

/** An id ("non-drive-end", "lowest_speed") as words. */
export function plainWords(id: string): string {
  return id.replace(/[-_]+/g, " ");
}

/** The plain name of a fact; of one that the catalogue does not have, its id as words. */
export function factName(id: string): string {
  return findFact(id)?.name ?? plainWords(id.replace(/^[a-z]+\./, ""));
}

/** The value of a fact for a message ("7.5 mm", "at most 1480 r/min", "drive end", "yes", "not known"). */
export function stateInWords(id: string, state: FactState | undefined): string {
  if (!state?.known) return "not known";
  const definition = findFact(id);
  const { value } = state;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return definition?.kind === "choice" ? plainWords(value) : value;
  const unit = definition?.unit ?? null;
  if (value.lowest === value.highest) return formatNumber(value.lowest, unit);
  if (value.lowest === Number.NEGATIVE_INFINITY) return `at most ${formatNumber(value.highest, unit)}`;
  if (value.highest === Number.POSITIVE_INFINITY) return `at least ${formatNumber(value.lowest, unit)}`;
  return `${formatNumber(value.lowest)} to ${formatNumber(value.highest, unit)}`;
}
