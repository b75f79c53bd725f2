import Table from "cli-table3";
import { showText } from "../../base/index.js";

/** No line of the report is wider. */
export const REPORT_COLUMNS = 100;

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

/** Columns that a text takes on a terminal; ideographs take two. */
export function displayWidth(text: string): number {
  let width = 0;
  for (const character of text) width += WIDE.test(character) ? 2 : 1;
  return width;
}

/** Text that cannot steer a terminal, whatever was in the survey; long texts stay whole. */
export function plainText(text: string): string {
  return showText(text, Math.max(80, text.length * 10));
}

/** Lines of at most `width` columns, broken at blanks; a longer word is broken where the line ends. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").flatMap((one) => broken(one, width))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && displayWidth(longer) > width) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return [...lines, line];
}

function broken(word: string, width: number): readonly string[] {
  if (displayWidth(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = "";
  for (const character of word) {
    if (displayWidth(piece + character) > width) {
      pieces.push(piece);
      piece = "";
    }
    piece += character;
  }
  return [...pieces, piece];
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
