import type { MappedColumn, MappedRow, Target } from "../../handover/index.js";
import { fixedPackage } from "../workbook/fixed-package.js";

const FONT = { name: "Calibri", size: 11 };
const NARROWEST = 10;
const WIDEST = 60;

/**
 * A mapped table as a workbook of one sheet: a heading row, then a row for each. All but numbers are cells of texts, also
 * where they look like formulas or begin with zeros; the same rows give the same bytes.
 */
export async function mappedWorkbook(
  target: Pick<Target, "id" | "columns">,
  columns: readonly MappedColumn[],
  rows: readonly MappedRow[],
  program: string,
): Promise<Uint8Array> {
  const { default: excel } = await import("exceljs");
  const workbook = new excel.Workbook();
  workbook.creator = program;
  workbook.created = new Date(0);
  workbook.modified = new Date(0);
  const sheet = workbook.addWorksheet(sheetName(target.id), { views: [{ state: "frozen", ySplit: 1 }] });
  const headings = sheet.getRow(1);
  for (const [place, { heading }] of columns.entries()) {
    const cell = headings.getCell(place + 1);
    cell.value = heading;
    cell.numFmt = "@";
    cell.font = { ...FONT, bold: true };
    cell.alignment = { vertical: "top", wrapText: true };
    sheet.getColumn(place + 1).width = widthOf(heading, rows, place);
  }
  for (const [index, { values }] of rows.entries()) {
    const row = sheet.getRow(index + 2);
    for (const [place, value] of values.entries()) {
      if (value === null) continue;
      const cell = row.getCell(place + 1);
      cell.font = FONT;
      cell.alignment = { vertical: "top", wrapText: value.includes("\n") };
      if (target.columns[place]?.type === "number") cell.value = asNumber(value);
      else {
        cell.value = value;
        cell.numFmt = "@";
      }
    }
  }
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  return fixedPackage(bytes, program);
}

/** A number of a column of numbers; the word that clears a field stays a text. */
function asNumber(value: string): number | string {
  return /^-?\d+(?:\.\d+)?$/.test(value) ? Number(value) : value;
}

function widthOf(heading: string, rows: readonly MappedRow[], place: number): number {
  let longest = heading.length;
  for (const { values } of rows.slice(0, 500)) {
    for (const line of (values[place] ?? "").split("\n")) longest = Math.max(longest, line.length);
  }
  return Math.min(WIDEST, Math.max(NARROWEST, longest + 2));
}

/** At most 31 characters; ids of targets hold none that a sheet name must not. */
function sheetName(id: string): string {
  return id.slice(0, 31);
}
