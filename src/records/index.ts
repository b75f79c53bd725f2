export type { ImportProblem, ProblemCode } from "./problems.js";
export { describeProblem } from "./problems.js";
export type { SurveyReader, SurveyReading } from "./read-survey.js";
export { surveyReader } from "./read-survey.js";
export type { ColumnReading, PointRecord, SheetReading, Survey } from "./survey.js";
