import { strFromU8, unzipSync } from "fflate";
import type { CellLook, SheetEdit, WorkbookEdits } from "../../../src/workbook/index.js";
import { valuesOf } from "../reading.js";
import type { SmallParts, SmallSheet } from "../small-workbook.js";
import { editableWorkbook, editedFile, LOOK, read } from "./small-edit.js";

export const SHEET = "xl/worksheets/sheet1.xml";
export const ROWS =
  '<row r="1"><c r="A1" t="inlineStr"><is><t>Tag</t></is></c></row><row r="2"><c r="A2"><v>7</v></c></row>';
export const STYLES =
  '<fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>' +
  '<cellXfs count="2"><xf fontId="0"/><xf fontId="0" numFmtId="9"><protection locked="0"/></xf></cellXfs>';

/** One column with the word "added" in these rows of the first sheet; whatever else is asked for. */
export function adding(
  rows: readonly number[],
  more: Partial<SheetEdit> = {},
  looks: readonly CellLook[] = [LOOK],
): WorkbookEdits {
  const cellsOf = () => [{ content: "added", look: 0 }];
  const sheet = { sheet: "Sheet1", widths: [12], rows: new Set(rows), cellsOf, printed: 0, frames: [], ...more };
  return { looks, sheets: [sheet], added: [] };
}

/** The part of an edited workbook as text. */
export async function partOf(file: Uint8Array, edits: WorkbookEdits, name: string = SHEET): Promise<string> {
  return strFromU8(unzipSync(await editedFile(file, edits))[name] ?? new Uint8Array());
}

/** What stands in the cells of the first sheet after an edit, as text by "row:column". */
export async function textsIn(file: Uint8Array, edits: WorkbookEdits): Promise<Record<string, unknown>> {
  const values = valuesOf((await read(await editedFile(file, edits))).sheets[0]);
  return Object.fromEntries(
    Object.entries(values).map(([at, value]) => [
      at,
      value.kind === "text" ? value.text : "number" in value && value.number,
    ]),
  );
}

export function sheetOf(data: string, parts: Partial<SmallSheet> = {}, extra: SmallParts = {}): Uint8Array {
  return editableWorkbook([{ data, ...parts }], extra);
}

/** A workbook whose one sheet part holds this. */
export function withSheet(content: string, prefix: string = ""): Uint8Array {
  const name = prefix === "" ? "xmlns" : `xmlns:${prefix.slice(0, -1)}`;
  const xml = `<${prefix}worksheet ${name}="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${content}</${prefix}worksheet>`;
  return editableWorkbook([{}], { parts: { [SHEET]: xml } });
}
