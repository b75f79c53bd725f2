import type { CellValue, NumberFormat, RawCell, RawRow, RawSheet } from "./cells.js";

const BLOCK_BITS = 16;
const BLOCK_CELLS = 1 << BLOCK_BITS;
const BLOCK_MASK = BLOCK_CELLS - 1;

/** Number formats by the code under which a cell is kept; any other value is kept as a reference. */
const FORMATS: readonly NumberFormat[] = ["general", "date", "time", "percent"];
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
  readonly #blocks: Block[] = [];
  readonly #values: CellValue[] = [];
  readonly #references = new Map<CellValue, number>();
  #length = 0;

  get length(): number {
    return this.#length;
  }

  /** Adds a cell behind those that are there; which row it belongs to is known to the rows. */
  push(column: number, value: CellValue): void {
    const at = this.#length & BLOCK_MASK;
    if (at === 0) this.#blocks.push(newBlock());
    const block = this.#blocks[this.#length >> BLOCK_BITS] as Block;
    block.columns[at] = column;
    if (value.kind === "number") {
      block.codes[at] = FORMATS.indexOf(value.format);
      block.contents[at] = value.number;
    } else {
      block.codes[at] = REFERENCE;
      block.contents[at] = this.#referenceTo(value);
    }
    this.#length += 1;
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
    if (code === REFERENCE) return this.#values[content] as CellValue;
    return { kind: "number", number: content, format: FORMATS[code] ?? "general" };
  }

  #referenceTo(value: CellValue): number {
    const known = this.#references.get(value);
    if (known !== undefined) return known;
    this.#references.set(value, this.#values.length);
    return this.#values.push(value) - 1;
  }
}

function newBlock(): Block {
  return {
    columns: new Uint16Array(BLOCK_CELLS),
    codes: new Uint8Array(BLOCK_CELLS),
    contents: new Float64Array(BLOCK_CELLS),
  };
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
    let low = this.#start;
    // Most rows are filled from the first column on, so that the place of a column can be told at once.
    const likely = low + column - 1;
    if (likely < this.#end && this.#cells.column(likely) === column) return this.#cells.value(likely);
    let high = this.#end;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#cells.column(middle) < column) low = middle + 1;
      else high = middle;
    }
    return low < this.#end && this.#cells.column(low) === column ? this.#cells.value(low) : undefined;
  }
}

/**
 * A sheet of texts held in memory, as a reader of files would give it; an empty text leaves its cell empty.
 *
 * @param rows - texts from column A on, for rows 1, 2, 3 and so on
 */
export function sheetOfTexts(name: string, rows: readonly (readonly string[])[]): RawSheet {
  const cells = new PackedCells();
  const packed = rows.map((texts, i) => {
    const start = cells.length;
    for (const [c, text] of texts.entries()) if (text !== "") cells.push(c + 1, { kind: "text", text });
    return new PackedRow(i + 1, false, cells, start, cells.length);
  });
  return { name, visibility: "visible", rows: packed, merges: [], hiddenColumns: new Set() };
}
