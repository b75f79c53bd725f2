import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";

const FIRST_PART = "[Content_Types].xml";

/**
 * Packs a workbook anew, so that the same content gives the same bytes: parts sorted by name, all with one fixed
 * time, deflated by one implementation. On the way, what the writing library cannot say is put right: texts that
 * look like formulas are marked as texts, comment boxes are made large enough to read, and the program that wrote
 * the file is named.
 */
export function fixedPackage(bytes: Uint8Array, program: string, ending: ".xlsx" | ".xlsm" = ".xlsx"): Uint8Array {
  const parts = unzipSync(bytes);
  const names = Object.keys(parts).filter((name) => !name.endsWith("/"));
  names.sort((a, b) => Number(b === FIRST_PART) - Number(a === FIRST_PART) || (a < b ? -1 : 1));
  const packed: Zippable = {};
  for (const name of names) packed[name] = corrected(name, parts[name] ?? new Uint8Array(), program, ending);
  // Made of local parts, because the archive stores local time: it reads 1980-01-01 12:00 in every time zone.
  return zipSync(packed, { level: 6, mtime: new Date(1980, 0, 1, 12, 0, 0) });
}

function corrected(name: string, part: Uint8Array, program: string, ending: string): Uint8Array {
  if (name === FIRST_PART && ending === ".xlsm") return edited(part, allowMacros);
  if (name === "xl/styles.xml") return edited(part, markTexts);
  if (name === "docProps/app.xml") return edited(part, (xml) => nameProgram(xml, program));
  if (/^xl\/drawings\/vmlDrawing\d+\.vml$/.test(name)) return edited(part, widenBoxes);
  return part;
}

function edited(part: Uint8Array, edit: (xml: string) => string): Uint8Array {
  return strToU8(edit(strFromU8(part)));
}

/** Spreadsheet programs open a file named .xlsm only if its content says that it may hold macros. */
function allowMacros(xml: string): string {
  return xml.replace(
    "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
    "application/vnd.ms-excel.sheet.macroEnabled.main+xml",
  );
}

/** Number format 49 is "text"; the mark makes the spreadsheet program keep it when the cell is edited. */
function markTexts(xml: string): string {
  return xml.replace(/<xf numFmtId="49"/g, '<xf quotePrefix="1" numFmtId="49"');
}

function nameProgram(xml: string, program: string): string {
  const name = program.replace(/[^\w .-]/g, "");
  return xml
    .replace(/<Application>[^<]*<\/Application>/, `<Application>${name}</Application>`)
    .replace(/<AppVersion>[^<]*<\/AppVersion>/, "");
}

const BOX_COLUMNS = 4;
const BOX_ROWS = 6;

/** The box of a comment: its anchor is left, offset, top, offset, right, offset, bottom, offset in cells. */
function widenBoxes(xml: string): string {
  return xml
    .replace(/width:97\.8pt;height:59\.1pt/g, "width:240pt;height:130pt")
    .replace(/<x:Anchor>([\d, ]+)<\/x:Anchor>/g, (_all, numbers: string) => {
      const [left = 0, leftBy = 0, top = 0, topBy = 0, , rightBy = 0, , bottomBy = 0] = numbers.split(",").map(Number);
      const box = [left, leftBy, top, topBy, left + BOX_COLUMNS, rightBy, top + BOX_ROWS, bottomBy];
      return `<x:Anchor>${box.join(", ")}</x:Anchor>`;
    });
}
