import { type FactValue, factOf } from "../../facts/index.js";

/** Words that are surely understood, for facts that are written in a way of their own. */
const DESIGNATIONS: Readonly<Record<string, string>> = { thread: "M6", sensor_thread: "M6", ip_rating: "IP65" };

/**
 * Values that a survey fact may turn out to have, to see what would be asked next: every choice, and of a number one
 * from the middle of what is plausible.
 *
 * @returns empty for a fact of which no value can be made up
 */
export function sampleValues(id: string): readonly FactValue[] {
  const { kind, choices, plausible } = factOf(id);
  if (kind === "yes-no") return [true, false];
  if (choices) return choices;
  if (kind !== "quantity" && kind !== "count") return DESIGNATIONS[id] === undefined ? [] : [DESIGNATIONS[id]];
  if (!plausible) return [];
  const { lowest, highest } = plausible;
  // Plausible ranges span powers of ten; their plain middle would be far above what is usual.
  const middle = lowest > 0 ? Math.sqrt(lowest * highest) : (lowest + highest) / 2;
  const value = kind === "count" ? Math.max(1, Math.round(middle)) : middle;
  return [{ lowest: value, highest: value }];
}
