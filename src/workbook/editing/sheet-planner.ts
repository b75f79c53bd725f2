import { columnLetters } from "../../base/index.js";
import { quoted } from "../unreadable.js";
import type { XmlEvents, XmlScanner } from "../xml-scan.js";
import type { FrameLine } from "./edits.js";
import { readRange } from "./ranges.js";
import { addressAt, attribute, isTrue, type Located, numberIn, tagText, valuePlace } from "./sheet-tags.js";
import { SpliceList } from "./splices.js";
import { cannotEdit } from "./uneditable.js";

/** Local names that the planner tells apart, the frequent ones first; the scanner numbers them from 1. */
export const SHEET_NAMES = [
  "c",
  "v",
  "f",
  "is",
  "row",
  "sheetData",
  "dimension",
  "col",
  "cols",
  "mergeCell",
  "autoFilter",
  "sheetProtection",
  "worksheet",
];
const [C, V, F, IS, ROW, SHEET_DATA, DIMENSION, COL, COLS, MERGE, FILTER, PROTECTION, WORKSHEET] = SHEET_NAMES.map(
  (_, i) => i + 1,
);

/** A cell to frame. */
export interface FramedCell {
  readonly row: number;
  readonly column: number;
  readonly line: FrameLine;
}

/** What is wanted of a sheet, sorted. */
export interface SheetWish {
  readonly sheet: string;
  /** Rows that get cells of ours. */
  readonly rows: ReadonlySet<number>;
  /** Height that our cells of a row need, points. */
  readonly pointsOf: (row: number) => number;
  /** By row, then column. */
  readonly frames: readonly FramedCell[];
  /** First and last of our columns; null while they are not known, or where there are none. */
  readonly columns: { readonly first: number; readonly last: number } | null;
}

/** A `col` element as written. */
export interface WrittenColumns {
  readonly from: number;
  to: number;
  readonly min: number;
  readonly max: number;
  readonly style: number;
  readonly tag: string;
}

/** What one pass over a sheet part found. */
export interface SheetFound {
  readonly splices: SpliceList;
  /** Prefix of its elements, with the colon. */
  readonly prefix: string;
  /** Value of the range that the sheet claims to fill. */
  readonly dimension: Located | null;
  readonly columns: readonly WrittenColumns[];
  /** The element around them; null where there is none. */
  readonly columnsElement: (Located & { readonly closeAt: number }) | null;
  readonly sheetDataAt: number;
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  /** Last column with an element of its own, filled or not. */
  readonly right: number;
  /** Last column of an element in a row that gets cells of ours. */
  readonly rightInOurRows: number;
  readonly lastFilled: number;
  /** Right edges of merged ranges in our rows and of the filter. */
  readonly lastTaken: number;
}

/**
 * Passes once over a sheet part and notes where its bytes are to change. Nothing is changed here: what cannot be
 * edited is refused before a byte is written.
 */
export class SheetPlanner implements XmlEvents {
  readonly splices = new SpliceList();
  readonly #wish: SheetWish;
  readonly #edited: readonly number[];
  readonly #firstRow: number;
  readonly #lastRow: number;
  readonly #columns: WrittenColumns[] = [];
  #columnsElement: (Located & { closeAt: number }) | null = null;
  #dimension: Located | null = null;
  #sheetDataAt = -1;
  #prefixBytes = 0;
  #prefix = "";
  #inSheetData = false;
  #row = 0;
  #rowStyle = -1;
  #column = 0;
  #cellAt = 0;
  #isFilled = false;
  #isDropped = false;
  #isOurRow = false;
  #cellsPlaced = true;
  #nextRow = 0;
  #nextFrame = 0;
  #top = 0;
  #bottom = 0;
  #left = 0;
  #right = 0;
  #rightInOurRows = 0;
  #lastFilled = 0;
  #lastTaken = 0;

