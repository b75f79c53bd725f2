import type { XmlEvents, XmlScanner } from "../xml-scan.js";
import { readRange } from "./ranges.js";
import { RowPlanner } from "./row-planner.js";
import { attribute, isTrue, type Located, numberIn, tagText, valuePlace } from "./sheet-tags.js";
import { cannotEditSheet, checkPrefix, elementNumber, type SheetWish } from "./sheet-wish.js";

const C = elementNumber("c");
const V = elementNumber("v");
const F = elementNumber("f");
const IS = elementNumber("is");
const ROW = elementNumber("row");
const SHEET_DATA = elementNumber("sheetData");
const DIMENSION = elementNumber("dimension");
const COL = elementNumber("col");
const COLS = elementNumber("cols");
const MERGE = elementNumber("mergeCell");
const FILTER = elementNumber("autoFilter");
const PROTECTION = elementNumber("sheetProtection");
const WORKSHEET = elementNumber("worksheet");

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
  readonly rows: RowPlanner;
  /** Prefix of its elements, with the colon. */
  readonly prefix: string;
  /** Value of the range that the sheet claims to fill. */
  readonly dimension: Located | null;
  readonly columns: readonly WrittenColumns[];
  /** The element around them, and where it closes (-1 if it closes itself); null where there is none. */
  readonly columnsElement: (Located & { readonly closeAt: number }) | null;
  readonly sheetDataAt: number;
  /** Right edges of merged ranges in our rows and of the filter. */
  readonly lastTaken: number;
}

/**
 * Passes once over a sheet part and notes where its bytes are to change. Nothing is changed here: what cannot be
 * edited is refused before a byte is written.
 */
export class SheetPlanner implements XmlEvents {
  readonly #wish: SheetWish;
  readonly #firstRow: number;
  readonly #lastRow: number;
  readonly #columns: WrittenColumns[] = [];
  #columnsElement: (Located & { closeAt: number }) | null = null;
  #dimension: Located | null = null;
  #rows: RowPlanner | null = null;
  #sheetDataAt = 0;
  #inRows = false;
  #prefix = "";
  #lastTaken = 0;

  constructor(wish: SheetWish) {
    this.#wish = wish;
    const ours = [...wish.rows];
    this.#firstRow = ours.reduce((least, row) => Math.min(least, row), Number.POSITIVE_INFINITY);
    this.#lastRow = ours.reduce((most, row) => Math.max(most, row), 0);
  }

  open(xml: XmlScanner): boolean {
    const { element, depth } = xml;
    if (this.#inRows && this.#rows) {
      if (depth === 4 && element === C) this.#rows.openCell(xml);
      else if (depth === 5 && (element === V || element === F || element === IS)) this.#rows.isFilled = true;
      else if (depth === 3 && element === ROW) this.#rows.openRow(xml);
    } else if (depth === 1) this.#openRoot(xml);
    else if (depth === 2) this.#openSection(xml);
    else if (depth === 3 && element === COL && this.#columnsElement?.closeAt === 0) this.#addColumns(xml);
    else if (depth === 3 && element === MERGE) this.#take(attribute(xml, "ref"), true);
    return false;
  }

  close(xml: XmlScanner): void {
    const { element, depth } = xml;
    if (this.#inRows && this.#rows) {
      if (depth === 4 && element === C) this.#rows.closeCell(xml);
      else if (depth === 3 && element === ROW) this.#rows.closeRow(xml);
      else if (depth === 2) {
        this.#rows.close(xml);
        this.#inRows = false;
      }
    } else if (depth === 3 && element === COL) {
      const column = this.#columns.at(-1);
      if (column?.to === 0) column.to = xml.tagTo;
    } else if (depth === 2 && element === COLS && this.#columnsElement) {
      this.#columnsElement.closeAt = xml.isSelfClosing ? -1 : xml.tagFrom;
    }
  }

  /** What was found. @throws Uneditable if the part has no element for its rows */
  get found(): SheetFound {
    if (!this.#rows) return this.#cannot("no-sheet-data", "has no element for its rows");
    return {
      rows: this.#rows,
      prefix: this.#prefix,
      dimension: this.#dimension,
      columns: this.#columns,
      columnsElement: this.#columnsElement,
      sheetDataAt: this.#sheetDataAt,
      lastTaken: this.#lastTaken,
    };
  }

  #openRoot(xml: XmlScanner): void {
    if (xml.element !== WORKSHEET) this.#cannot("not-a-worksheet", "is no worksheet");
    this.#prefix = tagText(xml).slice(1, 1 + xml.tag.nameFrom - xml.tag.fullNameFrom);
  }

  #openSection(xml: XmlScanner): void {
    const { element } = xml;
    if (element === SHEET_DATA) this.#openRows(xml);
    else if (element === DIMENSION) this.#dimension = valuePlace(xml, "ref");
    else if (element === COLS) this.#openColumns(xml);
    else if (element === FILTER) this.#take(attribute(xml, "ref"), false);
    else if (element === PROTECTION && isTrue(attribute(xml, "sheet"))) {
      this.#cannot("sheet-protected", "is protected against changes");
    }
  }

  #openRows(xml: XmlScanner): void {
    if (this.#rows) this.#cannot("two-sheet-data", "has two elements for its rows");
    checkPrefix(xml, this.#prefix, this.#wish.sheet);
    this.#rows = new RowPlanner(
      this.#wish,
      this.#prefix,
      (column) => this.#columns.find(({ min, max }) => min <= column && column <= max)?.style ?? 0,
    );
    this.#rows.open(xml);
    this.#sheetDataAt = xml.tagFrom;
    this.#inRows = true;
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

  #cannot(code: string, text: string): never {
    return cannotEditSheet(this.#wish.sheet, code, text);
  }
}
