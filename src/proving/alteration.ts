import type { TextPlace } from "../base/index.js";
import type { Condition, Rule } from "../rulebook/index.js";

/** What of a rule an alteration touches. */
export const ALTERATION_KINDS = ["limit", "operator", "condition", "date"] as const;
export type AlterationKind = (typeof ALTERATION_KINDS)[number];

/** A rule with one thing in it altered, as by a slip of the pen. */
export interface Alteration {
  readonly kind: AlterationKind;
  /** What was altered, in words ("below 9 becomes below 10"). */
  readonly what: string;
  readonly at: TextPlace;
  readonly rule: Rule;
}

/** Something in several altered forms, each with its words. */
export interface Altered<Thing> {
  readonly kind: AlterationKind;
  readonly what: string;
  readonly thing: Thing;
}

/** The altered forms of each member of a list, each time in the whole list. */
export function alteredIn<Thing>(
  list: readonly Thing[],
  alter: (member: Thing) => Iterable<Altered<Thing>>,
): readonly Altered<readonly Thing[]>[] {
  return list.flatMap((member, index) =>
    [...alter(member)].map(({ kind, what, thing }) => ({ kind, what, thing: list.with(index, thing) })),
  );
}

/** A comparison in words, for telling what was altered. */
export function comparisonInWords(condition: Extract<Condition, { kind: "comparison" }>): string {
  const { fact, operator, value } = condition;
  const shown =
    typeof value === "object" && "fact" in value ? value.fact : Array.isArray(value) ? value.join(", ") : value;
  return `${fact} ${operator} ${String(shown)}`;
}
