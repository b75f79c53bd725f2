export type { ImportProblem, ProblemCode } from "./cells/problems.js";
export { describeProblem } from "./cells/problems.js";
export { type DraftColumn, type DraftSheet, draftOf } from "./draft.js";
export type { SurveyReader } from "./read-survey.js";
export { surveyReader } from "./read-survey.js";
export type { ColumnReading, PointRecord, SheetReading, Survey } from "./rows/survey.js";
export type {
  Candidate,
  ColumnUnderstood,
  SheetUnderstood,
  SurveyReading,
  SurveyUnderstood,
  TableUnderstood,
} from "./understanding.js";
export { type WordClash, type WordPlace, wordClashes } from "./words/word-clashes.js";
