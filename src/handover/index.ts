export {
  type Accepting,
  acceptExport,
  type Cause,
  type ChangedValue,
  type DifferenceFound,
  deviationsFromReceipt,
  differenceRemarks,
  differenceSince,
  digestOfState,
  EXPORT_RECEIPT,
  EXPORTED_STATE,
  type ExportedState,
  type ExportNow,
  type ExportReceipt,
  type ExportSource,
  exportedStateText,
  exportReceipt,
  exportReceiptText,
  type FoundNow,
  filesToSend,
  type RefusedFound,
  type RefusedRow,
  type ReturnedLine,
  readExportedState,
  readReceipt,
  refusedRows,
  type SentRow,
  type StoredReading,
  type TargetDifference,
} from "./difference/index.js";
export { type FilledTarget, type Filling, fillMapping } from "./fill-mapping.js";
export { leftOverParts } from "./left-over.js";
export type { MappedColumn, MappedFile, MappedRow, WithdrawnWord } from "./mapped.js";
export type { Column, DayPattern, Encoding, FileForm, Mapping, Target } from "./mapping.js";
export { MAPPING_SCHEMA } from "./mapping-schema.js";
export { type FilePart, partsOf } from "./parts.js";
export type { LeadingWords, PointWording } from "./point-lookup.js";
export { type MappingProblem, type MappingRemark, MOST_SHOWN } from "./problems.js";
export { type MappingReading, readMapping } from "./read-mapping.js";
export { SIGNS } from "./write-value.js";
