import type { Inflating, RawSheet, RawWorkbook, ReadingLimits } from "./cells.js";
import { KeptValues } from "./kept-values.js";
import { WorkbookPackage } from "./package.js";
import { type Relationship, readRelationships } from "./relationships.js";
import { SharedStrings } from "./shared-strings.js";
import { SharedTexts } from "./shared-texts.js";
import { type SheetContent, type SheetContext, SheetReader } from "./sheet.js";
import { CellCount } from "./sheet-rows.js";
import { readStyles } from "./styles.js";
import { quoted, refuse } from "./unreadable.js";
import { type ListedSheet, readWorkbookPart } from "./workbook-part.js";
import { refuseZipWithoutWorkbook } from "./zip-kind.js";

/** How one reading is done. */
export interface XlsxReading {
  readonly inflating: Inflating;
  readonly limits: ReadingLimits;
  /** Told the share of the sheets that is read, 0 to 1. */
  readonly onProgress: (doneFraction: number) => void;
}

/**
 * Reads a workbook. Its parts are found by relationships alone, as the format demands; names mean nothing.
 *
 * @throws Unreadable with the reason in words
 */
export async function readXlsx(bytes: Uint8Array, reading: XlsxReading): Promise<RawWorkbook> {
  const source = new WorkbookPackage(bytes, reading.inflating, reading.limits);
  const workbookKey = await findWorkbook(source);
  const links = await readRelationships(source, workbookKey);
  const part = await source.part(workbookKey, "other");
  if (!part) return refuseZipWithoutWorkbook(source);
  const { sheets: listed, dateSystem } = readWorkbookPart(part);
  const remarks: string[] = [];
  const located = locateSheets(source, listed, links, remarks);
  const context = await readTables(source, links, reading.limits);

  const total = located.reduce((sum, { key }) => sum + source.statedBytes(key), 0);
  let before = 0;
  const sheets: RawSheet[] = [];
  for (const { sheet, key } of located) {
    const onBytes = (done: number): void => reading.onProgress(total === 0 ? 1 : (before + done) / total);
    const content = await readSheet(source, key, sheet.name, { ...context, remarks, onBytes });
    if (content === null) return refuseMissing(sheet);
    sheets.push({ name: sheet.name, visibility: sheet.visibility, ...content });
    before += source.statedBytes(key);
  }
  return { kind: "xlsx", sheets, dateSystem, remarks };
}

async function findWorkbook(source: WorkbookPackage): Promise<string> {
  const links = await readRelationships(source, "");
  const targets = new Set(links.flatMap(({ type, target }) => (type === "officedocument" && target ? [target] : [])));
  const [first, ...others] = targets;
  if (first === undefined || !source.has(first)) return refuseZipWithoutWorkbook(source);
  if (others.length > 0) {
    refuse(
      "two-workbooks",
      "the file holds two workbooks, so it cannot be said which one counts; open it in a spreadsheet program, check it and save it again",
    );
  }
  if (first.endsWith(".bin")) {
    refuse("binary-workbook", "the file is a binary workbook (.xlsb); save it as .xlsx in a spreadsheet program");
  }
  return first;
}

interface LocatedSheet {
  readonly sheet: ListedSheet;
  readonly key: string;
}

/** The worksheets with their parts, in the order of the workbook; sheets of other kinds become a remark. */
function locateSheets(
  source: WorkbookPackage,
  listed: readonly ListedSheet[],
  links: readonly Relationship[],
  remarks: string[],
): readonly LocatedSheet[] {
  const byId = new Map(links.map((link) => [link.id, link]));
  const located = new Map<string, LocatedSheet>();
  const names = new Set<string>();
  for (const sheet of listed) {
    const link = byId.get(sheet.relationshipId);
    if (link && link.type !== "worksheet") {
      remarks.push(`the sheet ${quoted(sheet.name)} is not a worksheet and was left out`);
      continue;
    }
    if (!link?.target || !source.has(link.target)) return refuseMissing(sheet);
    const name = sheet.name.toLowerCase();
    const twin = located.get(link.target);
    if (twin || names.has(name)) {
      refuse(
        "duplicate-sheet",
        twin
          ? `the sheets ${quoted(twin.sheet.name)} and ${quoted(sheet.name)} are the same part of the workbook; open it in a spreadsheet program, check it and save it again`
          : `the workbook has two sheets named ${quoted(sheet.name)}; rename one of them`,
      );
    }
    names.add(name);
    located.set(link.target, { sheet, key: link.target });
  }
  if (located.size === 0) {
    refuse(
      "no-worksheet",
      "the workbook holds no worksheet; save the survey as .xlsx with at least one sheet of cells",
    );
  }
  return [...located.values()];
}

async function readTables(
  source: WorkbookPackage,
  links: readonly Relationship[],
  limits: ReadingLimits,
): Promise<Omit<SheetContext, "onBytes" | "remarks">> {
  const targetOf = (type: string) => links.find((link) => link.type === type)?.target ?? null;
  let texts: SharedStrings | null = null;
  await source.pour(targetOf("sharedstrings"), "other", (name) => {
    texts = new SharedStrings(name, limits.cellCharacters);
    return texts;
  });
  const sharedTexts = (texts as SharedStrings | null)?.texts ?? new SharedTexts(limits.cellCharacters);
  const styles = await source.part(targetOf("styles"), "other");
  const formats = styles ? readStyles(styles) : null;
  const tables = { sharedTexts, formats, mostCharacters: limits.cellCharacters };
  return {
    tables,
    kept: new KeptValues(limits.cellCharacters, sharedTexts),
    limits,
    count: new CellCount(limits.cells),
  };
}

/** The content of a sheet; null if its part does not exist. */
async function readSheet(
  source: WorkbookPackage,
  key: string,
  sheet: string,
  context: SheetContext,
): Promise<SheetContent | null> {
  let reader: SheetReader | null = null;
  await source.pour(key, "sheet", (part) => {
    reader = new SheetReader(part, sheet, context);
    return reader;
  });
  return (reader as SheetReader | null)?.content() ?? null;
}

function refuseMissing(sheet: ListedSheet): never {
  return refuse(
    "missing-sheet",
    `the workbook lists the sheet ${quoted(sheet.name)} but does not hold it; open it in a spreadsheet program and save it again`,
  );
}
