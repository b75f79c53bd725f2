export { type DraftColumn, type DraftSheet, draftOf } from "./draft.js";
export type { ImportProblem, ProblemCode } from "./problems.js";
export { describeProblem } from "./problems.js";
export type { SurveyReader } from "./read-survey.js";
export { surveyReader } from "./read-survey.js";
export type { ColumnReading, PointRecord, SheetReading, Survey } from "./survey.js";
export type {
  Candidate,
  ColumnUnderstood,
  SheetUnderstood,
  SurveyReading,
  SurveyUnderstood,
  TableUnderstood,
} from "./understanding.js";
export { type WordClash, type WordPlace, wordClashes } from "./word-clashes.js";
