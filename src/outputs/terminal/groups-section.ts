import type { ResultHead } from "../../screening/index.js";
import { groupFindings, groupReasonOf, rowsOfGroupInWords } from "../findings/group-findings.js";
import { rowsInNoGroup } from "../findings/rows-in-no-group.js";
import { indexRules } from "../findings/rule-index.js";
import { countOf } from "../wording/numbers.js";
import { markedOutcome } from "../wording/outcomes.js";
import { paragraph } from "./layout.js";

const GROUPS_SHOWN = 8;

/** Groups that fail or warn, the gravest first, how many are open, and what none of them counts. */
export function groupsSection(head: ResultHead): readonly string[] {
  const rules = indexRules(head);
  const several = head.surveys.length > 1;
  const lines: string[] = [];
  let broken = 0;
  let open = 0;
  for (const one of groupFindings(head.groups, rules, { files: null })) {
    const { group, finding } = one;
    if (finding.outcome !== "fail" && finding.outcome !== "warn") {
      open += 1;
      continue;
    }
    broken += 1;
    if (broken > GROUPS_SHOWN) continue;
    const where = `${group.id} (${countOf(group.rows.length, "point")}: ${rowsOfGroupInWords(group.rows, several)})`;
    lines.push(...paragraph(`${where}: ${groupReasonOf(one, rules)}`, `  ${markedOutcome(finding.outcome)}  `));
  }
  if (broken > GROUPS_SHOWN) lines.push(`  and ${broken - GROUPS_SHOWN} more`);
  if (open > 0) lines.push(`  not settled: ${countOf(open, "question")} on groups`);
  for (const text of rowsInNoGroup(head)) lines.push(...paragraph(text, "  not counted: "));
  return lines.length === 0 ? [] : ["Points that belong together", ...lines];
}
