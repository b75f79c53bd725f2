import { CsvError, type Options, parse } from "csv-parse/browser/esm/sync";
import { cellName, columnLetters } from "../base/index.js";
import type { RawRow, RawWorkbook, ReadingLimits } from "./cells.js";
import { withoutBlankEnd } from "./csv-end.js";
import { findSeparator } from "./csv-separator.js";
import { decodeText } from "./csv-text.js";
import { KeptValues, NOTHING } from "./kept-values.js";
import { orAllowMore } from "./limits.js";
import { PackedCells, PackedRow } from "./packed-cells.js";
import { CellCount } from "./sheet-rows.js";
import { grouped, quoted, refuse } from "./unreadable.js";

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
/** A record over more lines than this is read, but more likely lost a closing quote; it is worth a remark. */
const USUAL_LINES = 20;
/** Records of that kind that are remarked on one by one; the rest is counted. */
const REMARKS_EACH = 10;

const SEPARATOR_NAMES: ReadonlyMap<string, string> = new Map([
  ["tab", "\t"],
  ["\\t", "\t"],
  ["comma", ","],
  ["semicolon", ";"],
  ["pipe", "|"],
]);

/** What the user said about a text file. */
export interface CsvChoices {
  readonly encoding?: string | undefined;
  readonly separator?: string | undefined;
}

/**
 * Reads a text file with separators. Every value stays the text that was typed: what looks like a date or a number
 * is decided where the meaning of the column is known.
 *
 * @throws Unreadable with the reason in words
 */
export function readCsv(bytes: Uint8Array, limits: ReadingLimits, choices: CsvChoices): RawWorkbook {
  const { text, encoding, byMark } = decodeText(bytes, choices.encoding);
  const found = findSeparator(text);
  const asked = choices.separator === undefined ? undefined : knownSeparator(choices.separator);
  const separator = asked ?? found.separator;
  const remarks = [`read as text in ${encoding}, separated by ${separatorName(separator)}`];
  if (byMark && choices.encoding !== undefined) {
    remarks.push(`the byte order mark of the file says ${encoding}, so the encoding asked for was not used`);
  }
  if (asked === undefined && found.by === "none found") {
    remarks.push("no separator was found, so every line is one cell; name it with --separator if there is one");
  }
  const table = withoutBlankEnd(text.slice(found.from), separator);
  if (table.hadEndMark) remarks.push("a mark of the end of the file (Ctrl-Z) behind the last line was left out");
  const rows = readRecords(table.text, found.from > 0 ? 2 : 1, separator, limits, remarks);
  if (rows.length === 0) {
    refuse("empty-file", "the file holds nothing but blank lines; save or download the survey again");
  }
  const sheet = { name: null, visibility: "visible", rows, merges: [], hiddenColumns: new Set<number>() } as const;
  return { kind: "csv", sheets: [sheet], dateSystem: 1900, remarks };
}

function readRecords(
  text: string,
  firstLine: number,
  separator: string,
  limits: ReadingLimits,
  remarks: string[],
): readonly RawRow[] {
  const utf8 = new TextEncoder().encode(text);
  const count = new CellCount(limits.cells);
  const values = new KeptValues(limits.cellCharacters);
  const cells = new PackedCells(values);
  const rows: RawRow[] = [];
  let line = firstLine;
  let readBytes = 0;
  let longRecords = 0;
  const options: Options = {
    bom: false,
    delimiter: separator,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_column_count: true,
    // A quote inside a field is inches more often than a mistake.
    relax_quotes: true,
    on_record(record: readonly string[], { bytes }) {
      const start = line;
      line += lineEnds(utf8, readBytes, bytes);
      readBytes = bytes;
      if (line - start > USUAL_LINES) longRecords += 1;
      if (line - start > USUAL_LINES && longRecords <= REMARKS_EACH) {
        remarks.push(
          `the record in line ${grouped(start)} goes on for ${grouped(line - start)} lines; look for a missing quote`,
        );
      }
      const before = cells.length;
      addFilled(record, start, limits, cells, values);
      for (let i = before; i < cells.length; i++) count.add();
      if (cells.length > before) rows.push(new PackedRow(start, false, cells, before, cells.length));
      return null;
    },
  };
  try {
    parse(utf8, options);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    if (error.code === "CSV_QUOTE_NOT_CLOSED") {
      refuse(
        "unclosed-quote",
        `a quote that opens in the record of line ${grouped(line)} is never closed; close it or take it out and save the file again`,
      );
    }
    refuse("damaged-csv", `the text cannot be read from line ${grouped(line)} on; save it as CSV again`);
  }
  if (longRecords > REMARKS_EACH) {
    remarks.push(`${grouped(longRecords - REMARKS_EACH)} more records go on for more than ${USUAL_LINES} lines`);
  }
  return rows;
}

function addFilled(
  record: readonly string[],
  line: number,
  limits: ReadingLimits,
  cells: PackedCells,
  values: KeptValues,
): void {
  if (line > limits.rows) {
    refuse(
      "too-many-rows",
      `the file has a value in line ${grouped(line)}, beyond the limit of ${grouped(limits.rows)} rows; split it${orAllowMore("rows")}`,
    );
  }
  if (record.length > limits.columns) {
    refuse(
      "too-many-columns",
      `line ${grouped(line)} has ${grouped(record.length)} columns (to ${cellName(line, record.length)}), beyond the limit of ${grouped(limits.columns)} (${columnLetters(limits.columns)}); delete what lies beyond the survey and save the file again${orAllowMore("columns")}`,
    );
  }
  for (const [i, text] of record.entries()) {
    const reference = values.text(text);
    if (reference !== NOTHING) cells.pushReference(i + 1, reference);
  }
}

/** Line ends in a stretch of the text; a carriage return with its line feed is one. */
function lineEnds(utf8: Uint8Array, from: number, to: number): number {
  let ends = 0;
  for (let i = from; i < to; i++) {
    const byte = utf8[i];
    if (byte === LINE_FEED || (byte === CARRIAGE_RETURN && utf8[i + 1] !== LINE_FEED)) ends += 1;
  }
  return ends;
}

function knownSeparator(asked: string): string {
  const separator = SEPARATOR_NAMES.get(asked.toLowerCase()) ?? asked;
  if (separator.length === 1 && !/["\r\n]/.test(separator)) return separator;
  return refuse(
    "unknown-separator",
    `${quoted(asked)} cannot separate columns; use one character or one of comma, semicolon, tab, pipe`,
  );
}

function separatorName(separator: string): string {
  for (const [name, character] of SEPARATOR_NAMES) if (character === separator && name.length > 2) return name;
  return quoted(separator);
}
