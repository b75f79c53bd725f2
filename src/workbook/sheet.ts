import { showText } from "../base/index.js";
import { readAddress } from "./cell-address.js";
import { plainIndex } from "./cell-bytes.js";
import type { CellTables } from "./cell-value.js";
import type { MergedRange, RawRow, ReadingLimits } from "./cells.js";
import type { KeptValues } from "./kept-values.js";
import { orAllowMore } from "./limits.js";
import type { PartReceiver } from "./package.js";
import { PlainCells } from "./plain-cells.js";
import { SheetCell } from "./sheet-cell.js";
import { type CellCount, SheetRows } from "./sheet-rows.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import { XmlFeed } from "./xml-feed.js";
import { type XmlEvents, XmlScanner } from "./xml-scan.js";
import type { StartTag } from "./xml-start-tag.js";

const TRUE_WORD = /^\s*(?:1|true|on)\s*$/i;

/** What one sheet part holds, as far as a survey can use it. */
export interface SheetContent {
  readonly rows: readonly RawRow[];
  readonly merges: readonly MergedRange[];
  readonly hiddenColumns: ReadonlySet<number>;
}

/** What is needed to read the sheets of one workbook. */
export interface SheetContext {
  readonly tables: CellTables;
  /** Where the values of the workbook are kept; the shared texts stand first, under their own numbers. */
  readonly kept: KeptValues;
  readonly limits: ReadingLimits;
  readonly count: CellCount;
  /** Takes what is worth saying but does not stop the reading. */
  readonly remarks: string[];
  readonly onBytes: (done: number) => void;
}

/** Elements that mean something in a sheet, the frequent ones first. */
const NAMES = [
  "c",
  "v",
  "row",
  "f",
  "t",
  "is",
  "r",
  "col",
  "cols",
  "mergeCell",
  "mergeCells",
  "sheetData",
  "worksheet",
];

/** Depth of a row: worksheet, sheetData, row. */
const ROW_DEPTH = 3;

const asciiOf = (name: string): Uint8Array => new TextEncoder().encode(name);
const ROW_NUMBER = asciiOf("r");
const HIDDEN = asciiOf("hidden");
const REFERENCE = asciiOf("ref");
const FIRST_COLUMN = asciiOf("min");
const LAST_COLUMN = asciiOf("max");

/**
 * Reads one sheet part as it comes. The range that the part claims to fill is ignored; what counts is the cells it has.
 */
export class SheetReader implements PartReceiver, XmlEvents {
  readonly #rows: SheetRows;
  readonly #merges: MergedRange[] = [];
  readonly #hiddenColumns = new Set<number>();
  readonly #part: string;
  readonly #sheet: string;
  readonly #context: SheetContext;
  readonly #feed: XmlFeed;
  readonly #cell: SheetCell;
  readonly #plain: PlainCells;
  #section = "";
  #row = 0;
  #rowHidden = false;
  #inRow = false;
  #sawRowZero = false;
  #bytes = 0;

  /**
   * @param part - name of the part, for messages
   * @param sheet - name of the sheet, for messages
   */
  constructor(part: string, sheet: string, context: SheetContext) {
    this.#part = part;
    this.#sheet = sheet;
    this.#context = context;
    this.#rows = new SheetRows(sheet, context.limits, context.count, context.kept);
    this.#cell = new SheetCell(sheet, context.tables, this.#rows);
    this.#plain = new PlainCells(context.tables, this.#rows);
    this.#feed = new XmlFeed(part, new XmlScanner(part, NAMES, this));
  }

  /** @throws Unreadable if the part is damaged, is no worksheet or breaks a limit */
  write(piece: Uint8Array): void {
    this.#feed.write(piece);
    this.#bytes += piece.length;
    this.#context.onBytes(this.#bytes);
  }

  /** @throws Unreadable if the part is not whole */
  end(): void {
    this.#feed.end();
  }

