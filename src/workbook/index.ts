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
export { DEFAULT_LIMITS, HIGHEST_LIMITS, LIMIT_NAMES } from "./limits.js";
export { sheetOfTexts } from "./packed-cells.js";
export { portableInflating } from "./portable-inflating.js";
export type { ReadingOptions } from "./read-workbook.js";
export { readWorkbook } from "./read-workbook.js";
