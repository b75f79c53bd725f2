import { looksLikeFormula } from "../../base/index.js";
import type { AddedRow, AddedSheet, CellLook, EditCell } from "../../workbook/index.js";
import { heightOf } from "./row-heights.js";
import type { Look } from "./styles.js";
import type { TextRow } from "./text-sheet.js";

type Part = Exclude<Look["part"], "survey" | "heading"> | "one-line";

const BASE: CellLook = {
  points: 10,
  bold: false,
  wrap: true,
  filled: false,
  bottomLine: "hair",
  staysText: false,
};
const PARTS: Readonly<Record<Part, CellLook>> = {
  title: { ...BASE, points: 14, bold: true, wrap: false, bottomLine: "none" },
  "our-heading": { ...BASE, bold: true, filled: true, bottomLine: "thin" },
  verdict: { ...BASE, bold: true, filled: true, wrap: false },
  "one-line": { ...BASE, wrap: false },
  ours: BASE,
};
const NAMES = Object.keys(PARTS) as readonly Part[];

/** The looks of our cells in an edited survey; each has a twin for texts that could be taken for formulas. */
export const LOOKS: readonly CellLook[] = NAMES.flatMap((name) => [PARTS[name], { ...PARTS[name], staysText: true }]);

/** A cell of ours; an empty text leaves the cell empty. */
export function cellOf(part: Part, content: string | number): EditCell | null {
  if (content === "") return null;
  const look = 2 * NAMES.indexOf(part);
  if (typeof content === "number") return { content, look };
  return { content, look: look + (looksLikeFormula(content) ? 1 : 0) };
}

/** A sheet can have 1,048,576 rows; room is left for the word on what is not listed. */
const MOST_ROWS = 1_000_000;

/** A sheet of our own from rows of texts, each as high as they need: not every program sees to that on opening. */
export function ourSheet(
  name: string,
  widths: readonly number[],
  frozenRows: number,
  rows: () => Iterable<TextRow>,
): AddedSheet {
  const footer = "a screening, not a permission";
  return { name, widths, frozenRows, footer, rows: () => written(rows(), widths) };
}

function* written(rows: Iterable<TextRow>, widths: readonly number[]): Generator<AddedRow> {
  let count = 0;
  for (const { part, cells } of rows) {
    count += 1;
    if (count > MOST_ROWS) continue;
    const own = part === "title" || part === "our-heading" || part === "verdict" ? part : "ours";
    yield {
      height: part === "title" ? null : heightOf(cells, widths),
      cells: cells.map((cell) => cellOf(own, cell)),
    };
  }
  if (count <= MOST_ROWS) return;
  yield {
    height: null,
    cells: [cellOf("ours", `${count - MOST_ROWS} more rows do not fit here; see the result document`)],
  };
}
