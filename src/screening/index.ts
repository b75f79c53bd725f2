export type {
  FactShown,
  Finding,
  MissingFact,
  ModelShown,
  NotAsked,
  PointResult,
  ResultHead,
  RuleCounts,
  RuleShown,
  Screening,
  Summary,
  SurveyShown,
} from "./result.js";
