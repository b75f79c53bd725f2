import { nodeInflating } from "../../src/disk/index.js";
import {
  type CellValue,
  type RawSheet,
  type RawWorkbook,
  type ReadingOptions,
  readWorkbook,
} from "../../src/workbook/index.js";
import { type SmallParts, smallWorkbook } from "./small-workbook.js";

/** The workbook in the file, or a failed test that says why there is none. */
export async function opened(bytes: Uint8Array, options: ReadingOptions = {}): Promise<RawWorkbook> {
  const reading = await readWorkbook(bytes, nodeInflating, options);
  if (!reading.ok) throw new Error(`should open, but ${reading.error.code}: ${reading.error.text}`);
  return reading.workbook;
}

/** Code and sentence for a file that must be refused; the form of the sentence is checked on the way. */
export async function refused(
  bytes: Uint8Array,
  options: ReadingOptions = {},
): Promise<{ code: string; text: string }> {
  const reading = await readWorkbook(bytes, nodeInflating, options);
  if (reading.ok) throw new Error("should be refused, but opens");
  if (!isSentence(reading.error.text)) throw new Error(`not fit for people: ${reading.error.text}`);
  return reading.error;
}

/** One line, lower-case start or a quoted name, no full stop at the end, no words of a library. */
export function isSentence(text: string): boolean {
  return /^[a-z"][^\n\r\0]*[^.\s]$/.test(text) && !/undefined|\[object|Error|saxes|zlib|csv-parse/.test(text);
}

/** Values of the cells by address-like key "row:column". */
export function valuesOf(sheet: RawSheet | undefined): Record<string, CellValue> {
  const values: Record<string, CellValue> = {};
  for (const row of sheet?.rows ?? []) for (const cell of row.cells) values[`${cell.row}:${cell.column}`] = cell.value;
  return values;
}

/** Values of the one sheet with this content. */
export async function valuesIn(data: string, extra: SmallParts = {}): Promise<Record<string, CellValue>> {
  return valuesOf((await opened(smallWorkbook([{ data }], extra))).sheets[0]);
}

/** The value of a single cell written like this. */
export async function valueIn(cell: string, extra: SmallParts = {}): Promise<CellValue | undefined> {
  return Object.values(await valuesIn(`<row r="1">${cell}</row>`, extra))[0];
}

/** The sheets with the cells of every row, as plain data that can be compared. */
export function plainSheets(workbook: RawWorkbook): unknown {
  return workbook.sheets.map(({ rows, hiddenColumns, ...sheet }) => ({
    ...sheet,
    hiddenColumns: [...hiddenColumns],
    rows: rows.map(({ row, hidden, cells }) => ({ row, hidden, cells })),
  }));
}
