import { showText } from "../../base/index.js";

/** Kinds of remark and trouble met in reading a survey; a closed list, so that programs can act on it. */
export type ProblemCode =
  | "missing"
  | "not-a-number"
  | "ambiguous-number"
  | "unknown-unit"
  | "wrong-dimension"
  | "several-values"
  | "inequality"
  | "doubtful"
  | "out-of-range"
  | "not-whole"
  | "unknown-choice"
  | "ambiguous-choice"
  | "spreadsheet-error"
  | "not-a-date"
  | "ambiguous-date"
  | "impossible-date"
  | "not-rms"
  | "not-a-thread"
  | "looks-converted"
  | "not-plain-text"
  | "unknown-heading"
  | "not-in-survey"
  | "too-long"
  | "conflicting"
  | "assumed"
  | "dropped-remark"
  | "hidden-row"
  | "hidden-column"
  | "hidden-sheet"
  | "ditto"
  | "row-skipped"
  | "no-id"
  | "no-group"
  | "no-model"
  | "file-remark";

/** One thing to know about a survey; `sheet` is null for CSV, `cell` null where the whole sheet or file is meant. */
export interface ImportProblem {
  readonly code: ProblemCode;
  readonly file: string;
  readonly sheet: string | null;
  readonly cell: string | null;
  /** As typed; null where no column is concerned. */
  readonly heading: string | null;
  readonly fact: string | null;
  readonly found: string | null;
  /** What was expected, and what to do. */
  readonly text: string;
}

/** One line: the place, what was found, what to do, and the code. */
export function describeProblem(problem: ImportProblem): string {
  const sheet = problem.sheet === null ? "" : ` > ${problem.sheet}`;
  const cell = problem.cell === null ? "" : `${problem.sheet === null ? " " : "!"}${problem.cell}`;
  const heading = problem.heading === null ? "" : ` (${showText(problem.heading, 40)})`;
  const found = problem.found === null ? "" : ` found "${showText(problem.found)}";`;
  return `${problem.file}${sheet}${cell}${heading}:${found} ${problem.text} [${problem.code}]`;
}
