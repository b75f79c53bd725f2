import type { Survey } from "../records/index.js";
import { showFact } from "../screening/index.js";
import { COMPARED, METHOD_AND_PLACE } from "./carrying.js";
import type { Difference } from "./result.js";
import type { Row } from "./rows.js";
import { differ, isFilled, isStated, type SameText, saidOf } from "./said.js";

/** The facts, in the order of the catalogue, that a survey asks and that can be compared; made once per survey. */
const asked = new WeakMap<Survey, readonly string[]>();

/** The facts of a survey that are compared and carried over, in the order of the catalogue. */
export function comparedOf(survey: Survey): readonly string[] {
  const known = asked.get(survey) ?? COMPARED.filter((id) => survey.factsAsked.has(id));
  asked.set(survey, known);
  return known;
}

/**
 * Facts that both rows state and that cannot be the same. A number differs where its interval, accuracy included, does
 * not meet the other one; what was planned and what was measured are facts of their own, which the rules compare.
 */
export function differencesOf(proposed: Row, built: Row, sameText: SameText): readonly Difference[] {
  const differences: Difference[] = [];
  for (const fact of comparedOf(built.survey)) {
    const now = saidOf(built.record.facts, fact);
    if (!isFilled(now)) continue;
    const then = saidOf(proposed.record.facts, fact);
    if (!isStated(then) || !differ(fact, then, now, sameText)) continue;
    differences.push({
      fact,
      proposed: showFact(fact, proposed.record.facts),
      built: showFact(fact, built.record.facts),
      needsNewVerdict: METHOD_AND_PLACE.includes(fact),
    });
  }
  return differences;
}