  constructor(wish: SheetWish) {
    this.#wish = wish;
    const edited = new Set([...wish.rows, ...wish.frames.map((frame) => frame.row)]);
    this.#edited = [...edited].sort((a, b) => a - b);
    const ours = [...wish.rows];
    this.#firstRow = ours.reduce((least, row) => Math.min(least, row), Number.POSITIVE_INFINITY);
    this.#lastRow = ours.reduce((most, row) => Math.max(most, row), 0);
  }

  open(xml: XmlScanner): boolean {
    const { element, depth } = xml;
    if (this.#inSheetData) {
      if (depth === 4 && element === C) this.#openCell(xml);
      else if (depth === 5 && (element === V || element === F || element === IS)) this.#isFilled = true;
      else if (depth === 3 && element === ROW) this.#openRow(xml);
    } else if (depth <= 3) this.#openOutside(xml, element, depth);
    return false;
  }

  close(xml: XmlScanner): void {
    const { element, depth } = xml;
    if (this.#inSheetData) {
      if (depth === 4 && element === C) this.#closeCell(xml);
      else if (depth === 3 && element === ROW) this.#closeRow(xml);
      else if (depth === 2) this.#closeSheetData(xml);
    } else if (depth === 3 && element === COL) {
      const column = this.#columns.at(-1);
      if (column?.to === 0) column.to = xml.tagTo;
    } else if (depth === 2 && element === COLS && this.#columnsElement) {
      this.#columnsElement.closeAt = xml.isSelfClosing ? -1 : xml.tagFrom;
    }
  }

  /** What was found. @throws Uneditable if the part has no rows at all */
  get found(): SheetFound {
    if (this.#sheetDataAt < 0) this.#cannot("no-sheet-data", "has no element for its rows");
    return {
      splices: this.splices,
      prefix: this.#prefix,
      dimension: this.#dimension,
      columns: this.#columns,
      columnsElement: this.#columnsElement,
      sheetDataAt: this.#sheetDataAt,
      top: this.#top,
      bottom: this.#bottom,
      left: this.#left,
      right: this.#right,
      rightInOurRows: this.#rightInOurRows,
      lastFilled: this.#lastFilled,
      lastTaken: this.#lastTaken,
    };
  }

  #openOutside(xml: XmlScanner, element: number, depth: number): void {
    if (depth === 1) {
      if (element !== WORKSHEET) this.#cannot("not-a-worksheet", "is no worksheet");
      this.#prefixBytes = xml.tag.nameFrom - xml.tag.fullNameFrom;
      this.#prefix = tagText(xml).slice(1, 1 + this.#prefixBytes);
    } else if (depth === 2) this.#openSection(xml, element);
    else if (element === COL && this.#columnsElement?.closeAt === 0) this.#addColumns(xml);
    else if (element === MERGE) this.#take(attribute(xml, "ref"), true);
  }

  #openSection(xml: XmlScanner, element: number): void {
    if (element === SHEET_DATA) this.#openSheetData(xml);
    else if (element === DIMENSION) this.#dimension = valuePlace(xml, "ref");
    else if (element === COLS) this.#openColumns(xml);
    else if (element === FILTER) this.#take(attribute(xml, "ref"), false);
    else if (element === PROTECTION && isTrue(attribute(xml, "sheet"))) {
      this.#cannot("sheet-protected", "is protected against changes");
    }
  }

  #openSheetData(xml: XmlScanner): void {
    if (this.#sheetDataAt >= 0) this.#cannot("two-sheet-data", "has two elements for its rows");
    this.#checkPrefix(xml);
    this.#sheetDataAt = xml.tagFrom;
    this.#inSheetData = true;
    if (xml.isSelfClosing && this.#edited.length > 0) this.splices.add("open", xml.tagTo - 2, 2);
  }

  #closeSheetData(xml: XmlScanner): void {
    this.#inSheetData = false;
    const opened = xml.isSelfClosing && this.#edited.length > 0;
    const at = opened ? xml.tagTo : xml.tagFrom;
    this.#addRowsBefore(Number.POSITIVE_INFINITY, at);
    if (opened) this.splices.add("close-sheet-data", at);
  }

