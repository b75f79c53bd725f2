export type { AuditReport } from "./audit.js";
export { auditScreening } from "./audit.js";
export { CAUTION_OF_A_ROW, CAUTIONS } from "./cautions.js";
export { changedFacts } from "./changed-facts.js";
export {
  type Accepted,
  DEVIATION_STATUSES,
  type DeviationShown,
  type DeviationStatus,
  type DeviationsShown,
} from "./deviations/deviation-shown.js";
export { UnclearDeviations } from "./deviations/deviations-on-points.js";
export { BUILT_IN_RULES, readDeviations } from "./deviations/read-deviations.js";
export { showFact } from "./fact-shown.js";
export { namesOf, type PointNames, plainName, pointIdOf, pointUuid, uuidOfNames } from "./identity.js";
export type { ScreeningInput, ScreeningOptions } from "./input.js";
export { ENDING_WITHIN } from "./input.js";
export { type ReadyRule, weightOf, worst } from "./judge-point.js";
export { type LikePoints, likePoints } from "./like-points.js";
export { factsInMessage } from "./messages.js";
export { askingOf, columnsLacking, unstatedFacts } from "./not-asked.js";
export type { PointFacts } from "./point-facts.js";
export { readyRules } from "./ready-rules.js";
export { repeatedBy } from "./repeated.js";
export type {
  Bin,
  ChangeFound,
  ClassCounts,
  Disagreement,
  Distributions,
  FactShown,
  Finding,
  FreedByRule,
  Freeing,
  FreeingStep,
  GroupRow,
  GroupShown,
  LimitShown,
  MarginSpread,
  MethodAdvised,
  MethodTried,
  MissingFact,
  ModelShown,
  NotAsked,
  OpenPoints,
  OtherMethod,
  PointResult,
  PointWithFacts,
  ReadingSettled,
  ResultHead,
  RuleCounts,
  RuleShown,
  Screening,
  SettlingStep,
  Spread,
  Summary,
  SurveyShown,
  TableShown,
} from "./result.js";
export { conditionInWords, limitsShown } from "./rule-shown.js";
export {
  type ChangedBy,
  type ChangeShown,
  type OverlayShown,
  overlaysOfRule,
  type RulebookShown,
  rulebookShown,
  type SwitchedOffShown,
} from "./rulebook-shown.js";
export { type PointJudge, pointJudge, reachesLevel, screen } from "./screen.js";
export type { FactWhy, PointWhy, RuleWhy } from "./why.js";
export { whyPoints } from "./why.js";
