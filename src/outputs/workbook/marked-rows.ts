import type { PointResult } from "../../screening/index.js";
import { reasonOf } from "../findings/reasons.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { acceptedInWords } from "../wording/deviations.js";
import { markedOutcome } from "../wording/outcomes.js";
import type { SurveyMarks } from "./survey-marks.js";
import { bodyRow, headingRow, type TextRow } from "./text-sheet.js";

/** Widths of the sheet "Marked cells". */
export const MARKED_WIDTHS = [24, 8, 18, 120];

/**
 * Each framed cell of a survey with the reason, because the survey's own comments stay as they are; limits and sources
 * stand under "Rules applied".
 */
export function* markedRows(
  points: Iterable<PointResult>,
  file: string,
  marks: SurveyMarks,
  rules: RuleIndex,
): Generator<TextRow> {
  yield headingRow("sheet", "cell", "outcome", "why it is framed");
  for (const point of points) {
    if (point.file !== file) continue;
    for (const mark of marks.heldBy(point)) {
      const why = mark.findings
        .flatMap((one) => [reasonOf(one, rules), ...(one.accepted === null ? [] : [acceptedInWords(one.accepted)])])
        .join("\n");
      yield bodyRow(mark.sheet ?? "", mark.cell, markedOutcome(mark.outcome), why);
    }
  }
}