  #openRow(xml: XmlScanner): void {
    this.#checkPrefix(xml);
    const stated = attribute(xml, "r");
    const row = stated === null ? this.#row + 1 : numberIn(stated);
    if (!(row > this.#row)) this.#cannot("rows-out-of-order", `does not list its rows in order (row ${stated})`);
    this.#addRowsBefore(row, xml.tagFrom);
    this.#row = row;
    this.#column = 0;
    if (this.#top === 0) this.#top = row;
    this.#bottom = row;
    this.#isOurRow = this.#wish.rows.has(row);
    const isEdited = this.#edited[this.#nextRow] === row;
    if (isEdited) this.#nextRow += 1;
    this.#cellsPlaced = !this.#isOurRow;
    this.#rowStyle = -1;
    if (!isEdited) return;
    if (isTrue(attribute(xml, "customFormat"))) this.#rowStyle = numberIn(attribute(xml, "s") ?? "0");
    this.#noteRowAttributes(xml);
    if (xml.isSelfClosing) this.splices.add("open", xml.tagTo - 2, 2);
  }

  /** Spans and height, in the order in which they stand in the tag. */
  #noteRowAttributes(xml: XmlScanner): void {
    const spans = valuePlace(xml, "spans");
    const height = this.#isOurRow ? valuePlace(xml, "ht") : null;
    if (height && (!spans || height.from < spans.from)) this.#noteHeight(xml, height);
    if (spans) this.#noteSpans(xml, spans);
    if (height && spans && height.from > spans.from) this.#noteHeight(xml, height);
  }

  #noteSpans(xml: XmlScanner, { from, to }: Located): void {
    const columns = (attribute(xml, "spans") ?? "").match(/\d{1,5}/g)?.map(Number) ?? [];
    if (columns.length === 0) return;
    for (let i = this.#nextFrame; this.#wish.frames[i]?.row === this.#row; i++) {
      columns.push(this.#wish.frames[i]?.column ?? 1);
    }
    const kind = this.#isOurRow ? "spans" : "spans-as-told";
    this.splices.add(kind, from, to - from, Math.min(...columns), Math.max(...columns));
  }

  #noteHeight(xml: XmlScanner, { from, to }: Located): void {
    // A height that a person chose stays.
    if (isTrue(attribute(xml, "customHeight"))) return;
    const points = this.#wish.pointsOf(this.#row);
    if (points > Number(attribute(xml, "ht"))) this.splices.add("height", from, to - from, points);
  }

  #closeRow(xml: XmlScanner): void {
    if (this.#edited[this.#nextRow - 1] !== this.#row) return;
    const at = xml.isSelfClosing ? xml.tagTo : xml.tagFrom;
    this.#framesBefore(Number.POSITIVE_INFINITY, at);
    this.#placeCells(at);
    if (xml.isSelfClosing) this.splices.add("close-row", at);
  }

