import { cellName } from "../../base/index.js";
import type { CellXml } from "./cell-xml.js";
import type { SheetEdit } from "./edits.js";
import type { PartSink } from "./part-sink.js";
import type { HeadChange } from "./sheet-head.js";
import type { SheetWish } from "./sheet-wish.js";
import type { Splice, SpliceList } from "./splices.js";

/** A sheet that is known to be fit for the edit, with all that changes in it. */
export interface PlannedSheet {
  readonly edit: SheetEdit;
  readonly wish: SheetWish;
  readonly prefix: string;
  readonly head: readonly HeadChange[];
  readonly splices: SpliceList;
  /** What is printed of it, unless it says so itself: its cells, pictures and charts, and the first of our columns. */
  readonly printed: string;
}

/** Our cells of so many rows are written before what is packed is taken away. */
const ROWS_AT_ONCE = 200;

/**
 * Writes a sheet part anew: its own bytes, changed at the places that were planned and nowhere else.
 *
 * @param framed - number of the framed format for a place in the list of frames and the format so far
 */
export async function* spliceSheet(
  pieces: AsyncIterable<Uint8Array>,
  sheet: PlannedSheet,
  cells: CellXml,
  framed: (frame: number, base: number) => number,
  sink: PartSink,
): AsyncGenerator<undefined> {
  const changes = new Changes(sheet, renderer(sheet, cells, framed));
  let before = 0;
  let rows = 0;
  for await (const piece of pieces) {
    const end = before + piece.length;
    let at = Math.min(end, Math.max(before, changes.doneTo));
    while (changes.next < end) {
      sink.bytes(piece.subarray(at - before, changes.next - before));
      const { text, isRow } = changes.take();
      sink.text(text);
      at = Math.min(end, changes.doneTo);
      if (isRow && ++rows % ROWS_AT_ONCE === 0) yield;
    }
    sink.bytes(piece.subarray(at - before));
    before = end;
    yield;
  }
  if (changes.next < Number.POSITIVE_INFINITY) throw new Error("the part is shorter than it was");
}

/** The changes of a sheet one after the other: first those in front of its rows. */
class Changes {
  /** Where the next change is; infinite behind the last. */
  next = 0;
  /** Up to where the bytes of the part are taken care of by the changes made so far. */
  doneTo = 0;
  readonly #sheet: PlannedSheet;
  readonly #textOf: (splice: Splice) => string;
  #heads = 0;
  #splices = 0;

  constructor(sheet: PlannedSheet, textOf: (splice: Splice) => string) {
    this.#sheet = sheet;
    this.#textOf = textOf;
    this.#find();
  }

  /** The text of the next change, and whether it is our cells of a row. */
  take(): { readonly text: string; readonly isRow: boolean } {
    const head = this.#sheet.head[this.#heads];
    if (head) {
      this.#heads += 1;
      this.doneTo = head.to;
      this.#find();
      return { text: head.text, isRow: false };
    }
    const splice = this.#sheet.splices.at(this.#splices);
    this.#splices += 1;
    this.doneTo = splice.at + splice.removed;
    this.#find();
    return { text: this.#textOf(splice), isRow: splice.kind === "cells" };
  }

  #find(): void {
    const { head, splices } = this.#sheet;
    const place = head[this.#heads]?.from;
    if (place !== undefined) this.next = place;
    else this.next = this.#splices < splices.length ? splices.at(this.#splices).at : Number.POSITIVE_INFINITY;
  }
}

function renderer(
  { edit, wish, prefix }: PlannedSheet,
  cells: CellXml,
  framed: (frame: number, base: number) => number,
): (splice: Splice) => string {
  const { columns, frames } = wish;
  return ({ kind, a, b }) => {
    switch (kind) {
      case "open":
        return ">";
      case "close-row":
        return `</${prefix}row>`;
      case "close-sheet-data":
        return `</${prefix}sheetData>`;
      case "new-row":
        return `<${prefix}row r="${a}">`;
      case "cells":
        return columns ? cells.cells(a, columns.first, edit.cellsOf(a)) : "";
      case "new-framed": {
        const { row = 1, column = 1 } = frames[a] ?? {};
        return `<${prefix}c r="${cellName(row, column)}" s="${framed(a, b)}"/>`;
      }
      case "frame":
        return String(framed(a, b));
      case "frame-plain":
        return ` s="${framed(a, b)}"`;
      case "spans":
        return columns ? `${Math.min(a, columns.first)}:${Math.max(b, columns.last)}` : `${a}:${b}`;
      case "spans-as-told":
        return `${a}:${b}`;
      case "drop":
        return "";
    }
  };
}
