import type { Dimension } from "../base/index.js";

/** How the value of a fact is kept: quantities and counts as intervals, yes-no as boolean, all others as text. */
export type FactKind = "quantity" | "count" | "choice" | "yes-no" | "text" | "identifier" | "designation" | "date";

/**
 * Where a fact comes from: a survey cell (or the site's word), the sensor model, a table of the rulebook, a computation,
 * the rows that share a key, or the run itself.
 */
export type FactSource = "survey" | "model" | "table" | "derived" | "group" | "run";

/** One entry of the catalogue. */
export interface FactDefinition {
  /**
   * Snake case, no unit; facts of the sensor model begin with `model.`, those looked up in tables with `table.`, those
   * of a group of rows with `group.`
   */
  readonly id: string;
  /** Plain name as a person of the trade says it, for labels and messages. */
  readonly name: string;
  readonly kind: FactKind;
  readonly source: FactSource;
  /** Part of the survey it belongs to (identity, operation, mounting, …). */
  readonly group: string;
  /** Of quantities. */
  readonly dimension?: Dimension;
  /** Id of the unit in which values are kept; of a count, what is counted. */
  readonly unit?: string;
  /** Of choices. */
  readonly choices?: readonly string[];
  /** Limits of what can be meant at all, in `unit`; a value outside is a slip of the pen, not a dangerous machine. */
  readonly plausible?: { readonly lowest: number; readonly highest: number };
  /**
   * Of derived facts: the facts it is computed from. Of facts of a table: those by which it is looked up, in their order.
   * Of facts of a group: those of its rows.
   */
  readonly needs?: readonly string[];
  /** Of derived facts: how, in one line of plain notation. */
  readonly formula?: string;
  /** Of derived facts: where the formula comes from. */
  readonly formulaSource?: string;
}

/** A derived fact: it always says from what, how and by which source it is computed. */
export type DerivedDefinition = FactDefinition & Required<Pick<FactDefinition, "needs" | "formula" | "formulaSource">>;

/** Whether values of this fact are numbers (kept as intervals). */
export function isNumeric(definition: FactDefinition): boolean {
  return definition.kind === "quantity" || definition.kind === "count";
}
