import type { CellValue, RawSheet, RawWorkbook } from "../../../src/workbook/index.js";
import {
  type PlacedValue,
  type PlainCells,
  type PlainValue,
  placed,
  plainText,
  withoutBlankRows,
} from "./plain-cells.js";

/** Days from the beginning of serial numbers to 1 January 1970, by date system. */
const SERIAL_OF_1970 = { 1900: 25_569, 1904: 24_107 } as const;
const DAY_MS = 86_400_000;

/** The cells as this project reads them. */
export function ourCells({ kind, sheets, dateSystem }: RawWorkbook): PlainCells {
  const cellsOf = (sheet: RawSheet): readonly PlacedValue[] => {
    const all = sheet.rows.flatMap(({ cells }) =>
      cells.map(({ row, column, value }) => ({ row, column, value: plainValue(value, SERIAL_OF_1970[dateSystem]) })),
    );
    return kind === "csv" ? withoutBlankRows(all) : all;
  };
  return new Map(sheets.map((sheet) => [sheet.name ?? "", placed(cellsOf(sheet))]));
}

function plainValue(value: CellValue, serialOf1970: number): PlainValue | null {
  switch (value.kind) {
    case "text":
      return plainText(value.text);
    case "number":
      return value.number;
    case "boolean":
      return value.boolean;
    case "error":
      return { error: value.text };
    case "date":
      return serialOf(value.iso, serialOf1970);
    case "unusable":
      return { unusable: true };
    case "no-result":
      return null;
  }
}

/** A day or moment as its serial number; a time of day as its share of the day. */
function serialOf(iso: string, serialOf1970: number): number {
  if (!iso.includes("-")) return Date.parse(`1970-01-01T${iso.replace(/Z$/, "")}Z`) / DAY_MS;
  const local = iso.replace(/(?:Z|[+-]\d{2}:\d{2})$/, "");
  return Date.parse(local.includes("T") ? `${local}Z` : local) / DAY_MS + serialOf1970;
}
