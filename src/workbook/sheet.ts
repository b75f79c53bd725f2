import { cellName, showText } from "../base/index.js";
import { readAddress } from "./cell-address.js";
import { type CellTables, cellValue } from "./cell-value.js";
import type { MergedRange, RawRow, ReadingLimits } from "./cells.js";
import type { Part } from "./package.js";
import { TextRuns } from "./rich-text.js";
import { type CellCount, SheetRows } from "./sheet-rows.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import { type Attributes, passXml, type XmlListener } from "./xml-pass.js";

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
  readonly limits: ReadingLimits;
  readonly count: CellCount;
  /** Takes what is worth saying but does not stop the reading. */
  readonly remarks: string[];
  readonly onBytes: (done: number) => void;
}

/**
 * Reads one sheet part. The range that the part claims to fill is ignored; what counts is the cells it has.
 *
 * @param sheet - name of the sheet, for messages
 * @throws Unreadable if the part is damaged, is no worksheet or breaks a limit
 */
export function readSheet(part: Part, sheet: string, context: SheetContext): SheetContent {
  const listener = new SheetListener(part, sheet, context);
  passXml(part, listener, context.onBytes);
  return { rows: listener.rows.finish(), merges: listener.merges, hiddenColumns: listener.hiddenColumns };
}

class SheetListener implements XmlListener {
  readonly rows: SheetRows;
  readonly merges: MergedRange[] = [];
  readonly hiddenColumns = new Set<number>();
  readonly #part: Part;
  readonly #sheet: string;
  readonly #context: SheetContext;
  readonly #runs = new TextRuns();
  #section = "";
  #row = 0;
  #rowHidden = false;
  #inRow = false;
  #column = 0;
  #attributes: Attributes | null = null;
  #content: string | null = null;
  #inline: "no" | "open" | "done" = "no";
  #hasFormula = false;

  constructor(part: Part, sheet: string, context: SheetContext) {
    this.#part = part;
    this.#sheet = sheet;
    this.#context = context;
    this.rows = new SheetRows(sheet, context.limits, context.count);
  }

  open(name: string, attributes: Attributes, depth: number): boolean {
    if (depth > 5) return this.#inline === "open" && this.#runs.open(name, depth - 5);
    if (depth === 5) return this.#openInCell(name);
    if (depth === 4) this.#openCell(name, attributes);
    else if (depth === 3) this.#openInSection(name, attributes);
    else if (depth === 2) this.#section = name;
    else if (name !== "worksheet") {
      refuse(
        "not-a-worksheet",
        `the part ${quoted(this.#part.name)} should be the sheet ${quoted(this.#sheet)} but is not a worksheet; open the workbook in a spreadsheet program and save it again`,
      );
    }
    return false;
  }

  close(name: string, text: string, depth: number): void {
    if (depth > 5) {
      if (this.#inline === "open") this.#runs.close(text);
    } else if (depth === 5) {
      if (this.#attributes === null) return;
      if (name === "v") this.#content = text;
      else if (name === "is") this.#inline = "done";
    } else if (depth === 4) this.#closeCell();
    else if (depth === 3) this.#inRow = false;
  }

  #openInSection(name: string, attributes: Attributes): void {
    if (this.#section === "sheetData" && name === "row") this.#openRow(attributes);
    else if (this.#section === "mergeCells" && name === "mergeCell") this.#addMerge(attributes.ref ?? "");
    else if (this.#section === "cols" && name === "col") this.#addColumns(attributes);
  }

  #openRow({ r, hidden }: Attributes): void {
    // Rows and cells without a number follow the one before.
    if (r === undefined) this.#row += 1;
    else if (/^\d{1,9}$/.test(r)) this.#row = Number(r);
    else {
      refuse(
        "bad-row-number",
        `the sheet ${quoted(this.#sheet)} has a row with the number ${quoted(r)}, which cannot be read; open the workbook in a spreadsheet program and save it again`,
      );
    }
    this.#rowHidden = hidden !== undefined && TRUE_WORD.test(hidden);
    // A program that counts rows from 0 writes one that no spreadsheet can show.
    this.#inRow = this.#row > 0;
    if (!this.#inRow) {
      this.#context.remarks.push(`the sheet ${quoted(this.#sheet)} has a row 0, which no sheet has; it was left out`);
    }
    this.#column = 0;
  }

  #openCell(name: string, attributes: Attributes): void {
    if (!this.#inRow || name !== "c") return;
    this.#attributes = attributes;
    this.#content = null;
    this.#inline = "no";
    this.#hasFormula = false;
    const written = attributes.r;
    if (written === undefined) {
      this.#column += 1;
      return;
    }
    const address = readAddress(written);
    if (address === null || address.row !== this.#row) {
      refuse(
        "bad-cell-address",
        `the sheet ${quoted(this.#sheet)} has a cell with the address ${quoted(written)} in row ${grouped(this.#row)}; open the workbook in a spreadsheet program and save it again`,
      );
    }
    this.#column = address.column;
  }

  #openInCell(name: string): boolean {
    if (this.#attributes === null) return false;
    if (name === "f") this.#hasFormula = true;
    else if (name === "is") {
      this.#inline = "open";
      this.#runs.begin();
    }
    return name === "v";
  }

  #closeCell(): void {
    const attributes = this.#attributes;
    if (attributes === null) return;
    this.#attributes = null;
    const row = this.#row;
    const column = this.#column;
    const value = cellValue(
      {
        type: attributes.t ?? "n",
        style: attributes.s,
        hasFormula: this.#hasFormula,
        content: this.#content,
        inlineText: this.#inline === "no" ? null : this.#runs.text,
      },
      this.#context.tables,
      () => `cell ${cellName(row, column)} of the sheet ${quoted(this.#sheet)}`,
    );
    if (value !== null) this.rows.add(row, column, this.#rowHidden, value);
  }

  #addMerge(ref: string): void {
    if (this.merges.length >= this.#context.limits.merges) {
      refuse(
        "too-many-merges",
        `the sheet ${quoted(this.#sheet)} has more than ${grouped(this.#context.limits.merges)} merged ranges, the limit; unmerge what lies outside the survey and save it again`,
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
    this.merges.push({
      top: Math.min(a.row, b.row),
      left: Math.min(a.column, b.column),
      bottom: Math.max(a.row, b.row),
      right: Math.max(a.column, b.column),
    });
  }

  #addColumns({ min, max, hidden }: Attributes): void {
    if (hidden === undefined || !TRUE_WORD.test(hidden)) return;
    // A sheet often hides everything to its right edge; columns beyond the limit hold nothing anyway.
    const last = Math.min(Number(max), this.#context.limits.columns);
    for (let column = Math.max(1, Math.trunc(Number(min))); column <= last; column++) this.hiddenColumns.add(column);
  }
}
