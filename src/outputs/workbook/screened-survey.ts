import type { Screening } from "../../screening/index.js";
import { editWorkbook, type Inflating, type WorkbookEditing } from "../../workbook/index.js";
import { indexRules } from "../findings/rule-index.js";
import { GROUPS, GROUPS_WIDTHS, groupRows, hasGroupRows } from "./group-rows.js";
import { MARKED_WIDTHS, markedRows } from "./marked-rows.js";
import { LOOKS, ourSheet } from "./our-sheet.js";
import { resultColumns } from "./result-columns.js";
import type { ScreenedSurvey } from "./sheet-results.js";
import { REMARKS_WIDTHS, RULES_WIDTHS, remarksRows, rulesRows, SUMMARY_WIDTHS, summaryRows } from "./summary-rows.js";
import { surveyEdit } from "./survey-edit.js";
import { SurveyMarks } from "./survey-marks.js";

/** The survey was admitted when it was read, perhaps under higher limits than the usual ones. */
const ADMITTED = { sheetPartBytes: Number.POSITIVE_INFINITY, otherPartBytes: Number.POSITIVE_INFINITY };

/** What a screened survey is made from. */
export interface ScreenedSurveyInput {
  /** The whole run; its points are judged several times over, because keeping them would take far more room. */
  readonly screening: Screening;
  readonly survey: ScreenedSurvey;
  /** The file of the survey, unchanged since it was read. */
  readonly bytes: Uint8Array;
}

/**
 * The survey itself with the results in it: our columns to the right of each sheet with points, offending cells
 * framed, and behind its own sheets ours: four, and one more where groups of points do not pass. All else stays as it
 * is: charts, pictures, macros, names, formulas. No formula is ever written, outcomes are told by shape and word, and
 * the same input gives the same bytes.
 *
 * @param inflating - how this machine unpacks deflated data and takes checksums
 * @returns the file in pieces, or why this survey cannot be edited; `screenedWorkbook` makes a new one then
 */
export async function screenedSurvey(
  { screening, survey, bytes }: ScreenedSurveyInput,
  inflating: Inflating,
): Promise<WorkbookEditing> {
  if (survey.workbook.kind !== "xlsx") {
    return { ok: false, reason: { code: "text", text: "it is a table of text, which can hold no marks" } };
  }
  const { head } = screening;
  const rules = indexRules(head);
  const columns = resultColumns(head);
  const points = () => screening.points();
  const marks = new SurveyMarks(survey, rules);
  for (const point of points()) if (point.file === survey.file) marks.add(point);
  const summary = screening.summary();
  const own = head.surveys.filter(({ file }) => file === survey.file);
  const verdicts = head.surveys.length > 1 ? marks.verdicts : null;
  const files = new Set([survey.file]);
  const sheets = survey.workbook.sheets
    .map((raw) => surveyEdit(raw, survey, marks, points, columns))
    .filter(({ rows, frames }) => rows.size + frames.length > 0);
  return editWorkbook(
    bytes,
    {
      looks: LOOKS,
      sheets,
      added: [
        ourSheet("Summary", SUMMARY_WIDTHS, 0, () => summaryRows(head, summary, verdicts)),
        ourSheet("Rules applied", RULES_WIDTHS, 1, () => rulesRows(head)),
        ...(hasGroupRows(head, files, rules)
          ? [ourSheet(GROUPS, GROUPS_WIDTHS, 1, () => groupRows(head, files, rules))]
          : []),
        ourSheet("Remarks", REMARKS_WIDTHS, 0, () => remarksRows({ surveys: own }, [])),
        // Last, because it goes through all points to the end, after which the counts of the run are whole again.
        ourSheet("Marked cells", MARKED_WIDTHS, 1, () => markedRows(points(), survey.file, marks, rules)),
      ],
    },
    inflating,
    ADMITTED,
  );
}
