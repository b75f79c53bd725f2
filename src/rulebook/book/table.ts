import type { PlainDay, TextPlace } from "../../base/index.js";
import type { FactValue } from "../../facts/index.js";
import type { Citation } from "./rule.js";

/** One row of a table: choices of the facts it is looked up by, and what it gives for them. */
export interface TableRow {
  /** One for each fact of `by`, in that order. */
  readonly keys: readonly (string | boolean)[];
  /** By fact id; null where nobody has a value. */
  readonly values: ReadonlyMap<string, FactValue | null>;
  readonly at: TextPlace;
}

/** The rows in force on [from, until). */
export interface TableEntry {
  readonly from: PlainDay;
  readonly until: PlainDay | null;
  readonly reviewBy: PlainDay | null;
  readonly rows: readonly TableRow[];
  readonly cites: readonly string[];
  readonly at: TextPlace;
}

/** A table of the rulebook: facts with the prefix `table.`, looked up by other facts. */
export interface ValueTable {
  readonly id: string;
  readonly title: string;
  /** Ids of the facts it is looked up by; none for values that hold everywhere. */
  readonly by: readonly string[];
  /** Ids of the facts it gives. */
  readonly gives: readonly string[];
  readonly entries: readonly TableEntry[];
  readonly citations: ReadonlyMap<string, Citation>;
  readonly at: TextPlace;
}
