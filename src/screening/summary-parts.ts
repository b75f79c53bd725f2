/** Points that one rule alone keeps from a better verdict, as if it said nothing more against them. */
export interface FreedByRule {
  readonly rule: string;
  /** It is the only one that fails, and nothing warns or is open. */
  readonly failToPass: number;
  /** It is the only one that fails, and something else warns or is open. */
  readonly failToWarn: number;
  /** It is the only one that warns, nothing fails and nothing is open. */
  readonly warnToPass: number;
}

/** One step in mending what fails. */
export interface FreeingStep {
  readonly rules: readonly string[];
  /** Points that fail no more after this step, with what was mended before. */
  readonly points: number;
  /** Of those, points that would then pass. */
  readonly wouldPass: number;
  readonly pointsSoFar: number;
}

/**
 * What mending rules would free. What a change breaks elsewhere is not counted; a point that fails because something
 * is not known is freed by no mending.
 */
export interface Freeing {
  /** In the order of the rulebook; a rule that alone keeps no point is left out. */
  readonly alone: readonly FreedByRule[];
  /** One after the other, each step the rules that free the most further points per rule. */
  readonly inTurn: readonly FreeingStep[];
}

/** Points from one value up to, and not including, another; null for no end on that side. */
export interface Bin {
  readonly from: number | null;
  readonly to: number | null;
  readonly points: number;
}

/** How the values of points are spread. */
export interface Spread {
  readonly unit: string | null;
  /** Points with a value. */
  readonly known: number;
  /** Points without one. */
  readonly notKnown: number;
  /** Side by side, without gaps, round numbers between them; empty where nothing is known. */
  readonly bins: readonly Bin[];
}

/** How the margins of one rule are spread: the distance to its failing limit, positive on the good side. */
export interface MarginSpread extends Spread {
  readonly rule: string;
  /** What is counted in `known`, `notKnown` and the bins: points, or by a rule of groups the groups, each once. */
  readonly counts: "points" | "groups";
  /** Null where the margins are fractions of the limit; else that of the judged fact. */
  readonly unit: string | null;
}

/** How speeds and margins are spread over all points, those that pass included. */
export interface Distributions {
  /** The lowest running speed, of each point the lowest that it can be. */
  readonly lowestSpeed: Spread;
  /** Rules with a limit that is a number, in the order of the rulebook; those that decided nothing left out. */
  readonly margins: readonly MarginSpread[];
}
