import type { TextPlace } from "../../base/index.js";
import type { Condition } from "./rule.js";

/**
 * How a fact of a group comes from its rows: `sum`, `minimum` and `maximum` of numbers, `distinct` the number of
 * different values, `count` the number of rows, `same` what the rows state alike.
 */
export type MemberKind = "sum" | "minimum" | "maximum" | "distinct" | "same" | "count";

/** One fact of a group. */
export interface GroupMember {
  readonly is: MemberKind;
  /** The fact of the rows; null for a count. */
  readonly fact: string | null;
  /** The rows that are meant; null for all of them. */
  readonly where: Condition | null;
}

/** Rows that share a key, and the facts (ids with the prefix `group.`) that they come to together. */
export interface Group {
  readonly id: string;
  readonly title: string;
  /** Survey facts; the site is always part of the key, too. */
  readonly key: readonly string[];
  readonly members: ReadonlyMap<string, GroupMember>;
  readonly at: TextPlace;
}
