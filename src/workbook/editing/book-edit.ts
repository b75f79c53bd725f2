import { partKey } from "../zip-directory.js";
import type { Book } from "./book.js";
import { spelledText, xmlText } from "./cell-spelling.js";
import { STYLES_TYPE, WORKSHEET_TYPE, withTypes } from "./content-types.js";
import { addPrintedAreas, type PrintedArea } from "./printed-areas.js";
import { TextChanges } from "./text-changes.js";
import { cannotEdit } from "./uneditable.js";
import { prefixOf } from "./xml-places.js";

const MOST_NAME_CHARACTERS = 31;
/** The greatest id that a sheet can have (ISO/IEC 29500-1, 18.18.70 leaves it open; programs stop here). */
const MOST_SHEET_ID = 65_534;

/** A part that is put into the package, with the name that it gets there. */
interface NewPart {
  readonly name: string;
  readonly type: string;
  readonly linkType: string;
}

/** The workbook with new sheets behind its own: new texts of the parts that list them, and names for the new parts. */
export interface BookEdit {
  /** New texts by key. */
  readonly changed: ReadonlyMap<string, string>;
  /** Names of the parts of the new sheets, in their order. */
  readonly sheetParts: readonly string[];
  /** Name of the styles part where the workbook has none. */
  readonly stylesPart: string | null;
}

/**
 * Lists new sheets in workbook, links and content types. Ids and names are such as nothing has used so far.
 *
 * @param wanted - names of the sheets
 * @param printed - what is printed of sheets that do not say so themselves
 * @param addStyles - whether a styles part is added too
 */
export function listSheets(
  book: Book,
  wanted: readonly string[],
  printed: readonly PrintedArea[],
  addStyles: boolean,
): BookEdit {
  const names = freePartNames(book, wanted.length);
  const { family } = book;
  const sheets = names.map((name): NewPart => ({ name, type: WORKSHEET_TYPE, linkType: family.worksheetType }));
  const stylesPart = addStyles ? freePartName(book, "styles") : null;
  const styles = stylesPart === null ? [] : [{ name: stylesPart, type: STYLES_TYPE, linkType: family.stylesType }];
  const parts = [...sheets, ...styles];
  const ids = freeLinkIds(book, parts.length);
  const changed = new Map<string, string>();
  if (parts.length > 0) {
    changed.set(partKey(book.types.name), withTypes(book.types, parts));
    changed.set(partKey(book.linksPart.name), withLinks(book, parts, ids));
  }
  if (sheets.length + printed.length > 0) {
    const changes = new TextChanges(book.workbook);
    if (sheets.length > 0) addSheets(book, changes, wanted, ids);
    addPrintedAreas(book, changes, printed);
    changed.set(partKey(book.workbook.name), changes.result());
  }
  return { changed, sheetParts: names, stylesPart };
}

function withLinks(book: Book, parts: readonly NewPart[], ids: readonly string[]): string {
  const { linksPart } = book;
  const changes = new TextChanges(linksPart);
  const prefix = prefixOf(linksPart.root.name);
  const items = parts.map(({ name, linkType }, i) => {
    const target = xmlText(name.slice(book.folder.length));
    return `<${prefix}Relationship Id="${ids[i]}" Type="${linkType}" Target="${target}"/>`;
  });
  changes.append(linksPart.root, items.join(""));
  return changes.result();
}

function addSheets(book: Book, changes: TextChanges, wanted: readonly string[], ids: readonly string[]): void {
  const { workbook, sheetsElement, family } = book;
  const prefix = prefixOf(sheetsElement.name);
  const declared = Object.entries(workbook.root.attributes).find(
    ([name, value]) => name.startsWith("xmlns:") && value === family.ids,
  );
  const idPrefix = declared?.[0].slice("xmlns:".length) ?? "r";
  const declaring = declared ? "" : ` xmlns:r="${family.ids}"`;
  const sheetIds = freeSheetIds(book, wanted.length);
  const names = freeSheetNames(book, wanted);
  const items = names.map(
    (name, i) =>
      `<${prefix}sheet${declaring} name="${spelledText(name)}" sheetId="${sheetIds[i]}" ${idPrefix}:id="${ids[i]}"/>`,
  );
  changes.append(sheetsElement, items.join(""));
}

/** Numbered like the others: some readers know sheets by the names of their parts alone. */
function freePartNames(book: Book, count: number): readonly string[] {
  const names: string[] = [];
  for (let number = 1; names.length < count; number++) {
    const name = `${book.folder}worksheets/sheet${number}.xml`;
    if (!book.source.has(partKey(name))) names.push(name);
  }
  return names;
}

function freePartName(book: Book, stem: string): string {
  for (let number = 1; ; number++) {
    const name = `${book.folder}${stem}${number === 1 ? "" : number}.xml`;
    if (!book.source.has(partKey(name))) return name;
  }
}

function freeLinkIds(book: Book, count: number): readonly string[] {
  const taken = new Set(book.linksPart.root.children.map(({ attributes }) => (attributes.Id ?? "").toLowerCase()));
  const ids: string[] = [];
  for (let number = taken.size + 1; ids.length < count; number++) {
    if (!taken.has(`rid${number}`)) ids.push(`rId${number}`);
  }
  return ids;
}

function freeSheetIds(book: Book, count: number): readonly number[] {
  const taken = new Set(book.sheets.map(({ id }) => Number(id)));
  const highest = [...taken].reduce((most, id) => (id > most && id < MOST_SHEET_ID ? id : most), 0);
  const ids: number[] = [];
  for (let id = highest + 1; ids.length < count && id <= MOST_SHEET_ID; id++) if (!taken.has(id)) ids.push(id);
  for (let id = 1; ids.length < count && id <= highest; id++) if (!taken.has(id)) ids.push(id);
  return ids.length === count ? ids : cannotEdit("too-many-sheets", "it has no room for more sheets");
}

function freeSheetNames(book: Book, wanted: readonly string[]): readonly string[] {
  const taken = new Set(book.sheets.map(({ name }) => name.toLowerCase()));
  return wanted.map((name) => {
    let free = name.slice(0, MOST_NAME_CHARACTERS);
    for (let number = 2; taken.has(free.toLowerCase()); number++) {
      const ending = ` (${number})`;
      free = name.slice(0, MOST_NAME_CHARACTERS - ending.length) + ending;
    }
    taken.add(free.toLowerCase());
    return free;
  });
}
