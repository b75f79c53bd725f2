export type { BlankSurvey, BlankSurveyInput } from "./blank-survey/blank-survey.js";
export { blankSurvey } from "./blank-survey/blank-survey.js";
export { builtDocument } from "./built/document.js";
export { BuiltReport } from "./built/report.js";
export { builtCsv } from "./built/table.js";
export { isRecalledOrUncovered } from "./built/words.js";
export { changesJson } from "./changes/changes-json.js";
export { type ChangesShown, changesText } from "./changes/changes-text.js";
export { columnFileDraft, type DraftOptions } from "./columns/column-file-draft.js";
export { columnsJson } from "./columns/columns-json.js";
export { columnsReport } from "./columns/columns-report.js";
export { findingsCsv, pointsCsv } from "./csv/tables.js";
export { leadingFinding } from "./findings/leading.js";
export { missingOf, reasonOf, remedyOf, sourceOf } from "./findings/reasons.js";
export type { RuleIndex } from "./findings/rule-index.js";
export { indexRules } from "./findings/rule-index.js";
export { differenceText } from "./handover/difference-text.js";
export { exportText, mappingProblemsText } from "./handover/export-text.js";
export { type HandoverFile, type HandoverInput, handoverFileNames, handoverFiles } from "./handover/handover-files.js";
export { pointWording } from "./handover/point-wording.js";
export { jsonDocument, jsonDocumentBytes, ndjsonDocument } from "./json/document.js";
export { movingChart } from "./moving/moving-chart.js";
export { movingCsv } from "./moving/moving-csv.js";
export { movingJson } from "./moving/moving-json.js";
export { movingText } from "./moving/moving-text.js";
export { htmlReport } from "./report/report.js";
export type { RulebookDocumentInput } from "./rulebook-document/book-shown.js";
export { rulebookHtml } from "./rulebook-document/html-document.js";
export { rulebookMarkdown } from "./rulebook-document/markdown-document.js";
export { rulesIndex } from "./rulebook-document/rules-index.js";
export { checkJson } from "./rules-check/check-json.js";
export { checkSarif } from "./rules-check/check-sarif.js";
export { checkMistakesText, checkText } from "./rules-check/check-text.js";
export type { RulesCheck, WrongCase } from "./rules-check/rules-check.js";
export { BUILT_SCHEMA, builtSchemaText } from "./schemas/built-schema.js";
export { RESULT_SCHEMA, resultSchemaText } from "./schemas/result-schema.js";
export type { SchemaPart } from "./schemas/schema-words.js";
export {
  COMPARED_HEAD_SCHEMA,
  COMPARED_POINT_SCHEMA,
  ISSUED_HEAD_SCHEMA,
  ISSUED_POINT_SCHEMA,
} from "./schemas/stored-schemas.js";
export { WORK_PACKS_SCHEMA, workPacksSchemaText } from "./schemas/work-packs-schema.js";
export type { WrittenFile } from "./terminal/report.js";
export { terminalReport } from "./terminal/report.js";
export { cellsRead } from "./why/cells-read.js";
export { type WhyContext, whyText } from "./why/why-text.js";
export { factValueInWords, limitInForceInWords, limitInWords } from "./wording/facts.js";
export { countOf } from "./wording/numbers.js";
export { markedOutcome } from "./wording/outcomes.js";
export { pointInWords, rowInWords } from "./wording/places.js";
export { asBuiltWorkbook } from "./work-packs/as-built-workbook.js";
export { AS_BUILT_WORKBOOK } from "./work-packs/file-names.js";
export { isPackFile, type WorkPackFile, workPackFiles, workPacksJson } from "./work-packs/files.js";
export type { ScreenedSurveyInput } from "./workbook/screened-survey.js";
export { screenedSurvey } from "./workbook/screened-survey.js";
export { screenedWorkbook } from "./workbook/screened-workbook.js";
export type { ScreenedInput, ScreenedSurvey } from "./workbook/sheet-results.js";
