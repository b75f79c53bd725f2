import type { CellValue } from "../../workbook/index.js";
import type { CellContext } from "../cells/read-cell.js";
import type { ColumnPlan } from "../headings/columns.js";
import { type CellSaid, dittoOfNothing, readColumnCell } from "./column-cell.js";

/** Different cells remembered per column; past it everything is forgotten, since what comes again comes again soon. */
const MOST_REMEMBERED = 4_000;

/** Reads the cells of one column; what it said once of a value it says again without looking. */
export class ColumnReader {
  readonly plan: ColumnPlan;
  readonly context: CellContext;
  /** What an empty cell says. */
  readonly empty: CellSaid;
  /** A mark for "as above" with nothing above it. */
  readonly dittoOfNothing: CellSaid;
  readonly #said = new Map<unknown, CellSaid | "ditto">();

  constructor(plan: ColumnPlan, context: CellContext) {
    this.plan = plan;
    this.context = context;
    this.empty = readColumnCell(plan, undefined, context);
    this.dittoOfNothing = dittoOfNothing(context.field.id);
  }

  /** What a filled cell says, the same object for the same value; "ditto" for a mark that repeats the cell above. */
  read(value: CellValue): CellSaid | "ditto" {
    const key = keyOf(value);
    const known = this.#said.get(key);
    if (known !== undefined) return known;
    const ditto = value.kind === "text" && this.context.vocabulary.isDitto(value.text);
    const said = ditto ? "ditto" : readColumnCell(this.plan, value, this.context);
    if (this.#said.size >= MOST_REMEMBERED) this.#said.clear();
    this.#said.set(key, said);
    return said;
  }
}

/** Texts and numbers by themselves, so that equal cells are one whatever object holds them; no text holds a NUL. */
function keyOf(value: CellValue): unknown {
  if (value.kind === "text") return value.text;
  if (value.kind === "number") return value.format === "general" ? value.number : `\0${value.format} ${value.number}`;
  return value;
}
