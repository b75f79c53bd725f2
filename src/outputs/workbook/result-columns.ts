import type { Finding, PointResult } from "../../screening/index.js";
import { gravestFirst } from "../findings/leading.js";
import { missingOf, reasonOf, remedyOf, sourceOf } from "../findings/reasons.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { otherMethodInWords, triedInWords } from "../wording/methods.js";
import { markedOutcome } from "../wording/outcomes.js";

/** What a row of a screened sheet says beside the survey. */
export interface ResultRow {
  readonly point: PointResult;
  readonly hidden: boolean;
  /** Remarks of the import on this row. */
  readonly remarks: number;
}

/** One of our columns: heading, width in characters, and its text. */
export interface ResultColumn {
  readonly heading: string;
  readonly width: number;
  text(row: ResultRow, grave: readonly Finding[], rules: RuleIndex): string;
}

/** Our columns, to the right of the survey; the last ones are for the screen, paper is not wide enough for all. */
export const RESULT_COLUMNS: readonly ResultColumn[] = [
  { heading: "verdict", width: 8, text: (row) => markedOutcome(row.point.verdict) },
  { heading: "leading reason", width: 26, text: (_row, [first], rules) => (first ? reasonOf(first, rules) : "") },
  { heading: "what to do", width: 23, text: (_row, [first], rules) => (first ? remedyOf(first, rules) : "") },
  { heading: "missing facts", width: 16, text: (_row, grave) => missingOf(grave) },
  {
    heading: "other findings",
    width: 26,
    text: (_row, [, ...others], rules) =>
      others.map((finding) => `${markedOutcome(finding.outcome)}: ${reasonOf(finding, rules)}`).join("\n"),
  },
  { heading: "note", width: 12, text: noteOn },
  { heading: "another method", width: 60, text: (row) => otherMethodInWords(row.point) },
  { heading: "methods tried", width: 80, text: (row) => triedInWords(row.point) },
  { heading: "source", width: 80, text: (_row, [first], rules) => (first ? sourceOf(first, rules) : "") },
  { heading: "point id", width: 38, text: (row) => row.point.id ?? "" },
];

/** How many of our columns are printed. */
export const PRINTED_COLUMNS = RESULT_COLUMNS.findIndex((column) => column.heading === "another method");

function noteOn({ point, hidden, remarks }: ResultRow): string {
  return [
    ...(hidden ? ["hidden in the survey"] : []),
    ...(point.id === null ? ["no point id: the row says too little"] : []),
    ...(remarks > 0 ? [`${remarks} on reading, see Remarks`] : []),
  ].join("; ");
}

/** The texts of all our columns for one row. */
export function resultTexts(row: ResultRow, rules: RuleIndex): readonly string[] {
  const grave = gravestFirst(row.point.findings, rules);
  return RESULT_COLUMNS.map((column) => column.text(row, grave, rules));
}
