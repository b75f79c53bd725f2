import * as sheetjs from "@e965/xlsx";
import exceljs from "exceljs";
import type { RawWorkbook } from "../../../src/workbook/index.js";

/** Filled cells by sheet and address, each as text that tells values and kinds apart. */
export type Cells = ReadonlyMap<string, string>;

const LONG = 200;

/** A long value by its length and its ends: some workbooks hold a megabyte of text in thousands of cells. */
function short(value: unknown): string {
  const text = typeof value === "string" ? value : JSON.stringify(value);
  return text.length > LONG ? `${text.length}: ${text.slice(0, LONG)} … ${text.slice(-LONG)}` : text;
}

export function cellsOfOurs(workbook: RawWorkbook): Cells {
  const cells = new Map<string, string>();
  for (const sheet of workbook.sheets) {
    for (const row of sheet.rows) {
      for (const { column, value } of row.cells) {
        const address = sheetjs.utils.encode_cell({ r: row.row - 1, c: column - 1 });
        cells.set(`${sheet.name}!${address}`, value.kind === "text" ? short(value.text) : JSON.stringify(value));
      }
    }
  }
  return cells;
}

/** What SheetJS finds; null where it does not open the file. */
export function cellsOfSheetJs(bytes: Uint8Array): Cells | null {
  const cells = new Map<string, string>();
  try {
    const book = sheetjs.read(bytes, { type: "array", cellFormula: true, cellStyles: false });
    for (const name of book.SheetNames) {
      for (const [address, cell] of Object.entries(book.Sheets[name] ?? {})) {
        if (address.startsWith("!")) continue;
        const { t, v, f } = cell as sheetjs.CellObject;
        if (t !== "z") cells.set(`${name}!${address}`, `${t} ${short(v ?? null)} ${f ?? ""}`);
      }
    }
    return cells;
  } catch {
    return null;
  }
}

/** What exceljs finds; null where it does not open the file. */
export async function cellsOfExcelJs(bytes: Uint8Array): Promise<Cells | null> {
  const cells = new Map<string, string>();
  try {
    const book = new exceljs.Workbook();
    await book.xlsx.load(bytes.slice().buffer);
    for (const sheet of book.worksheets) {
      sheet.eachRow((row) =>
        row.eachCell((cell) => {
          if (cell.value !== null) cells.set(`${sheet.name}!${cell.address}`, short(cell.value));
        }),
      );
    }
    return cells;
  } catch {
    return null;
  }
}

/** Cells that are gone or hold something else; those that are new do not count. */
export function changedCells(before: Cells, after: Cells): readonly string[] {
  return [...before].flatMap(([place, value]) =>
    after.get(place) === value ? [] : [`${place}: ${value} became ${after.get(place)}`],
  );
}
