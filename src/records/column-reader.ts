import type { CellValue } from "../workbook/index.js";
import { type CellSaid, dittoOfNothing, readColumnCell } from "./column-cell.js";
import type { ColumnPlan } from "./columns.js";
import type { CellContext } from "./read-cell.js";
import { rememberedTexts } from "./remembered.js";

/** Different cells remembered per column; a column with more of them repeats itself within a stretch, if at all. */
const MOST_REMEMBERED = 4_000;

/** Reads the cells of one column; what it said once of a value it says again without looking. */
export class ColumnReader {
  readonly plan: ColumnPlan;
  readonly context: CellContext;
  readonly #said = new Map<unknown, CellSaid>();
  readonly #isDitto: (text: string) => boolean;
  readonly #empty: CellSaid;
  readonly #dittoOfNothing: CellSaid;

  constructor(plan: ColumnPlan, context: CellContext) {
    this.plan = plan;
    this.context = context;
    this.#empty = readColumnCell(plan, undefined, context);
    this.#dittoOfNothing = dittoOfNothing(context.field.id);
    this.#isDitto = rememberedTexts(context.vocabulary.isDitto);
  }

  /** What the cell says; the same object for the same value. */
  read(value: CellValue | undefined): CellSaid {
    if (value === undefined) return this.#empty;
    const key = keyOf(value);
    const known = this.#said.get(key);
    if (known !== undefined) return known;
    const said = readColumnCell(this.plan, value, this.context);
    if (this.#said.size >= MOST_REMEMBERED) this.#said.clear();
    this.#said.set(key, said);
    return said;
  }

  /** A mark for "as above" with nothing above it. */
  get dittoOfNothing(): CellSaid {
    return this.#dittoOfNothing;
  }

  isDitto(value: CellValue): boolean {
    return value.kind === "text" && this.#isDitto(value.text);
  }
}

/** Texts and numbers by themselves, so that equal cells are one whatever object holds them; no text holds a NUL. */
function keyOf(value: CellValue): unknown {
  if (value.kind === "text") return value.text;
  if (value.kind === "number") return value.format === "general" ? value.number : `\0${value.format} ${value.number}`;
  return value;
}
