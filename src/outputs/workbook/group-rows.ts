import type { ResultHead } from "../../screening/index.js";
import { groupFindings, groupReasonOf, rowsOfGroupInWords } from "../findings/group-findings.js";
import { remedyOf } from "../findings/reasons.js";
import { rowsInNoGroup } from "../findings/rows-in-no-group.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { markedOutcome } from "../wording/outcomes.js";
import { bodyRow, headingRow, type TextRow } from "./text-sheet.js";

/** Name of the sheet; left out where no group has anything to say. */
export const GROUPS = "Groups";

/** Widths of the sheet "Groups". */
export const GROUPS_WIDTHS = [14, 34, 8, 40, 24, 56, 44];

/** Each group that does not pass: which, its rows (the first of them), what is wrong with it and what to do; last what none of them counts. */
export function* groupRows(
  head: Pick<ResultHead, "groups" | "surveys">,
  files: ReadonlySet<string>,
  rules: RuleIndex,
): Generator<TextRow> {
  const several = head.surveys.length > 1;
  yield headingRow("outcome", "group", "points", "rows", "rule", "reason", "what to do");
  for (const one of groupFindings(head.groups, rules, { files })) {
    const { group, finding } = one;
    const { rows } = group;
    yield bodyRow(
      markedOutcome(finding.outcome),
      group.id,
      rows.length,
      rowsOfGroupInWords(rows, several),
      finding.rule,
      groupReasonOf(one, rules),
      remedyOf(finding, rules),
    );
  }
  for (const text of rowsInNoGroup(head, files)) yield bodyRow("not counted", "", "", "", "", text, "");
}

/** Whether any group of these files has something to say. */
export function hasGroupRows(
  head: Pick<ResultHead, "groups" | "surveys">,
  files: ReadonlySet<string>,
  rules: RuleIndex,
): boolean {
  return groupFindings(head.groups, rules, { files }).next().done !== true || rowsInNoGroup(head, files).length > 0;
}
