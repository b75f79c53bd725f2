export { readAddress } from "./cell-address.js";
export type {
  CellValue,
  Inflating,
  MergedRange,
  NumberFormat,
  RawCell,
  RawRow,
  RawSheet,
  RawWorkbook,
  ReadingLimits,
  UnreadableFile,
  WorkbookReading,
} from "./cells.js";
export type { WorkbookEditing } from "./editing/edit-workbook.js";
export { editWorkbook } from "./editing/edit-workbook.js";
export type {
  AddedRow,
  AddedSheet,
  CellLook,
  EditCell,
  FramedCell,
  FrameLine,
  SheetEdit,
  WorkbookEdits,
} from "./editing/edits.js";
export type { UneditableReason } from "./editing/uneditable.js";
export { DEFAULT_LIMITS, HIGHEST_LIMITS, LIMIT_NAMES } from "./limits.js";
export { sheetOfTexts } from "./packed-cells.js";
export { portableInflating } from "./portable-inflating.js";
export type { ReadingOptions } from "./read-workbook.js";
export { readWorkbook } from "./read-workbook.js";
