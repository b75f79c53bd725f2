import type { Inflating, ReadingLimits } from "../cells.js";
import { DEFAULT_LIMITS } from "../limits.js";
import { WorkbookPackage } from "../package.js";
import { quoted, Unreadable } from "../unreadable.js";
import { writeAddedSheet } from "./added-sheet.js";
import { type Book, linkedPart, readBook } from "./book.js";
import { type BookEdit, listSheets } from "./book-edit.js";
import { CellXml } from "./cell-xml.js";
import type { WorkbookEdits } from "./edits.js";
import { type OpenPackage, planSheet } from "./plan-sheet.js";
import type { PrintedArea } from "./printed-areas.js";
import { type PlannedSheet, spliceSheet } from "./sheet-splicer.js";
import { emptyStyles, StylesEdit } from "./styles-edit.js";
import { cannotEdit, Uneditable, type UneditableReason } from "./uneditable.js";
import { partText } from "./xml-places.js";
import { type OutgoingPart, writeZip } from "./zip-writer.js";

/** A workbook that is ready to be written with its edits, or why it cannot be. */
export type WorkbookEditing =
  | {
      readonly ok: true;
      /** The ending that a file of this content must have: ".xlsx", or ".xlsm" for one with macros. */
      readonly ending: string;
      /** The whole file, piece by piece; to be read once. */
      readonly pieces: AsyncIterable<Uint8Array>;
    }
  | { readonly ok: false; readonly reason: UneditableReason };

/**
 * Edits a workbook: adds columns, frames and sheets, and leaves everything else as it is. Every part that need not
 * change keeps its bytes, packed as they were; in a part that changes, all bytes between the places of change stay.
 * Whether it can be done is settled before the first piece is made.
 *
 * @param bytes - the whole file; must stay as it is until the last piece is read
 * @param inflating - how this machine unpacks deflated data and takes checksums
 * @returns the edited file in pieces, or the reason why it cannot be edited
 */
export async function editWorkbook(
  bytes: Uint8Array,
  edits: WorkbookEdits,
  inflating: Inflating,
  limits: Partial<ReadingLimits> = {},
): Promise<WorkbookEditing> {
  const bounds = { ...DEFAULT_LIMITS, ...limits };
  try {
    const open: OpenPackage = () => new WorkbookPackage(bytes, inflating, bounds);
    const book = await readBook(open(), edits.added.length);
    const planned = await planSheets(book, edits, open);
    const parts = await outgoing(book, edits, planned);
    return { ok: true, ending: book.ending, pieces: writeZip(parts, inflating) };
  } catch (error) {
    if (error instanceof Uneditable) return { ok: false, reason: error.reason };
    if (error instanceof Unreadable) return { ok: false, reason: error.file };
    throw error;
  }
}

type PlannedSheets = ReadonlyMap<string, PlannedSheet>;

async function planSheets(book: Book, edits: WorkbookEdits, open: OpenPackage): Promise<PlannedSheets> {
  const planned = new Map<string, PlannedSheet>();
  for (const edit of edits.sheets) {
    const [sheet, ...others] = book.sheets.filter(({ name }) => name === edit.sheet);
    if (!sheet?.key || others.length > 0) {
      return cannotEdit("missing-sheet", `its sheet ${quoted(edit.sheet)} cannot be found`);
    }
    planned.set(sheet.key, await planSheet(open, sheet.key, edit));
  }
  return planned;
}

/** All parts of the edited file: those of the workbook in their order, then what is new. */
async function outgoing(book: Book, edits: WorkbookEdits, planned: PlannedSheets): Promise<readonly OutgoingPart[]> {
  const { source } = book;
  const stylesKey = linkedPart(source, book.links, "styles");
  const stylesPart = stylesKey === null ? null : await source.part(stylesKey, "other");
  const styles = new StylesEdit(stylesPart ? partText(stylesPart) : emptyStyles(book.family.main));
  const looks = edits.looks.map((look) => styles.look(look));
  const framed = framedStyles(planned, styles);
  const wanted = edits.added.map(({ name }) => name);
  const printed = [...planned.values()].flatMap(printedArea);
  const listed = listSheets(book, wanted, printed, stylesPart === null && looks.length + framed.size > 0);

  const texts = new Map(listed.changed);
  if (stylesKey !== null && looks.length + framed.size > 0) texts.set(stylesKey, styles.result());
  const parts = source.entries.map((entry): OutgoingPart => {
    const sheet = planned.get(entry.key);
    const text = texts.get(entry.key);
    if (text !== undefined) return textPart(entry.rawName, text);
    if (!sheet) return { kind: "kept", entry, packed: source.packed(entry) };
    const cells = new CellXml(sheet.prefix, looks);
    const styleOf = (frame: number, base: number) => framed.get(frameKey(sheet, frame, base)) ?? 0;
    return {
      kind: "made",
      name: entry.rawName,
      write: (sink) => spliceSheet(source.pieces(entry), sheet, cells, styleOf, sink),
    };
  });
  return [...parts, ...newParts(book, edits, listed, looks, styles)];
}

/** Of a sheet with our columns, most of which are for the screen. */
function printedArea({ edit, wish, printed }: PlannedSheet): readonly PrintedArea[] {
  return wish.columns && edit.printed > 0 ? [{ sheet: edit.sheet, range: printed }] : [];
}

function newParts(
  book: Book,
  edits: WorkbookEdits,
  listed: BookEdit,
  looks: readonly number[],
  styles: StylesEdit,
): readonly OutgoingPart[] {
  const encoder = new TextEncoder();
  const cells = new CellXml("", looks);
  const sheets = edits.added.map((sheet, i): OutgoingPart => {
    const name = encoder.encode(listed.sheetParts[i] ?? "");
    return { kind: "made", name, write: (sink) => writeAddedSheet(sheet, book.family, cells, sink) };
  });
  return listed.stylesPart === null
    ? sheets
    : [...sheets, textPart(encoder.encode(listed.stylesPart), styles.result())];
}

function textPart(name: Uint8Array, text: string): OutgoingPart {
  return {
    kind: "made",
    name,
    write: (sink) => {
      sink.text(text);
      return [];
    },
  };
}

/** The framed formats of all sheets, each made once. */
function framedStyles(planned: PlannedSheets, styles: StylesEdit): ReadonlyMap<string, number> {
  const made = new Map<string, number>();
  for (const sheet of planned.values()) {
    for (let i = 0; i < sheet.splices.length; i++) {
      const { kind, a, b } = sheet.splices.at(i);
      const line = sheet.wish.frames[a]?.line;
      if ((kind !== "frame" && kind !== "frame-plain" && kind !== "new-framed") || !line) continue;
      const key = frameKey(sheet, a, b);
      if (!made.has(key)) made.set(key, styles.framed(b, line));
    }
  }
  return made;
}

function frameKey(sheet: PlannedSheet, frame: number, base: number): string {
  return `${sheet.wish.frames[frame]?.line}/${base}`;
}