  /** What the sheet holds, once it is read to the end. @throws Unreadable if a cell stands in it twice */
  content(): SheetContent {
    return { rows: this.#rows.finish(), merges: this.#merges, hiddenColumns: this.#hiddenColumns };
  }

  open({ tag, depth, element }: XmlScanner): boolean {
    const name = NAMES[element - 1] ?? "";
    const cell = this.#cell;
    if (depth > 5) return cell.inline === "open" && cell.runs.open(name, depth - 5);
    if (depth === 5) return this.#openInCell(name);
    if (depth === 4) {
      if (this.#inRow && name === "c") cell.open(tag, this.#row);
    } else if (depth === 3) this.#openInSection(name, tag);
    else if (depth === 2) this.#section = name;
    else if (name !== "worksheet") {
      refuse(
        "not-a-worksheet",
        `the part ${quoted(this.#part)} should be the sheet ${quoted(this.#sheet)} but is not a worksheet; open the workbook in a spreadsheet program and save it again`,
      );
    }
    return false;
  }

  close({ depth, element, text }: XmlScanner): void {
    const cell = this.#cell;
    if (depth > 5) {
      if (cell.inline === "open" && text.isHere) cell.runs.close(text.string);
    } else if (depth === 5) {
      if (!cell.isOpen) return;
      const name = NAMES[element - 1];
      if (name === "v") cell.take(text);
      else if (name === "is") cell.inline = "done";
    } else if (depth === 4) {
      if (cell.isOpen) cell.close(this.#row, this.#rowHidden);
    } else if (depth === 3) this.#inRow = false;
  }

  pass({ depth }: XmlScanner, bytes: Uint8Array, at: number, to: number): number {
    if (depth !== ROW_DEPTH || !this.#inRow) return at;
    const next = this.#plain.pass(bytes, at, to, this.#row, this.#rowHidden);
    // A cell without an address follows the last one, however that was read.
    if (next > at) this.#cell.column = this.#plain.column;
    return next;
  }

  #openInSection(name: string, tag: StartTag): void {
    if (this.#section === "sheetData" && name === "row") this.#openRow(tag);
    else if (this.#section === "mergeCells" && name === "mergeCell") this.#addMerge(attributeOf(tag, REFERENCE) ?? "");
    else if (this.#section === "cols" && name === "col") this.#addColumns(tag);
  }

  #openRow(tag: StartTag): void {
    const index = tag.find(ROW_NUMBER);
    const number = index < 0 ? -1 : plainIndex(tag.bytes, tag.valueFrom(index), tag.valueTo(index));
    const hidden = attributeOf(tag, HIDDEN);
    // Rows and cells without a number follow the one before.
    if (index < 0) this.#row += 1;
    else if (number >= 0) this.#row = number;
    else if (/^\d{1,9}$/.test(tag.value(index))) this.#row = Number(tag.value(index));
    else {
      refuse(
        "bad-row-number",
        `the sheet ${quoted(this.#sheet)} has a row with the number ${quoted(tag.value(index))}, which cannot be read; open the workbook in a spreadsheet program and save it again`,
      );
    }
    this.#rowHidden = hidden !== undefined && TRUE_WORD.test(hidden);
    // A program that counts rows from 0 writes one that no spreadsheet can show.
    this.#inRow = this.#row > 0;
    if (!this.#inRow && !this.#sawRowZero) {
      this.#sawRowZero = true;
      this.#context.remarks.push(`the sheet ${quoted(this.#sheet)} has a row 0, which no sheet has; it was left out`);
    }
    this.#cell.column = 0;
  }

  #openInCell(name: string): boolean {
    const cell = this.#cell;
    if (!cell.isOpen) return false;
    if (name === "f") cell.hasFormula = true;
    else if (name === "is") {
      cell.inline = "open";
      cell.runs.begin();
    }
    return name === "v";
  }

  #addMerge(ref: string): void {
    if (this.#merges.length >= this.#context.limits.merges) {
      refuse(
        "too-many-merges",
        `the sheet ${quoted(this.#sheet)} has more than ${grouped(this.#context.limits.merges)} merged ranges, the limit; unmerge what lies outside the survey and save it again${orAllowMore("merges")}`,
      );
    }
    const [first = "", second = first] = ref.split(":");
    const a = readAddress(first);
    const b = readAddress(second);
    if (a === null || b === null) {
      refuse(
        "bad-merge",
        `the sheet ${quoted(this.#sheet)} has a merged range ${showText(ref) === "" ? "without an address" : `with the address ${quoted(ref)}`}, which cannot be read; open the workbook in a spreadsheet program and save it again`,
      );
    }
    this.#merges.push({
      top: Math.min(a.row, b.row),
      left: Math.min(a.column, b.column),
      bottom: Math.max(a.row, b.row),
      right: Math.max(a.column, b.column),
    });
  }

  #addColumns(tag: StartTag): void {
    const hidden = attributeOf(tag, HIDDEN);
    if (hidden === undefined || !TRUE_WORD.test(hidden)) return;
    // A sheet often hides everything to its right edge; columns beyond the limit hold nothing anyway.
    const last = Math.min(Number(attributeOf(tag, LAST_COLUMN)), this.#context.limits.columns);
    const first = Math.max(1, Math.trunc(Number(attributeOf(tag, FIRST_COLUMN))));
    for (let column = first; column <= last; column++) this.#hiddenColumns.add(column);
  }
}

function attributeOf(tag: StartTag, name: Uint8Array): string | undefined {
  const index = tag.find(name);
  return index < 0 ? undefined : tag.value(index);
}
