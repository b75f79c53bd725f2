import { cellName } from "../base/index.js";
import { readAddress } from "./cell-address.js";
import { columnInRow, plainIndex, plainNumber } from "./cell-bytes.js";
import { type CellTables, cellValue } from "./cell-value.js";
import type { NumberFormat } from "./cells.js";
import { TextRuns } from "./rich-text.js";
import type { SheetRows } from "./sheet-rows.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import type { StartTag } from "./xml-start-tag.js";
import type { WantedText } from "./xml-wanted-text.js";

const asciiOf = (name: string): Uint8Array => new TextEncoder().encode(name);
const ADDRESS = asciiOf("r");
const TYPE = asciiOf("t");
const STYLE = asciiOf("s");
const SHARED_LETTER = 115;
const NUMBER_LETTER = 110;

/** What the content of a cell is known to be so far without looking at it as text. */
type Plain = "number" | "shared" | null;

/**
 * The cell that is being read. Plain numbers and references to shared texts, nearly all there is, are taken from the
 * bytes; whatever looks any different is understood as text, by `cellValue`, which says what is right.
 */
export class SheetCell {
  column = 0;
  /** Whether a cell is open. */
  isOpen = false;
  readonly runs = new TextRuns();
  inline: "no" | "open" | "done" = "no";
  hasFormula = false;
  readonly #sheet: string;
  readonly #tables: CellTables;
  readonly #rows: SheetRows;
  #type = "n";
  #style: string | undefined;
  #format: NumberFormat | undefined;
  #content: string | null = null;
  #plain: Plain = null;
  #number = 0;

  constructor(sheet: string, tables: CellTables, rows: SheetRows) {
    this.#sheet = sheet;
    this.#tables = tables;
    this.#rows = rows;
  }

  /**
   * Begins a cell.
   *
   * @throws Unreadable if its address cannot be or names another row
   */
  open(tag: StartTag, row: number): void {
    this.isOpen = true;
    this.inline = "no";
    this.hasFormula = false;
    this.#content = null;
    this.#plain = null;
    const address = tag.find(ADDRESS);
    this.column = address < 0 ? this.column + 1 : this.#columnOf(tag, address, row);
    const type = tag.find(TYPE);
    this.#type = type < 0 ? "n" : typeOf(tag, type);
    this.#readStyle(tag);
  }

  /** Takes the content of the value element. */
  take(text: WantedText): void {
    const { bytes, from, to } = text;
    this.#plain = null;
    if (this.#type === "s") {
      this.#number = plainIndex(bytes, from, to);
      if (this.#number >= 0 && this.#number < this.#tables.sharedTexts.length) this.#plain = "shared";
    } else if (this.#type === "n") {
      this.#number = plainNumber(bytes, from, to);
      if (!Number.isNaN(this.#number)) this.#plain = "number";
    }
    this.#content = this.#plain === null ? text.string : "";
  }

  /** Ends the cell and puts its value, if it has one, in its row. @throws Unreadable for what cannot be */
  close(row: number, hidden: boolean): void {
    this.isOpen = false;
    if (this.#plain !== null && this.#format !== undefined) {
      if (this.#plain === "number") this.#rows.addNumber(row, this.column, hidden, this.#number, this.#format);
      else if (!this.#tables.sharedTexts.isBlank(this.#number)) {
        this.#rows.addReference(row, this.column, hidden, this.#number);
      }
      return;
    }
    if (this.#content === null && this.inline === "no" && !this.hasFormula && this.#format !== undefined) return;
    const { column } = this;
    const value = cellValue(
      {
        type: this.#type,
        style: this.#style,
        hasFormula: this.hasFormula,
        content: this.#plain === null ? this.#content : String(this.#number),
        inlineText: this.inline === "no" ? null : this.runs.text,
      },
      this.#tables,
      () => `cell ${cellName(row, column)} of the sheet ${quoted(this.#sheet)}`,
    );
    if (value !== null) this.#rows.add(row, column, hidden, value);
  }

  #columnOf(tag: StartTag, index: number, row: number): number {
    const column = columnInRow(tag.bytes, tag.valueFrom(index), tag.valueTo(index), row);
    if (column > 0) return column;
    const written = tag.value(index);
    const address = readAddress(written);
    if (address?.row === row) return address.column;
    return refuse(
      "bad-cell-address",
      `the sheet ${quoted(this.#sheet)} has a cell with the address ${quoted(written)} in row ${grouped(row)}; open the workbook in a spreadsheet program and save it again`,
    );
  }

  #readStyle(tag: StartTag): void {
    const { formats } = this.#tables;
    const index = tag.find(STYLE);
    this.#style = undefined;
    this.#format = "general";
    if (index < 0 || formats === null) return;
    this.#format = formats[plainIndex(tag.bytes, tag.valueFrom(index), tag.valueTo(index))];
    if (this.#format === undefined) this.#style = tag.value(index);
  }
}

function typeOf(tag: StartTag, index: number): string {
  const from = tag.valueFrom(index);
  if (tag.valueTo(index) - from === 1) {
    const letter = tag.bytes[from];
    if (letter === SHARED_LETTER) return "s";
    if (letter === NUMBER_LETTER) return "n";
  }
  return tag.value(index);
}
