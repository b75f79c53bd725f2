/**
 * Writes a survey of the bench back with one column, one mark and one sheet more: `node tests/bench/edit.mjs FILE OUT
 * ROWS`. This is what editing a workbook costs, apart from judging what to write into it.
 */
import { createWriteStream, readFileSync } from "node:fs";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { nodeInflating } from "../../dist/disk/index.js";
import { editWorkbook } from "../../dist/workbook/index.js";

const [file, out, points] = process.argv.slice(2);
/** Rows of title and headings above the points. */
const ABOVE = 2;

const look = { points: 10, bold: false, wrap: false, filled: false, bottomLine: "none", staysText: false };
const column = {
  sheet: "Survey",
  widths: [10],
  rows: new Set(Array.from({ length: Number(points) }, (_, i) => ABOVE + 1 + i)),
  cellsOf: () => [{ content: "pass", look: 0 }],
  printed: 0,
  frames: [{ row: ABOVE + 1, column: 5, line: "thick" }],
};
const sheet = {
  name: "Added",
  widths: [20],
  footer: "",
  frozenRows: 0,
  rows: () => [{ height: null, cells: [{ content: "one sheet more", look: 0 }] }],
};
const editing = await editWorkbook(
  readFileSync(file),
  { looks: [look], sheets: [column], added: [sheet] },
  nodeInflating,
);
if (!editing.ok) throw new Error(editing.reason.text);
await pipeline(Readable.from(editing.pieces), createWriteStream(out));
