import Table from "cli-table3";
import { showText } from "../../base/index.js";
import { displayWidth, wrapText } from "../wording/wrap.js";

/** No line of the report is wider. */
export const REPORT_COLUMNS = 100;

/** Text that cannot steer a terminal, whatever was in the survey; long texts stay whole. */
function plainText(text: string): string {
  return showText(text, Math.max(80, text.length * 10));
}

/** A paragraph, `first` before its first line and as many blanks before the others. */
export function paragraph(text: string, first: string = ""): readonly string[] {
  const indent = displayWidth(first);
  const lines = wrapText(plainText(text), REPORT_COLUMNS - indent);
  return lines.map((line, index) => (index === 0 ? first : " ".repeat(indent)) + line);
}

/** One column of a table: its heading and the widest it may get. */
export interface TableColumn {
  readonly heading: string;
  readonly width: number;
  readonly align?: "right";
}

const LINES_OF_TABLE = {
  top: "",
  "top-mid": "",
  "top-left": "",
  "top-right": "",
  bottom: "",
  "bottom-mid": "",
  "bottom-left": "",
  "bottom-right": "",
  left: "  ",
  "left-mid": "",
  mid: "",
  "mid-mid": "",
  right: "",
  "right-mid": "",
  middle: "  ",
};

/** A table without lines; texts are wrapped to the width of their column, so that nothing is cut. */
export function table(
  columns: readonly TableColumn[],
  rows: readonly (readonly (string | number)[])[],
): readonly string[] {
  const cell = (content: string | number, column: TableColumn | undefined) =>
    wrapText(plainText(String(content)), column?.width ?? REPORT_COLUMNS).join("\n");
  const drawn = new Table({
    chars: LINES_OF_TABLE,
    style: { head: [], border: [], "padding-left": 0, "padding-right": 0, compact: true },
    colAligns: columns.map((column) => column.align ?? "left"),
  });
  drawn.push(columns.map((column) => cell(column.heading, column)));
  for (const row of rows) drawn.push(row.map((content, index) => cell(content, columns[index])));
  return drawn
    .toString()
    .split("\n")
    .map((line) => line.trimEnd());
}
