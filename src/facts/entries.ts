import type { Dimension } from "../base/index.js";
import type { FactDefinition, FactKind } from "./definition.js";

/** A measured survey field; `lowest` and `highest` are the plausible range in `unit`. */
export function quantity(
  group: string,
  id: string,
  name: string,
  dimension: Dimension,
  unit: string,
  lowest: number,
  highest: number,
): FactDefinition {
  return { id, name, kind: "quantity", source: "survey", group, dimension, unit, plausible: { lowest, highest } };
}

/** A counted survey field; `unit` says what is counted. */
export function count(
  group: string,
  id: string,
  name: string,
  unit: string,
  lowest: number,
  highest: number,
): FactDefinition {
  return { id, name, kind: "count", source: "survey", group, unit, plausible: { lowest, highest } };
}

/** A survey field with a closed list of choices. */
export function choice(group: string, id: string, name: string, choices: readonly string[]): FactDefinition {
  return { id, name, kind: "choice", source: "survey", group, choices };
}

/** A survey field kept as text, as a day or as yes or no. */
export function plain(
  kind: Exclude<FactKind, "quantity" | "count" | "choice">,
  group: string,
  id: string,
  name: string,
): FactDefinition {
  return { id, name, kind, source: "survey", group };
}
