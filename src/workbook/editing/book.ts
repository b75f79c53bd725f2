import { ENTRY_LIMIT, SHEET_LIMIT } from "../limits.js";
import type { WorkbookPackage } from "../package.js";
import { type Relationship, readRelationships } from "../relationships.js";
import { undoEscapes } from "../rich-text.js";
import { quoted } from "../unreadable.js";
import { localName } from "../xml-pass.js";
import { partKey } from "../zip-directory.js";
import { contentTypeOf } from "./content-types.js";
import { type Family, familyOf } from "./families.js";
import { cannotEdit } from "./uneditable.js";
import { childrenNamed, type PartText, partText, prefixOf, type XmlPlace } from "./xml-places.js";

/** The parts of a workbook that an edit must know, before anything is changed. */
export interface Book {
  readonly source: WorkbookPackage;
  readonly family: Family;
  /** Folder of the workbook part, as part names spell it, with its slash. */
  readonly folder: string;
  readonly workbook: PartText;
  readonly sheetsElement: XmlPlace;
  readonly sheets: readonly BookSheet[];
  readonly links: readonly Relationship[];
  readonly linksPart: PartText;
  readonly types: PartText;
  /** The ending that a file of this content must have: ".xlsx", ".xlsm". */
  readonly ending: string;
}

/** A sheet as the workbook lists it. */
export interface BookSheet {
  readonly name: string;
  readonly id: string;
  /** Key of its part; null for a sheet that is no worksheet, or that is missing. */
  readonly key: string | null;
}

const TYPES_KEY = "[content_types].xml";
const ENDINGS: readonly (readonly [type: string, ending: string])[] = [
  ["application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml", ".xlsx"],
  ["application/vnd.ms-excel.sheet.macroenabled.main+xml", ".xlsm"],
  ["application/vnd.openxmlformats-officedocument.spreadsheetml.template.main+xml", ".xltx"],
  ["application/vnd.ms-excel.template.macroenabled.main+xml", ".xltm"],
];

/**
 * Reads what an edit must know of a workbook.
 *
 * @param added - how many sheets are to be added
 * @throws Uneditable if the workbook as a whole must not or cannot be edited, Unreadable if it is damaged
 */
export async function readBook(source: WorkbookPackage, added: number): Promise<Book> {
  refuseByParts(source);
  if (source.entries.length + added + 1 > ENTRY_LIMIT) cannotEdit("too-many-parts", "it has no room for more parts");
  const links = await readRelationships(source, "");
  const [key, ...others] = new Set(
    links.flatMap(({ type, target }) => (type === "officedocument" && target ? [target] : [])),
  );
  if (key === undefined || others.length > 0) cannotEdit("no-workbook", "its workbook part cannot be told");
  const workbook = await textOf(source, key);
  const family = familyOf(rootNamespace(workbook));
  if (workbook.root.local !== "workbook" || !family) cannotEdit("no-workbook", "it is of no known family of workbooks");
  refuseProtected(workbook);
  const bookLinks = await readRelationships(source, key);
  const [sheetsElement, ...more] = childrenNamed(workbook.root, "sheets");
  if (!sheetsElement || more.length > 0) cannotEdit("no-sheets", "its list of sheets is not understood");
  if (sheetsElement.children.length + added > SHEET_LIMIT) {
    cannotEdit("too-many-sheets", "it has no room for more sheets");
  }
  const slash = key.lastIndexOf("/") + 1;
  const linksPart = await textOf(source, `${key.slice(0, slash)}_rels/${key.slice(slash)}.rels`);
  const types = await textOf(source, TYPES_KEY);
  const byId = new Map(bookLinks.map((link) => [link.id, link]));
  const name = workbook.name.replace(/\\/g, "/").replace(/^\/+/, "");
  const type = contentTypeOf(types, key).toLowerCase();
  const ending = ENDINGS.find(([known]) => known === type)?.[1] ?? cannotEdit("unknown-type", "it is of no known type");
  refuseHiddenMacros(source, ending);
  return {
    source,
    family,
    folder: name.slice(0, name.lastIndexOf("/") + 1),
    workbook,
    sheetsElement,
    sheets: childrenNamed(sheetsElement, "sheet").map((place) => bookSheet(place, byId, source)),
    links: bookLinks,
    linksPart,
    types,
    ending,
  };
}

/** A part as text; every part that is asked for here must be there. */
async function textOf(source: WorkbookPackage, key: string): Promise<PartText> {
  const part = await source.part(key, "other");
  return part ? partText(part) : cannotEdit("missing-part", `its part ${quoted(key)} is missing`);
}

function refuseByParts({ entries }: WorkbookPackage): void {
  const has = (start: string) => entries.some(({ key }) => key.startsWith(start));
  if (has("_xmlsignatures/")) cannotEdit("signed", "it is digitally signed, and any change would break the signature");
  if (has("xl/revisions/")) cannotEdit("shared", "it is shared and keeps a log of its changes");
  const climbing = entries.find(({ name }) => leadsOut(name));
  if (climbing) cannotEdit("unsafe-name", `its part ${quoted(climbing.name)} has a name that leads out of a folder`);
}

/** Whether a careless program that unpacks the file would write outside of the folder it was told. */
function leadsOut(name: string): boolean {
  return name.split(/[/\\]/).some((step) => step === ".." || step.includes(":"));
}

/** Macros that a workbook does not own up to would come back in a file that is said to hold none. */
function refuseHiddenMacros({ entries }: WorkbookPackage, ending: string): void {
  const macros = entries.find(({ key }) => /(?:^|\/)vba\w*\.bin$/.test(key));
  if (macros && !ending.endsWith("m")) {
    cannotEdit("undeclared-macros", `it holds macros (${quoted(macros.name)}) although its type says that it has none`);
  }
}

function refuseProtected({ root }: PartText): void {
  const locked = childrenNamed(root, "workbookProtection").some(({ attributes }) =>
    /^\s*(?:1|true|on)\s*$/i.test(attributes.lockStructure ?? ""),
  );
  if (locked) cannotEdit("structure-protected", "its structure is protected, so that no sheet can be added");
}

function rootNamespace({ root }: PartText): string {
  const prefix = prefixOf(root.name).replace(/:$/, "");
  return root.attributes[prefix === "" ? "xmlns" : `xmlns:${prefix}`] ?? "";
}

function bookSheet(place: XmlPlace, links: ReadonlyMap<string, Relationship>, source: WorkbookPackage): BookSheet {
  const { name = "", sheetId = "" } = place.attributes;
  const link = Object.entries(place.attributes).find(([key]) => key.includes(":") && localName(key) === "id")?.[1];
  const target = links.get(link ?? "");
  const found = target?.type === "worksheet" && target.target !== null && source.has(target.target);
  return { name: undoEscapes(name), id: sheetId, key: found ? (target.target ?? null) : null };
}

/** Key of the first part that a list of links names as this type, if the package has it. */
export function linkedPart(source: WorkbookPackage, links: readonly Relationship[], type: string): string | null {
  const target = links.find((link) => link.type === type)?.target;
  return target && source.has(target) ? partKey(target) : null;
}
