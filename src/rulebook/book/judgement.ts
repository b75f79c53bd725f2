import type { Outcome, TextPlace } from "../../base/index.js";
import type { Facts, UnknownReason } from "../../facts/index.js";
import type { BandKind } from "./rule.js";

/**
 * The limit that a judgement rests on: the band that spoke, for a pass the nearest failing one (the nearest warning
 * one where nothing can fail). Of an open outcome it is the band that is open.
 */
export interface LimitSpoken {
  readonly is: BandKind;
  /** In `unit`: a number, a pair for `outside`, choices for `oneOf` and `noneOf`; null where a bound is unknown. */
  readonly value: number | readonly [number, number] | readonly string[] | null;
  readonly unit: string | null;
  /** First day of the dated entry. */
  readonly from: string;
  /** The fact that the bound is taken from, or null for a number of the rule itself; the first one of a pair. */
  readonly fact: string | null;
  /** Line of the rule, or of the model value or row of a table that the bound is taken from. */
  readonly origin: { readonly file: string; readonly line: number };
  readonly cites: readonly string[];
}

/** Distance to the nearest failing limit from the worst end of the interval; positive on the good side. */
export interface Margin {
  /** In the unit of the judged fact. */
  readonly value: number;
  /** Of the limit's magnitude; null at a limit of 0 and for a temperature. */
  readonly fraction: number | null;
}

/** A fact that would have to be known (better) for the rule to be decided; may be a derived one. */
export interface OpenFact {
  readonly fact: string;
  readonly reason: UnknownReason;
}

/** What one rule says of one set of facts. */
export interface Judgement {
  readonly outcome: Outcome;
  /** Of an open outcome: the best that could still come out; null otherwise, and where no limit can decide anything. */
  readonly atBest: Outcome | null;
  readonly limit: LimitSpoken | null;
  readonly margin: Margin | null;
  readonly open: readonly OpenFact[];
}

/** A rule made ready for one stage and one day; runs over many rows. */
export interface CompiledRule {
  readonly ruleId: string;
  /** The fact its limits speak of, or null. */
  readonly judged: string | null;
  /** Every fact it names, the judged one first, others in the order of the file; named conditions included. */
  readonly factsNamed: readonly string[];
  /** The day to review the limit has passed; the limit still holds. */
  readonly reviewOverdue: boolean;
  judge(facts: Facts): Judgement;
  /**
   * The fewest of the facts that leave it open (ids as in `Judgement.open`, derived ones as a whole) that would decide
   * it whatever they turn out to be.
   */
  decidedBy(facts: Facts, open: readonly string[]): readonly string[];
  /** The outcome alone, several times as fast. */
  outcomeOn(facts: Facts): Pick<Judgement, "outcome" | "atBest">;
  /** The template of the message for an outcome; null where the rule has none. */
  readonly messages: { readonly fail: string | null; readonly warn: string | null };
  readonly at: TextPlace;
}
