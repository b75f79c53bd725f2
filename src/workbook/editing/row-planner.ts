import { columnLetters } from "../../base/index.js";
import type { XmlScanner } from "../xml-scan.js";
import { addressAt, attribute, isTrue, numberIn, valuePlace } from "./sheet-tags.js";
import { cannotEditSheet, checkPrefix, type SheetWish } from "./sheet-wish.js";
import { SpliceList } from "./splices.js";

/**
 * Follows the rows and cells of a sheet and notes where its bytes are to change: our cells go to the end of their
 * rows, framed cells get another format, and rows that are missing are put in.
 */
export class RowPlanner {
  readonly splices = new SpliceList();
  /** Rows and columns of the cells that have an element, filled or not; 0 where there is none. */
  top = 0;
  bottom = 0;
  left = 0;
  right = 0;
  /** Last column of an element in a row that gets cells of ours. */
  rightInOurRows = 0;
  lastFilled = 0;
  /** Whether something was seen in the cell that is open. */
  isFilled = false;
  readonly #wish: SheetWish;
  readonly #prefix: string;
  readonly #styleOfColumn: (column: number) => number;
  readonly #edited: readonly number[];
  #row = 0;
  #rowStyle = -1;
  #column = 0;
  #cellAt = 0;
  #isDropped = false;
  #isOurRow = false;
  #cellsPlaced = true;
  #nextRow = 0;
  #nextFrame = 0;

  /**
   * @param prefix - of the elements, with the colon
   * @param styleOfColumn - format of cells that have no element, by their column
   */
  constructor(wish: SheetWish, prefix: string, styleOfColumn: (column: number) => number) {
    this.#wish = wish;
    this.#prefix = prefix;
    this.#styleOfColumn = styleOfColumn;
    const edited = new Set([...wish.rows, ...wish.frames.map((frame) => frame.row)]);
    this.#edited = [...edited].sort((a, b) => a - b);
  }

  /** The element around all rows opens. */
  open(xml: XmlScanner): void {
    if (xml.isSelfClosing && this.#edited.length > 0) this.splices.add("open", xml.tagTo - 2, 2);
  }

  /** The element around all rows closes; rows that are still missing come last. */
  close(xml: XmlScanner): void {
    const isOpened = xml.isSelfClosing && this.#edited.length > 0;
    const at = isOpened ? xml.tagTo : xml.tagFrom;
    this.#addRowsBefore(Number.POSITIVE_INFINITY, at);
    if (isOpened) this.splices.add("close-sheet-data", at);
  }

  openRow(xml: XmlScanner): void {
    checkPrefix(xml, this.#prefix, this.#wish.sheet);
    const stated = attribute(xml, "r");
    const row = stated === null ? this.#row + 1 : numberIn(stated);
    if (!(row > this.#row))
      cannotEditSheet(this.#wish.sheet, "rows-out-of-order", `does not list its rows in order (row ${stated})`);
    this.#addRowsBefore(row, xml.tagFrom);
    this.#row = row;
    this.#column = 0;
    if (this.top === 0) this.top = row;
    this.bottom = row;
    this.#isOurRow = this.#wish.rows.has(row);
    const isEdited = this.#edited[this.#nextRow] === row;
    if (isEdited) this.#nextRow += 1;
    this.#cellsPlaced = !this.#isOurRow;
    this.#rowStyle = -1;
    if (!isEdited) return;
    if (isTrue(attribute(xml, "customFormat"))) this.#rowStyle = numberIn(attribute(xml, "s") ?? "0");
    this.#noteSpans(xml);
    if (xml.isSelfClosing) this.splices.add("open", xml.tagTo - 2, 2);
  }

  /** The columns that a row says it spans must be true with ours. */
  #noteSpans(xml: XmlScanner): void {
    const place = valuePlace(xml, "spans");
    if (!place) return;
    const { from, to } = place;
    const columns = (attribute(xml, "spans") ?? "").match(/\d{1,5}/g)?.map(Number) ?? [];
    if (columns.length === 0) return;
    for (let i = this.#nextFrame; this.#wish.frames[i]?.row === this.#row; i++) {
      columns.push(this.#wish.frames[i]?.column ?? 1);
    }
    const kind = this.#isOurRow ? "spans" : "spans-as-told";
    this.splices.add(kind, from, to - from, Math.min(...columns), Math.max(...columns));
  }

  closeRow(xml: XmlScanner): void {
    if (this.#edited[this.#nextRow - 1] !== this.#row) return;
    const at = xml.isSelfClosing ? xml.tagTo : xml.tagFrom;
    this.#framesBefore(Number.POSITIVE_INFINITY, at);
    this.#placeCells(at);
    if (xml.isSelfClosing) this.splices.add("close-row", at);
  }

  openCell(xml: XmlScanner): void {
    checkPrefix(xml, this.#prefix, this.#wish.sheet);
    const column = addressAt(xml, this.#row, this.#column);
    if (!(column > this.#column)) {
      const place = column > 0 ? `cell ${columnLetters(column)}${this.#row}` : `a cell of row ${this.#row}`;
      cannotEditSheet(this.#wish.sheet, "cells-out-of-order", `does not list its cells in order (${place})`);
    }
    this.#column = column;
    this.#cellAt = xml.tagFrom;
    this.isFilled = false;
    this.#isDropped = false;
    if (this.left === 0 || column < this.left) this.left = column;
    this.right = Math.max(this.right, column);
    if (this.#isOurRow) this.rightInOurRows = Math.max(this.rightInOurRows, column);
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

  closeCell(xml: XmlScanner): void {
    if (this.isFilled && this.#column > this.lastFilled) this.lastFilled = this.#column;
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
      const style = this.#rowStyle >= 0 ? this.#rowStyle : this.#styleOfColumn(frame.column);
      this.splices.add("new-framed", at, 0, this.#nextFrame, style);
      this.#nextFrame += 1;
    }
  }

  #placeCells(at: number): void {
    if (this.#cellsPlaced) return;
    this.#cellsPlaced = true;
    this.splices.add("cells", at, 0, this.#row);
  }
}
