import type { PlainDay, Stage, TextPlace } from "../../base/index.js";

/** Outcomes that can be accepted. */
export const ACCEPTABLE = ["fail", "warn", "undecided"] as const;
export type Acceptable = (typeof ACCEPTABLE)[number];

/** A limit or a value as it was when a deviation was accepted. */
export interface NumberAccepted {
  readonly written: string;
  /** One number, or a pair for a band, in the unit of the fact that the rule judges. */
  readonly values: readonly number[];
}

/** A deviation from one rule at one point that somebody answers for, in force on [from, until). */
export interface Deviation {
  /** Id of the point (a UUID), or its name as results show it. */
  readonly point: string;
  readonly rule: string;
  /** The worst outcome that is accepted. */
  readonly outcome: Acceptable;
  /** Null where the acceptance does not name the limit. */
  readonly limit: NumberAccepted | null;
  /** The value that was found; one farther on the bad side of the limit is not accepted. Null: any value is. */
  readonly value: NumberAccepted | null;
  readonly reason: string;
  /** Name and role. */
  readonly acceptedBy: string;
  readonly from: PlainDay;
  /** First day not in force. */
  readonly until: PlainDay;
  readonly at: TextPlace;
}

/** A file of accepted deviations, checked. */
export interface Deviations {
  readonly file: string;
  /** SHA-256 of the canonical JSON of the file's data. */
  readonly digest: string;
  readonly entries: readonly Deviation[];
}

/** What is to be known of a rule to accept a deviation from it. */
export interface DeviableRule {
  readonly id: string;
  /** `never`: no deviation from it is accepted. */
  readonly releases: "never" | null;
  /** The fact that its limits speak of, by stage. */
  readonly judges: Readonly<Record<Stage, string | null>>;
}
