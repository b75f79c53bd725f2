export {
  type BookSignature,
  readSignatureFile,
  SIGNATURE_FILE,
  type SignedBook,
  signatureText,
  textToSign,
} from "./book-signature.js";
export { givenFacts } from "./case-reading.js";
export { columnOption } from "./column-option.js";
export { type CompiledGroup, type CompiledMember, compileGroup } from "./compile-group.js";
export { type CompileOptions, compileRule } from "./compile-rule.js";
export { inForce } from "./dated.js";
export type { Deviation, Deviations } from "./deviation.js";
export {
  type ComputedFact,
  type EngineComparison,
  type EngineCondition,
  type EngineRoot,
  type EngineRules,
  type EngineValue,
  engineRules,
} from "./engine-rules.js";
export { factMeant } from "./fact-meant.js";
export { readGiven } from "./fact-values.js";
export { factsInCondition, factsNamedBy } from "./facts-named.js";
export { type FileLimits, RULEBOOK_LIMITS } from "./file-limits.js";
export { isRulePath } from "./file-roles.js";
export type { Group, GroupMember } from "./group.js";
export type { CompiledRule, Judgement, LimitSpoken, Margin, OpenFact } from "./judgement.js";
export { type LoadOptions, loadRulebook } from "./load.js";
export { waysOn } from "./measuring-reading.js";
export { modelFactsOn } from "./model-reading.js";
export { canBeChanged } from "./names-in-use.js";
export {
  type BookThing,
  type Overlay,
  type OverlayChange,
  type OverlayFiles,
  type SiteWord,
  type SwitchedOff,
  type WordOfOverlays,
  wordOfOverlays,
} from "./overlay.js";
export { type OverlayAlone, type OverlayReading, readOverlay } from "./overlay-alone.js";
export { type CheckedFile, readCheckedFile } from "./read-checked-file.js";
export { type ColumnFileReading, readColumnFile } from "./read-column-file.js";
export { type DeviationsReading, readDeviationFile } from "./read-deviation-file.js";
export { readSiteFile, type SiteReading } from "./read-site-file.js";
export { type AddedWords, addWords, readWordFile, type WordFileReading } from "./read-word-file.js";
export type {
  Band,
  BandKind,
  Basis,
  Bound,
  Citation,
  Condition,
  ConditionValue,
  LimitEntry,
  Operator,
  Rule,
  RuleCase,
} from "./rule.js";
export { BASES, OPERATORS } from "./rule.js";
export type {
  FileFinding,
  ModelValue,
  PlaceOfWord,
  Rulebook,
  RulebookLoading,
  SensorModel,
  WayOfMeasuring,
} from "./rulebook.js";
export { type CaseOptions, type CaseRun, differenceOf, type PreparedCase, prepareCase, runCase } from "./run-case.js";
export {
  CHANGEABLE_KINDS,
  choose,
  DIALECT,
  editorSchema,
  ID,
  type JsonSchema,
  SCHEMA_FILES,
  TEXT,
} from "./schemas/index.js";
export { below, type Report } from "./source.js";
export type { TableEntry, TableRow, ValueTable } from "./table.js";
export { type TableLookup, tablesOn, withTables } from "./table-lookup.js";
export { type BandTrace, type ConditionTrace, type RuleTrace, traceRule } from "./trace.js";