  #openCell(xml: XmlScanner): void {
    this.#checkPrefix(xml);
    const column = addressAt(xml, this.#row, this.#column);
    if (!(column > this.#column)) {
      const place = column > 0 ? `cell ${columnLetters(column)}${this.#row}` : `a cell of row ${this.#row}`;
      this.#cannot("cells-out-of-order", `does not list its cells in order (${place})`);
    }
    this.#column = column;
    this.#cellAt = xml.tagFrom;
    this.#isFilled = false;
    this.#isDropped = false;
    if (this.#left === 0 || column < this.#left) this.#left = column;
    if (column > this.#right) this.#right = column;
    if (this.#isOurRow && column > this.#rightInOurRows) this.#rightInOurRows = column;
    const { columns, frames } = this.#wish;
    // Framed cells stand to the left of ours.
    if (frames[this.#nextFrame]?.row === this.#row) this.#frameAt(xml, column);
    if (!this.#cellsPlaced && columns && column >= columns.first) {
      this.#isDropped = column <= columns.last;
      if (!this.#isDropped) this.#placeCells(xml.tagFrom);
    }
  }

  #frameAt(xml: XmlScanner, column: number): void {
    this.#framesBefore(column, xml.tagFrom);
    const frame = this.#wish.frames[this.#nextFrame];
    if (frame?.row !== this.#row || frame.column !== column) return;
    const place = valuePlace(xml, "s");
    if (place) {
      const style = numberIn(attribute(xml, "s") ?? "");
      this.splices.add("frame", place.from, place.to - place.from, this.#nextFrame, style);
    } else {
      const behindName = xml.tagFrom + 1 + xml.tag.nameTo - xml.tag.fullNameFrom;
      this.splices.add("frame-plain", behindName, 0, this.#nextFrame, 0);
    }
    this.#nextFrame += 1;
  }

  #closeCell(xml: XmlScanner): void {
    if (this.#isFilled && this.#column > this.#lastFilled) this.#lastFilled = this.#column;
    if (this.#isDropped) this.splices.add("drop", this.#cellAt, xml.tagTo - this.#cellAt);
  }

  /** New rows in front of one that is there. */
  #addRowsBefore(row: number, at: number): void {
    for (; (this.#edited[this.#nextRow] ?? row) < row; this.#nextRow++) {
      this.#row = this.#edited[this.#nextRow] ?? 0;
      this.#rowStyle = -1;
      this.#isOurRow = this.#wish.rows.has(this.#row);
      this.#cellsPlaced = !this.#isOurRow;
      this.splices.add("new-row", at, 0, this.#row);
      this.#framesBefore(Number.POSITIVE_INFINITY, at);
      this.#placeCells(at);
      this.splices.add("close-row", at);
    }
  }

  /** New, framed cells in front of one that is there. */
  #framesBefore(column: number, at: number): void {
    for (;;) {
      const frame = this.#wish.frames[this.#nextFrame];
      if (!frame || frame.row !== this.#row || frame.column >= column) return;
      const style = this.#rowStyle >= 0 ? this.#rowStyle : this.#columnStyle(frame.column);
      this.splices.add("new-framed", at, 0, this.#nextFrame, style);
      this.#nextFrame += 1;
    }
  }

  #columnStyle(column: number): number {
    return this.#columns.find(({ min, max }) => min <= column && column <= max)?.style ?? 0;
  }

  #placeCells(at: number): void {
    if (this.#cellsPlaced) return;
    this.#cellsPlaced = true;
    this.splices.add("cells", at, 0, this.#row);
  }

  #openColumns(xml: XmlScanner): void {
    if (this.#columnsElement) this.#cannot("unknown-columns", "describes its columns twice");
    this.#columnsElement = { from: xml.tagFrom, to: xml.tagTo, closeAt: 0 };
  }

  #addColumns(xml: XmlScanner): void {
    const min = numberIn(attribute(xml, "min") ?? "");
    const max = numberIn(attribute(xml, "max") ?? "");
    const style = numberIn(attribute(xml, "style") ?? "0");
    if (!(max >= min)) this.#cannot("unknown-columns", "describes its columns in a way that is not understood");
    this.#columns.push({ from: xml.tagFrom, to: 0, min, max, style, tag: tagText(xml) });
  }

  /** A range that must not be cut by our columns; a merged one only where it stands in our rows. */
  #take(ref: string | null, inOurRowsOnly: boolean): void {
    const range = readRange(ref ?? "");
    if (!range) return;
    if (inOurRowsOnly && (range.bottom < this.#firstRow || range.top > this.#lastRow)) return;
    this.#lastTaken = Math.max(this.#lastTaken, range.right);
  }

  #checkPrefix({ tag }: XmlScanner): void {
    if (tag.nameFrom - tag.fullNameFrom !== this.#prefixBytes) {
      this.#cannot("mixed-prefixes", "mixes names with and without a prefix");
    }
  }

  #cannot(code: string, text: string): never {
    return cannotEdit(code, `its sheet ${quoted(this.#wish.sheet)} ${text}`);
  }
}
