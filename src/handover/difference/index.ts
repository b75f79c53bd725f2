export { type Accepting, acceptExport } from "./accept.js";
export { deviationsFromReceipt, type ExportNow, type FoundNow } from "./check-receipt.js";
export { type DifferenceFound, differenceSince, filesToSend } from "./difference.js";
export { EXPORTED_STATE, type ExportedState, exportedStateText } from "./exported-state.js";
export { digestOfState, readExportedState, readReceipt, type StoredReading } from "./read-stored.js";
export { EXPORT_RECEIPT, type ExportReceipt, exportReceipt, exportReceiptText } from "./receipt.js";
export { type RefusedFound, type RefusedRow, type ReturnedLine, refusedRows } from "./refused.js";
export { CAUSES, type Cause, type ExportSource } from "./source.js";
export type { ChangedValue, SentRow, TargetDifference, WithdrawnWord } from "./target-difference.js";
