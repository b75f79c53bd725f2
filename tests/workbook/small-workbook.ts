import { strToU8, zipSync } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

/** One sheet of a workbook made for a test. */
export interface SmallSheet {
  readonly name?: string;
  /** What stands inside `sheetData`. */
  readonly data?: string;
  /** What stands before and after `sheetData`. */
  readonly before?: string;
  readonly after?: string;
  readonly state?: string;
}

/** Parts beside the sheets; a part set to null is left out. */
export interface SmallParts {
  readonly sharedStrings?: string;
  readonly styles?: string;
  readonly workbookProperties?: string;
  /** Whole parts by name, in place of or beside the usual ones. */
  readonly parts?: Readonly<Record<string, string | Uint8Array | null>>;
}

/** The XML of a sheet part. */
function sheetXml({ data = "", before = "", after = "" }: SmallSheet): string {
  return `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="${MAIN}">${before}<sheetData>${data}</sheetData>${after}</worksheet>`;
}

/** A list of relationships. */
export function relationships(
  links: readonly (readonly [id: string, type: string, target: string, mode?: string | undefined])[],
): string {
  const items = links.map(
    ([id, type, target, mode]) =>
      `<Relationship Id="${id}" Type="${LINK}/${type}" Target="${target}"${mode ? ` TargetMode="${mode}"` : ""}/>`,
  );
  return `<Relationships xmlns="${PACKAGE}">${items.join("")}</Relationships>`;
}

/** The parts of a small workbook by name, before they are zipped. */
export function smallParts(sheets: readonly SmallSheet[], extra: SmallParts = {}): Record<string, Uint8Array> {
  const listed = sheets.map(
    (sheet, i) =>
      `<sheet name="${sheet.name ?? `Sheet${i + 1}`}" sheetId="${i + 1}"${sheet.state ? ` state="${sheet.state}"` : ""} r:id="rId${i + 1}"/>`,
  );
  const links: [string, string, string][] = sheets.map((_, i) => [
    `rId${i + 1}`,
    "worksheet",
    `worksheets/sheet${i + 1}.xml`,
  ]);
  if (extra.sharedStrings !== undefined) links.push(["rIdT", "sharedStrings", "sharedStrings.xml"]);
  if (extra.styles !== undefined) links.push(["rIdS", "styles", "styles.xml"]);
  const parts: Record<string, string | Uint8Array | null> = {
    "_rels/.rels": relationships([["rId1", "officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${LINK}">${extra.workbookProperties ?? ""}<sheets>${listed.join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relationships(links),
  };
  for (const [i, sheet] of sheets.entries()) parts[`xl/worksheets/sheet${i + 1}.xml`] = sheetXml(sheet);
  if (extra.sharedStrings !== undefined)
    parts["xl/sharedStrings.xml"] = `<sst xmlns="${MAIN}">${extra.sharedStrings}</sst>`;
  if (extra.styles !== undefined) parts["xl/styles.xml"] = `<styleSheet xmlns="${MAIN}">${extra.styles}</styleSheet>`;
  Object.assign(parts, extra.parts);
  const bytes: Record<string, Uint8Array> = {};
  for (const [name, content] of Object.entries(parts)) {
    if (content !== null) bytes[name] = typeof content === "string" ? strToU8(content) : content;
  }
  return bytes;
}

/** A whole .xlsx file. */
export function smallWorkbook(sheets: readonly SmallSheet[], extra: SmallParts = {}): Uint8Array {
  return zipSync(smallParts(sheets, extra), { mtime: new Date("2026-01-01T00:00:00Z") });
}
