import type { Outcome, PlainDay, Stage, TextPlace } from "../../base/index.js";

/** How well a limit or formula is founded; never labelled better than it is. */
export const BASES = [
  "standard",
  "handbook",
  "data-set",
  "maker-data",
  "company-practice",
  "derivation",
  "common-practice",
  "from-memory",
] as const;
export type Basis = (typeof BASES)[number];

/** The source of a limit. */
export interface Citation {
  readonly id: string;
  readonly basis: Basis;
  /** What the source says, in our words. */
  readonly says: string;
  /** Title of the standard, book or data set. */
  readonly source?: string;
  /** Only where it was read. */
  readonly clause?: string;
  readonly readOn?: PlainDay;
}

/** A bound of a band: a number in the unit of the judged fact, or a fact, scaled and shifted. */
export type Bound =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "fact"; readonly fact: string; readonly times: number; readonly plus: number };

export type BandKind = "below" | "above" | "atOrBelow" | "atOrAbove" | "outside" | "oneOf" | "noneOf" | "when";

/** One way in which a limit is broken. */
export type Band =
  | { readonly is: "below" | "above" | "atOrBelow" | "atOrAbove"; readonly bound: Bound; readonly at: TextPlace }
  | { readonly is: "outside"; readonly bounds: readonly [Bound, Bound]; readonly at: TextPlace }
  | { readonly is: "oneOf" | "noneOf"; readonly choices: readonly string[]; readonly at: TextPlace }
  | { readonly is: "when"; readonly condition: Condition; readonly at: TextPlace };

/** The operators of a comparison, as json-rules-engine names them; there are no others. */
export const OPERATORS = [
  "equal",
  "notEqual",
  "lessThan",
  "lessThanInclusive",
  "greaterThan",
  "greaterThanInclusive",
  "in",
  "notIn",
] as const;
export type Operator = (typeof OPERATORS)[number];

/** A plain value in a condition: a number in the unit of the fact, a choice or text, or yes and no. */
export type ConditionValue = number | string | boolean;

/** The condition grammar of json-rules-engine, checked; units are already converted to the fact's own. */
export type Condition =
  | { readonly kind: "all" | "any"; readonly parts: readonly Condition[] }
  | { readonly kind: "not"; readonly part: Condition }
  | { readonly kind: "named"; readonly name: string }
  | {
      readonly kind: "comparison";
      readonly fact: string;
      readonly operator: Operator;
      readonly value: ConditionValue | readonly ConditionValue[] | { readonly fact: string };
    };

/** The limits in force on [from, until). */
export interface LimitEntry {
  readonly from: PlainDay;
  /** First day not in force; null while none is set. */
  readonly until: PlainDay | null;
  readonly reviewBy: PlainDay | null;
  readonly fail: readonly Band[];
  readonly warn: readonly Band[];
  readonly cites: readonly string[];
  readonly at: TextPlace;
}

/** A case of a rule, as written beside it. `given` keeps the values as written. */
export interface RuleCase {
  readonly name: string;
  readonly given: Readonly<Record<string, unknown>>;
  readonly expect: Outcome;
  readonly missing: readonly string[] | null;
  readonly at: TextPlace;
}

/** One rule file, checked. */
export interface Rule {
  readonly id: string;
  readonly title: string;
  /** The group of rows that the rule judges as a whole; null for a rule of single points. */
  readonly group: string | null;
  readonly sets: readonly string[];
  readonly stages: readonly Stage[];
  readonly appliesWhen: Condition | null;
  /** The fact that the limits speak of, by stage; null where only free conditions speak. */
  readonly judges: Readonly<Record<Stage, string | null>>;
  readonly limits: readonly LimitEntry[];
  readonly citations: ReadonlyMap<string, Citation>;
  readonly messages: { readonly fail?: string; readonly warn?: string };
  readonly remedy: { readonly text: string; readonly change: readonly string[] };
  /** How an open question counts in the verdict. */
  readonly undecided: "warn" | "fail";
  /** `never`: what it speaks of can hurt somebody, so no deviation from it is ever accepted; null for other rules. */
  readonly releases: "never" | null;
  readonly cases: readonly RuleCase[];
  /** Settings and facts that every case starts from. */
  readonly casesGive: Readonly<Record<string, unknown>>;
  readonly at: TextPlace;
}
