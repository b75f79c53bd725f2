export type { Deviation, Deviations } from "./book/deviation.js";
export type { Group, GroupMember } from "./book/group.js";
export type { CompiledRule, Judgement, LimitSpoken, Margin, OpenFact } from "./book/judgement.js";
export {
  type BookThing,
  CHANGEABLE_KINDS,
  type Overlay,
  type OverlayChange,
  type OverlayFiles,
  type SiteWord,
  type SwitchedOff,
  type WordOfOverlays,
  wordOfOverlays,
} from "./book/overlay.js";
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
} from "./book/rule.js";
export { BASES, OPERATORS } from "./book/rule.js";
export type {
  FileFinding,
  ModelValue,
  PlaceOfWord,
  Rulebook,
  RulebookLoading,
  SensorModel,
  WayOfMeasuring,
} from "./book/rulebook.js";
export type { TableEntry, TableRow, ValueTable } from "./book/table.js";
export { type CompiledGroup, type CompiledMember, compileGroup } from "./judging/compile-group.js";
export { type CompileOptions, compileRule } from "./judging/compile-rule.js";
export {
  type ComputedFact,
  type EngineComparison,
  type EngineCondition,
  type EngineRoot,
  type EngineRules,
  type EngineValue,
  engineRules,
} from "./judging/engine-rules.js";
export { factsInCondition, factsNamedBy } from "./judging/facts-named.js";
export {
  type CaseOptions,
  type CaseRun,
  differenceOf,
  type PreparedCase,
  prepareCase,
  runCase,
} from "./judging/run-case.js";
export { type TableLookup, tablesOn, withTables } from "./judging/table-lookup.js";
export { type BandTrace, type ConditionTrace, type RuleTrace, traceRule } from "./judging/trace.js";
export {
  type BookSignature,
  readSignatureFile,
  SIGNATURE_FILE,
  type SignedBook,
  signatureText,
  textToSign,
} from "./loading/book-signature.js";
export { type LoadOptions, loadRulebook } from "./loading/load.js";
export { type OverlayAlone, type OverlayReading, readOverlay } from "./loading/overlay-alone.js";
export { givenFacts } from "./reading/case-reading.js";
export { inForce } from "./reading/dated.js";
export { readGiven } from "./reading/fact-values.js";
export { waysOn } from "./reading/measuring-reading.js";
export { modelFactsOn } from "./reading/model-reading.js";
export {
  choose,
  DIALECT,
  editorSchema,
  ID,
  type JsonSchema,
  SCHEMA_FILES,
  TEXT,
} from "./schemas/index.js";
export { columnOption } from "./site-files/column-option.js";
export { type CheckedFile, readCheckedFile } from "./site-files/read-checked-file.js";
export { type ColumnFileReading, readColumnFile } from "./site-files/read-column-file.js";
export { type DeviationsReading, readDeviationFile } from "./site-files/read-deviation-file.js";
export { readSiteFile, type SiteReading } from "./site-files/read-site-file.js";
export { type AddedWords, addWords, readWordFile, type WordFileReading } from "./site-files/read-word-file.js";
export { factMeant } from "./text/fact-meant.js";
export { type FileLimits, RULEBOOK_LIMITS } from "./text/file-limits.js";
export { isRulePath } from "./text/file-roles.js";
export { canBeChanged } from "./text/names-in-use.js";
export { below, type Report } from "./text/source.js";
