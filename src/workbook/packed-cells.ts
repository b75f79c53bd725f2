import type { CellValue, NumberFormat, RawCell, RawRow, RawSheet } from "./cells.js";
import { KeptValues } from "./kept-values.js";

const BLOCK_BITS = 16;
const BLOCK_CELLS = 1 << BLOCK_BITS;
const BLOCK_MASK = BLOCK_CELLS - 1;
const FIRST_CELLS = 256;

/** Number formats by the code under which a cell is kept; any other value is kept as a reference. */
const FORMATS: readonly NumberFormat[] = ["general", "date", "time", "percent", "scientific"];
const REFERENCE = FORMATS.length;

/** A stretch of cells, eleven bytes each. */
interface Block {
  readonly columns: Uint16Array;
  readonly codes: Uint8Array;
  /** The number itself, or where the value stands in the list of references. */
  readonly contents: Float64Array;
}

/**
 * The filled cells of one sheet, packed: numbers as numbers, everything else as a reference to a value that is kept
 * once. A sheet of millions of cells takes a dozen bytes for each of them, and what its different texts need.
 */
export class PackedCells {
  readonly #kept: KeptValues;
  readonly #blocks: Block[] = [];
  #last: Block = newBlock(0);
  #length = 0;
  /** Cells that find room in the blocks that are there. */
  #room = 0;

  constructor(kept: KeptValues) {
    this.#kept = kept;
  }

  get length(): number {
    return this.#length;
  }

  /** Adds a cell behind those that are there; which row it belongs to is known to the rows. */
  push(column: number, value: CellValue): void {
    if (value.kind === "number") this.pushNumber(column, value.number, value.format);
    else this.pushReference(column, this.#kept.value(value));
  }

  pushNumber(column: number, number: number, format: NumberFormat): void {
    this.#push(column, format === "general" ? 0 : FORMATS.indexOf(format), number);
  }

  /** @param reference - number under which the value is kept */
  pushReference(column: number, reference: number): void {
    this.#push(column, REFERENCE, reference);
  }

  column(index: number): number {
    return this.#blocks[index >> BLOCK_BITS]?.columns[index & BLOCK_MASK] ?? 0;
  }

  /** The value of a cell; a text that several cells share is one object, a number is made anew. */
  value(index: number): CellValue {
    const block = this.#blocks[index >> BLOCK_BITS] as Block;
    const at = index & BLOCK_MASK;
    const code = block.codes[at] ?? 0;
    const content = block.contents[at] ?? 0;
    if (code === REFERENCE) return this.#kept.at(content);
    return { kind: "number", number: content, format: FORMATS[code] ?? "general" };
  }

  /** The text of a cell; undefined for anything else. */
  text(index: number): string | undefined {
    const block = this.#blocks[index >> BLOCK_BITS] as Block;
    const at = index & BLOCK_MASK;
    if (block.codes[at] !== REFERENCE) return undefined;
    const value = this.#kept.at(block.contents[at] ?? 0);
    return value.kind === "text" ? value.text : undefined;
  }

  #push(column: number, code: number, content: number): void {
    if (this.#length === this.#room) this.#makeRoom(this.#length & BLOCK_MASK);
    const at = this.#length & BLOCK_MASK;
    const last = this.#last;
    last.columns[at] = column;
    last.codes[at] = code;
    last.contents[at] = content;
    this.#length += 1;
  }

  /** Small sheets begin with a small block, since a workbook may have a thousand of them. */
  #makeRoom(at: number): void {
    if (at === 0) this.#last = newBlock(this.#length === 0 ? FIRST_CELLS : BLOCK_CELLS);
    else this.#last = widened(this.#last, BLOCK_CELLS);
    this.#blocks[this.#length >> BLOCK_BITS] = this.#last;
    this.#room = this.#length - at + this.#last.codes.length;
  }
}

function newBlock(cells: number): Block {
  return { columns: new Uint16Array(cells), codes: new Uint8Array(cells), contents: new Float64Array(cells) };
}

function widened(block: Block, cells: number): Block {
  const wider = newBlock(cells);
  wider.columns.set(block.columns);
  wider.codes.set(block.codes);
  wider.contents.set(block.contents);
  return wider;
}

/** A row over packed cells, from `start` up to `end`, columns ascending. */
export class PackedRow implements RawRow {
  readonly row: number;
  readonly hidden: boolean;
  readonly #cells: PackedCells;
  readonly #start: number;
  readonly #end: number;

  constructor(row: number, hidden: boolean, cells: PackedCells, start: number, end: number) {
    this.row = row;
    this.hidden = hidden;
    this.#cells = cells;
    this.#start = start;
    this.#end = end;
  }

  get cells(): readonly RawCell[] {
    const cells: RawCell[] = [];
    for (let i = this.#start; i < this.#end; i++) {
      cells.push({ row: this.row, column: this.#cells.column(i), value: this.#cells.value(i) });
    }
    return cells;
  }

  at(column: number): CellValue | undefined {
    const index = this.#find(column);
    return index < 0 ? undefined : this.#cells.value(index);
  }

  textAt(column: number): string | undefined {
    const index = this.#find(column);
    return index < 0 ? undefined : this.#cells.text(index);
  }

  /** Where the cell of a column is kept, or -1. */
  #find(column: number): number {
    let low = this.#start;
    // Most rows are filled from the first column on, so that the place of a column can be told at once.
    const likely = low + column - 1;
    if (likely < this.#end && this.#cells.column(likely) === column) return likely;
    let high = this.#end;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#cells.column(middle) < column) low = middle + 1;
      else high = middle;
    }
    return low < this.#end && this.#cells.column(low) === column ? low : -1;
  }
}

/**
 * A sheet of texts held in memory, as a reader of files would give it; an empty text leaves its cell empty.
 *
 * @param rows - texts from column A on, for rows 1, 2, 3 and so on
 */
export function sheetOfTexts(name: string, rows: readonly (readonly string[])[]): RawSheet {
  const cells = new PackedCells(new KeptValues(Number.POSITIVE_INFINITY));
  const packed = rows.map((texts, i) => {
    const start = cells.length;
    for (const [c, text] of texts.entries()) if (text !== "") cells.push(c + 1, { kind: "text", text });
    return new PackedRow(i + 1, false, cells, start, cells.length);
  });
  return { name, visibility: "visible", rows: packed, merges: [], hiddenColumns: new Set() };
}
