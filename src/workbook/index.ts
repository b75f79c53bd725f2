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
