/** Which outcomes each rule gave at each stage, and which of those that it can give are lacking. */

const COUNTED = ["pass", "warn", "fail", "undecided", "notApplicable"];

/**
 * What a run exercised, rule by rule. A rule can pass, can be short of a fact, and can warn or fail where one of its
 * limits in force says so; a rule that was not asked at all lacks everything. A built-in rule, which is of no set, only
 * fails.
 *
 * @param head - of a run whose points have all been judged
 * @param summary - of the same run
 */
export function exercisedBy(head, summary) {
  return head.rules.map(({ id, sets, limits }) => {
    const found = summary.byRule.find(({ rule }) => rule === id);
    const counts = Object.fromEntries(COUNTED.map((outcome) => [outcome, found?.[outcome] ?? 0]));
    const bands = ["warn", "fail"].filter((band) => limits.some(({ outcome }) => outcome === band));
    const possible = sets.length === 0 ? ["fail"] : ["pass", ...bands, "undecided"];
    return { rule: id, stage: head.stage, counts, lacking: possible.filter((outcome) => counts[outcome] === 0) };
  });
}
