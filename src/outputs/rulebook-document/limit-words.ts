import { factName } from "../../facts/index.js";
import type { Rule, Rulebook } from "../../rulebook/index.js";
import { limitsShown } from "../../screening/index.js";
import { whereBroken } from "../wording/facts.js";

/** The facts that a rule judges, by stage, each once; none where only conditions speak. */
export function judgedBy(rule: Rule): readonly string[] {
  return [...new Set(rule.stages.map((stage) => rule.judges[stage]))].filter((id) => id !== null);
}

/** What a rule judges, in words ("planned tightening torque or applied tightening torque"). */
export function subjectOf(rule: Rule): string {
  return judgedBy(rule).map(factName).join(" or ") || "it";
}

/** Where a rule fails and warns, in one line; each dated limit with its day where there are more. */
export function limitsInLine(rule: Rule, rulebook: Pick<Rulebook, "conditions">): string {
  const [judged = null] = judgedBy(rule);
  return rule.limits
    .map((limit) => {
      const words = limitsShown(limit, judged, rulebook)
        .map((one) => `${one.outcome === "fail" ? "fails" : "warns"} ${whereBroken(one, subjectOf(rule))}`)
        .join("; ");
      return rule.limits.length === 1 ? words : `from ${limit.from}: ${words}`;
    })
    .join("; ");
}
