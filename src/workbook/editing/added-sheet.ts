import { columnLetters } from "../../base/index.js";
import { xmlText } from "./cell-spelling.js";
import type { CellXml } from "./cell-xml.js";
import type { AddedSheet } from "./edits.js";
import type { Family } from "./families.js";
import type { PartSink } from "./part-sink.js";

const A4 = 9;
const A3 = 8;
/** Wider sheets, in characters, would be too small to read on A4. */
const WIDEST_ON_A4 = 300;
const ROWS_AT_ONCE = 500;

/** Writes a sheet of our own: landscape, as wide as one page, with its name and page numbers at the foot. */
export function* writeAddedSheet(sheet: AddedSheet, family: Family, cells: CellXml, sink: PartSink) {
  sink.text(
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${family.main}">` +
      `<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>${view(sheet)}<sheetFormatPr defaultRowHeight="15"/>`,
  );
  const widths = sheet.widths.map(
    (width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`,
  );
  if (widths.length > 0) sink.text(`<cols>${widths.join("")}</cols>`);
  sink.text("<sheetData>");
  let row = 0;
  for (const { height, cells: own } of sheet.rows()) {
    row += 1;
    if (own.every((cell) => cell === null)) continue;
    const tall = height === null ? "" : ` ht="${height}" customHeight="1"`;
    sink.text(`<row r="${row}"${tall}>${cells.cells(row, 1, own)}</row>`);
    if (row % ROWS_AT_ONCE === 0) yield;
  }
  const paper = sheet.widths.reduce((sum, width) => sum + width, 0) > WIDEST_ON_A4 ? A3 : A4;
  sink.text(
    '</sheetData><pageMargins left="0.4" right="0.4" top="0.5" bottom="0.6" header="0.3" footer="0.3"/>' +
      `<pageSetup paperSize="${paper}" orientation="landscape" fitToHeight="0"/>` +
      `<headerFooter><oddFooter>&amp;L&amp;8${xmlText(sheet.footer.replaceAll("&", "&&"))}` +
      "&amp;C&amp;8&amp;A&amp;R&amp;8&amp;P / &amp;N</oddFooter></headerFooter></worksheet>",
  );
  yield;
}

function view({ frozenRows }: AddedSheet): string {
  if (frozenRows === 0) return "";
  const below = `${columnLetters(1)}${frozenRows + 1}`;
  return (
    '<sheetViews><sheetView workbookViewId="0">' +
    `<pane ySplit="${frozenRows}" topLeftCell="${below}" activePane="bottomLeft" state="frozen"/>` +
    "</sheetView></sheetViews>"
  );
}
