import type { CellPlace, Outcome } from "../base/index.js";
import type { UnknownReason } from "../facts/index.js";
import type { LimitSpoken, Margin } from "../rulebook/index.js";
import type { Accepted } from "./deviations/deviation-shown.js";

/** A fact as a finding shows it. Numbers: `value` if single, else `lowest` and `highest` (null for no bound). */
export interface FactShown {
  readonly fact: string;
  readonly value: number | string | boolean | null;
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly unit: string | null;
  /** Stated accuracy, ±, in `unit`. */
  readonly accuracy: number | null;
  /** What was taken for granted, in words. */
  readonly assumed: string | null;
  /** Cells it was read from; of a derived fact, the cells of the facts under it. */
  readonly cells: readonly CellPlace[];
  /** Line of the site, model or table file that states it. */
  readonly origin: { readonly file: string; readonly line: number } | null;
}

/** An accuracy, plus or minus. */
export interface MeasureTo {
  readonly accuracy: number;
  /** Unit of the fact. */
  readonly unit: string;
}

/** A survey, site or model fact that would have to be known (better), or one for which a table has no value. */
export interface MissingFact {
  readonly fact: string;
  readonly reason: UnknownReason;
  /**
   * Of a number that is too close to a limit: how accurately it must be measured again to settle the rule, if the
   * reading stays the same. Null where no accuracy of this fact alone would, or where it sits on the limit itself.
   */
  readonly measureTo: MeasureTo | null;
}

/** A change of one fact by which a finding would pass, or no longer apply: the smallest in its direction. */
export interface ChangeFound {
  readonly fact: string;
  /** What it is now, a number in `unit`; null where that is no single value. */
  readonly from: number | string | boolean | null;
  readonly to: number | string;
  readonly unit: string | null;
  /** Rules of the run that would then say worse of the same point than they do now. */
  readonly breaks: readonly string[];
}

/** What one rule says of one point, with its trace. Pass and not-applicable are listed only on request. */
export interface Finding {
  readonly rule: string;
  readonly outcome: Outcome;
  readonly atBest: Outcome | null;
  /** The judged fact first. */
  readonly facts: readonly FactShown[];
  readonly limit: LimitSpoken | null;
  readonly margin: Margin | null;
  readonly missing: readonly MissingFact[];
  readonly message: string | null;
  /** In words: the changes that were found, then what the rule advises. */
  readonly remedy: string | null;
  /** Of a fail or a warning: changes of one fact that would do, those that make no other rule worse first. */
  readonly changes: readonly ChangeFound[];
  /** Id of the group that the finding refers to; null for a finding of the point's own. */
  readonly group: string | null;
  /** Who has accepted it in force on the day; null where nobody has. The outcome stays what it is. */
  readonly accepted: Accepted | null;
}
