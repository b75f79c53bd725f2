import type { PointWording } from "../../handover/index.js";
import type { ResultHead } from "../../screening/index.js";
import { gravestFirst, leadingFinding } from "../findings/leading.js";
import { missingOf, reasonOf, remedyOf } from "../findings/reasons.js";
import { indexRules } from "../findings/rule-index.js";
import { otherMethodInWords } from "../wording/methods.js";

/** How findings are put into words for a handover: as in every other output. */
export function pointWording(head: Pick<ResultHead, "rules" | "models">): PointWording {
  const rules = indexRules(head);
  return {
    leading: ({ findings }) => {
      const leading = leadingFinding(findings, rules);
      if (leading === null) return null;
      const { rule, outcome } = leading;
      return { rule, severity: outcome, message: reasonOf(leading, rules), remedy: remedyOf(leading, rules) };
    },
    missing: ({ findings }) => missingOf(gravestFirst(findings, rules)),
    otherMethod: otherMethodInWords,
  };
}
