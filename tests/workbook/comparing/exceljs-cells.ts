import { Readable } from "node:stream";
import ExcelJS from "exceljs";
import {
  type PlacedValue,
  type PlainCells,
  type PlainValue,
  placed,
  plainText,
  withoutBlankRows,
} from "./plain-cells.js";

const DAY_MS = 86_400_000;

/** The cells as exceljs reads them; it throws what it throws. */
export async function exceljsCells(bytes: Uint8Array): Promise<PlainCells> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.slice().buffer as ArrayBuffer);
  const serialOf1970 = book.properties.date1904 ? 24_107 : 25_569;
  return new Map(book.worksheets.map((sheet) => [sheet.name, placed(cellsOf(sheet, serialOf1970))]));
}

/** A text table, decoded and with its separator known, as exceljs reads it. */
export async function exceljsTable(text: string, separator: string): Promise<PlainCells> {
  const book = new ExcelJS.Workbook();
  const sheet = await book.csv.read(Readable.from([text]), {
    map: (value: unknown) => value,
    parserOptions: { delimiter: separator },
  });
  return new Map([["", placed(withoutBlankRows(cellsOf(sheet, 0)))]]);
}

function* cellsOf(sheet: ExcelJS.Worksheet, serialOf1970: number): Iterable<PlacedValue> {
  const rows: ExcelJS.Row[] = [];
  sheet.eachRow((row) => rows.push(row));
  for (const row of rows) {
    const cells: ExcelJS.Cell[] = [];
    row.eachCell((cell) => cells.push(cell));
    for (const cell of cells) {
      // A covered cell shows the value of the merge, not its own.
      if (cell.isMerged && cell.master !== cell) continue;
      const value = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value;
      yield { row: Number(cell.row), column: Number(cell.col), value: plainValue(value, serialOf1970) };
    }
  }
}

function plainValue(value: unknown, serialOf1970: number): PlainValue | null {
  if (value === null || value === undefined) return null;
  if (typeof value === "string") return plainText(value);
  if (typeof value === "number" || typeof value === "boolean") return value;
  if (value instanceof Date) return value.getTime() / DAY_MS + serialOf1970;
  if (typeof value !== "object") return String(value);
  if ("error" in value) return { error: String(value.error) };
  if ("richText" in value && Array.isArray(value.richText)) {
    return plainText(value.richText.map(({ text }: { text: unknown }) => String(text)).join(""));
  }
  return "text" in value ? plainValue(value.text, serialOf1970) : JSON.stringify(value);
}
