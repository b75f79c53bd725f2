/**
 * The public library of spotface: what the command line does, by function calls. What is not exported here may
 * change any day.
 *
 * @packageDocumentation
 */
export type { CellPlace, Interval, Outcome, PlainDay, Stage, TextFile, Verdict } from "./base/index.js";
export type {
  BuiltCheck,
  BuiltHead,
  BuiltInput,
  BuiltPoint,
  BuiltSummary,
  Difference,
  IssuedResult,
} from "./built/index.js";
export { checkBuilt } from "./built/index.js";
export type { CheckBuiltFilesOptions, CheckBuiltFilesResult } from "./cli/check-built-files.js";
export { checkBuiltFiles } from "./cli/check-built-files.js";
export type { ExportFilesOptions, ExportFilesResult } from "./cli/export-files.js";
export { exportFiles } from "./cli/export-files.js";
export { openDeviations } from "./cli/open-deviations.js";
export { openRulebook, openSiteFile } from "./cli/open-rulebook.js";
export type { OpenedSurvey, OpenedSurveys, OpenOptions } from "./cli/open-surveys.js";
export { openSurveys } from "./cli/open-surveys.js";
export type { ScreenFilesOptions, ScreenFilesResult } from "./cli/screen-files.js";
export { screenFiles } from "./cli/screen-files.js";
export type {
  ColumnFile,
  ColumnGuide,
  FactDefinition,
  FactState,
  Facts,
  SiteStatements,
  WordLists,
} from "./facts/index.js";
export { CATALOGUE, findFact } from "./facts/index.js";
export type {
  ExportedState,
  ExportReceipt,
  Filling,
  MappedColumn,
  MappedFile,
  MappedRow,
  Mapping,
  MappingProblem,
  MappingReading,
  MappingRemark,
  RefusedRow,
  ReturnedLine,
  TargetDifference,
} from "./handover/index.js";
export {
  acceptExport,
  exportedStateText,
  exportReceiptText,
  fillMapping,
  MAPPING_SCHEMA,
  readExportedState,
  readMapping,
  readReceipt,
  refusedRows,
} from "./handover/index.js";
export {
  asBuiltWorkbook,
  BUILT_SCHEMA,
  builtCsv,
  builtDocument,
  findingsCsv,
  type GroupInput,
  type HandoverFile,
  type HandoverInput,
  handoverFiles,
  handoverGroup,
  htmlReport,
  jsonDocument,
  leadingFinding,
  ndjsonDocument,
  pointsCsv,
  pointWording,
  RESULT_SCHEMA,
  screenedSurvey,
  screenedWorkbook,
  terminalReport,
  WORK_PACKS_SCHEMA,
  workPackFiles,
  workPacksJson,
} from "./outputs/index.js";
export type {
  ColumnReading,
  ImportProblem,
  PointRecord,
  Survey,
  SurveyReader,
  SurveyUnderstood,
} from "./records/index.js";
export { describeProblem, surveyReader } from "./records/index.js";
export type {
  AddedWords,
  Citation,
  ColumnFileReading,
  Deviation,
  Deviations,
  DeviationsReading,
  FileFinding,
  Overlay,
  OverlayFiles,
  Rule,
  Rulebook,
  RulebookLoading,
  SensorModel,
  ValueTable,
  WordFileReading,
} from "./rulebook/index.js";
export { addWords, loadRulebook, readColumnFile, readSiteFile, readWordFile } from "./rulebook/index.js";
export type {
  Accepted,
  AuditReport,
  DeviationShown,
  DeviationsShown,
  Finding,
  PointResult,
  ReadingSettled,
  ResultHead,
  RulebookShown,
  Screening,
  ScreeningInput,
  ScreeningOptions,
  Summary,
} from "./screening/index.js";
export { auditScreening, pointUuid, readDeviations, screen, UnclearDeviations } from "./screening/index.js";
export type { Inflating, RawWorkbook, ReadingLimits, ReadingOptions } from "./workbook/index.js";
export { DEFAULT_LIMITS, portableInflating, readWorkbook } from "./workbook/index.js";
export type {
  AcceptedFinding,
  HeldBack,
  HeldBackCause,
  PointJob,
  PointOfRun,
  Release,
  WorkPack,
  WorkPacks,
} from "./workpacks/index.js";
export { releasedPoints, workPacks } from "./workpacks/index.js";
