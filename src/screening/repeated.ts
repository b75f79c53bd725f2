import type { CellPlace } from "../base/index.js";
import type { Facts } from "../facts/index.js";
import { cellsOf, rootsUnder } from "./fact-shown.js";
import type { FactShown, Finding } from "./result.js";

/** A finding that repeats another one with its own cells, or in its own group and words. */
class RepeatedFinding implements Finding {
  readonly rule: Finding["rule"];
  readonly outcome: Finding["outcome"];
  readonly atBest: Finding["atBest"];
  readonly facts: readonly FactShown[];
  readonly limit: Finding["limit"];
  readonly margin: Finding["margin"];
  readonly missing: Finding["missing"];
  readonly message: Finding["message"];
  readonly remedy: Finding["remedy"];
  readonly changes: Finding["changes"];
  readonly group: Finding["group"];
  /** A deviation speaks of one point and is looked at later. */
  readonly accepted = null;
  readonly #of: Finding;

  constructor(of: Finding, facts: readonly FactShown[], group = of.group, message = of.message) {
    this.rule = of.rule;
    this.outcome = of.outcome;
    this.atBest = of.atBest;
    this.facts = facts;
    this.limit = of.limit;
    this.margin = of.margin;
    this.missing = of.missing;
    this.message = message;
    this.remedy = of.remedy;
    this.changes = of.changes;
    this.group = group;
    this.#of = RepeatedFinding.repeatedBy(of);
  }

  static repeatedBy(finding: Finding): Finding {
    return #of in finding ? finding.#of : finding;
  }
}

/**
 * The finding that this one repeats in all but the cells of its facts, its group and its message; itself, if it was made
 * anew.
 */
export function repeatedBy(finding: Finding): Finding {
  return RepeatedFinding.repeatedBy(finding);
}

/** A finding made on one point, ready to be repeated on others of which all the same is said. */
export interface FindingPattern {
  readonly finding: Finding;
  /** For each fact it shows, the facts in whose cells that one stands. */
  readonly roots: readonly (readonly string[])[];
}

/** Keeps a finding for repeating. */
export function patternOf(finding: Finding, facts: Facts): FindingPattern {
  return { finding, roots: finding.facts.map(({ fact }) => rootsUnder(fact, facts)) };
}

/** The finding on another point: the same but for the cells. */
export function repeatOn({ finding, roots }: FindingPattern, facts: Facts): Finding {
  return new RepeatedFinding(
    finding,
    finding.facts.map((shown, i) => placedAt(shown, cellsOf(roots[i] ?? [], facts))),
  );
}

/**
 * The finding on another group of which all the same is said.
 *
 * @param message - may name the group
 */
export function repeatInGroup(finding: Finding, group: string, message: Finding["message"]): Finding {
  return new RepeatedFinding(finding, finding.facts, group, message);
}

/** The finding on a point that has shown its facts already: the same but for those. */
export function repeatWith(finding: Finding, facts: readonly FactShown[]): Finding {
  return new RepeatedFinding(finding, facts);
}

function placedAt(shown: FactShown, cells: readonly CellPlace[]): FactShown {
  const { fact, value, lowest, highest, unit, accuracy, assumed, origin } = shown;
  return { fact, value, lowest, highest, unit, accuracy, assumed, cells, origin };
}
