import { type CellObject, read, type WorkSheet } from "@e965/xlsx";
import {
  type PlacedValue,
  type PlainCells,
  type PlainValue,
  placed,
  plainText,
  withoutBlankRows,
} from "./plain-cells.js";

/** The cells as SheetJS reads them; it throws what it throws. */
export function sheetjsCells(bytes: Uint8Array): PlainCells {
  const book = read(bytes, { type: "array", dense: true, cellFormula: false, cellHTML: false, cellText: true });
  return new Map(book.SheetNames.map((name) => [name, placed(cellsOf(book.Sheets[name]))]));
}

/** A text table, decoded and with its separator known, as SheetJS reads it without turning texts into numbers. */
export function sheetjsTable(text: string, separator: string): PlainCells {
  const book = read(text, { type: "string", raw: true, dense: true, FS: separator });
  const [name = ""] = book.SheetNames;
  return new Map([["", placed(withoutBlankRows(cellsOf(book.Sheets[name])))]]);
}

function* cellsOf(sheet: WorkSheet | undefined): Iterable<PlacedValue> {
  const rows: readonly (readonly (CellObject | undefined)[] | undefined)[] = sheet?.["!data"] ?? [];
  // Rows and cells may be missing, so that neither can be walked by its values alone.
  for (const [r, row] of rows.entries()) {
    for (const [c, cell] of (row ?? []).entries()) {
      if (cell !== undefined) yield { row: r + 1, column: c + 1, value: plainValue(cell) };
    }
  }
}

function plainValue({ t, v, w }: CellObject): PlainValue | null {
  if (t === "z" || v === undefined || v === null) return null;
  if (t === "e") return { error: w ?? String(v) };
  if (typeof v === "string") return plainText(v);
  return v instanceof Date ? v.toISOString() : v;
}
