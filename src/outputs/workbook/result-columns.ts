import type { Finding, PointResult, ResultHead } from "../../screening/index.js";
import { gravestFirst } from "../findings/leading.js";
import { missingOf, reasonOf, remedyOf, sourceOf } from "../findings/reasons.js";
import { indexRules, type RuleIndex } from "../findings/rule-index.js";
import { acceptedOnPoint, markedFinding, markedPoint } from "../wording/deviations.js";
import { otherMethodInWords, triedInWords } from "../wording/methods.js";

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

const ACCEPTED: ResultColumn = {
  heading: "accepted",
  width: 26,
  text: ({ point }) => acceptedOnPoint(point).join("\n"),
};

/** The last ones are for the screen, paper is not wide enough for all. */
const COLUMNS: readonly ResultColumn[] = [
  { heading: "verdict", width: 8, text: (row) => markedPoint(row.point) },
  { heading: "leading reason", width: 26, text: (_row, [first], rules) => (first ? reasonOf(first, rules) : "") },
  { heading: "what to do", width: 23, text: (_row, [first], rules) => (first ? remedyOf(first, rules) : "") },
  { heading: "missing facts", width: 16, text: (_row, grave) => missingOf(grave) },
  {
    heading: "other findings",
    width: 26,
    text: (_row, [, ...others], rules) =>
      others.map((finding) => `${markedFinding(finding)}: ${reasonOf(finding, rules)}`).join("\n"),
  },
  { heading: "note", width: 12, text: noteOn },
  { heading: "another method", width: 60, text: (row) => otherMethodInWords(row.point) },
  { heading: "methods tried", width: 80, text: (row) => triedInWords(row.point) },
  { heading: "source", width: 80, text: (_row, [first], rules) => (first ? sourceOf(first, rules) : "") },
  { heading: "point id", width: 38, text: (row) => row.point.id ?? "" },
];

/** The first column that is not printed. */
const FOR_THE_SCREEN = "another method";

function noteOn({ point, hidden, remarks }: ResultRow): string {
  return [
    ...(hidden ? ["hidden in the survey"] : []),
    ...(point.id === null ? ["no point id: the row says too little"] : []),
    ...(remarks > 0 ? [`${remarks} on reading, see Remarks`] : []),
  ].join("; ");
}

/** Our columns to the right of a survey. */
export interface ResultColumns {
  readonly columns: readonly ResultColumn[];
  /** How many of them are printed. */
  readonly printed: number;
  /** The texts of all of them for one row. */
  textsOf(row: ResultRow): readonly string[];
}

/** The columns of a run; what is accepted has one where deviations were handed in. */
export function resultColumns(head: Pick<ResultHead, "rules" | "models" | "deviations">): ResultColumns {
  const rules = indexRules(head);
  const columns = COLUMNS.flatMap((column) =>
    column.heading === "note" && head.deviations !== null ? [ACCEPTED, column] : [column],
  );
  return {
    columns,
    printed: columns.findIndex(({ heading }) => heading === FOR_THE_SCREEN),
    textsOf: (row) => {
      const grave = gravestFirst(row.point.findings, rules);
      return columns.map((column) => column.text(row, grave, rules));
    },
  };
}
