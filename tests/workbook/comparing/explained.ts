import type { PlainValue } from "./plain-cells.js";
import type { Found, ReaderName } from "./two-readers.js";

/** A reader that does not open what it should, file by file for one reason. */
interface Refusals {
  readonly reader: ReaderName;
  /** Why the file is to be opened all the same. */
  readonly why: string;
  readonly files: readonly string[];
}

/** Cells in which a reader differs from ours, file by file for one reason. */
interface Differences {
  readonly reader: ReaderName;
  readonly what: "loses" | "adds" | "reads otherwise";
  /** Why ours is right. */
  readonly why: string;
  /** File, number of cells, the first of them, what we read there and what they do. */
  readonly cells: readonly (readonly [string, number, string, PlainValue | null, PlainValue | null])[];
}

const UNUSABLE = { unusable: true } as const;

/** Files that are not given to a reader, because it would not come to an end in minutes. */
export const NOT_ASKED: ReadonlySet<string> = new Set(["exceljs poi-57893-many-merges.xlsx"]);

const REFUSALS: readonly Refusals[] = [
  {
    reader: "exceljs",
    why: "it looks for parts by fixed names; the package says by its relationships where they are",
    files: [
      "calamine-minimal_package.xlsx",
      "phpss-Zip-Windows-Directory-Separator.xlsx",
      "phpss-rootZipFiles.xlsx",
      "poi-49609.xlsx",
      "readxl-los-angeles-arrests-xlsx.xlsx",
    ],
  },
  {
    reader: "exceljs",
    why: "it knows elements by their written names; a prefix that stands for the same namespace changes nothing",
    files: [
      "calamine-richtext-namespaced.xlsx",
      "openpyxl-bigfoot.xlsx",
      "openspout-sheet_with_prefixed_xml_files.xlsx",
      "phpss-issue.1482.xlsx",
      "phpss-namespacenonstd.xlsx",
      "poi-59021.xlsx",
      "poi-59746_NoRowNums.xlsx",
      "readxl-Ekaterinburg_IP_9.xlsx",
    ],
  },
  {
    reader: "exceljs",
    why: "it needs every row and cell to name its place; the format lets both be counted from the one before",
    files: ["poi-56278.xlsx", "roo-implicit_coordinates.xlsx", "tidyxl-jmp.xlsx"],
  },
  {
    reader: "exceljs",
    why: "it fails on a part that holds no cells (drawing of notes, table), and the cells are sound",
    files: ["calamine-table_with_absolute_paths.xlsx", "poi-BrNotClosed.xlsx", "poi-xxe_in_schema.xlsx"],
  },
  { reader: "exceljs", why: "it takes every part for UTF-8; XML may be UTF-16", files: ["phpss-utf16be.bom.xlsx"] },
  { reader: "sheetjs", why: "it takes every part for UTF-8; XML may be UTF-16", files: ["phpss-utf16be.bom.xlsx"] },
  {
    reader: "sheetjs",
    why: "it needs the list of content types, which says nothing that the relationships do not say",
    files: ["made-no-content-types.xlsx"],
  },
];

const DIFFERENCES: readonly Differences[] = [
  {
    reader: "exceljs",
    what: "reads otherwise",
    why: "it takes the year of a day written in ISO form (2021-01-01) for the number 2021",
    cells: [
      ["calamine-date_iso.xlsx", 3, "Sheet!A1", 44_197, 2021],
      ["openspout-sheet_with_strict_ooxml.xlsx", 2, "ae1!I2", 43_921, 2020],
      ["poi-SimpleStrict.xlsx", 1, "Sheet Number 2!A4", 32_874, 1990],
      ["sjs-xlsx-stream-d-date-cell.xlsx", 2, "Sheet1!B5", 41_684.352_647_743_06, 2014],
    ],
  },
  {
    reader: "exceljs",
    what: "reads otherwise",
    why: "it misses the part of shared texts for its capital letters and gives the number of each text",
    cells: [["openspout-one_sheet_with_capital_shared_strings_filename.xlsx", 25, "Sheet1!A1", "s1--A1", 0]],
  },
  {
    reader: "exceljs",
    what: "reads otherwise",
    why: "it undoes escapes of characters in capital letters only",
    cells: [["poi-60289.xlsx", 1, "TABLE!B2", "Rich Text\nTest", "Rich Text_x000d_\nTest"]],
  },
  {
    reader: "exceljs",
    what: "reads otherwise",
    why: "it takes the text that an array formula gave for a number",
    cells: [["tidyxl-examples-gnumeric.xlsx", 2, "Sheet1!A17", "Hello, World!", 1]],
  },
  {
    reader: "exceljs",
    what: "loses",
    why: "it drops text that is written as a CDATA section",
    cells: [["calamine-inlineStr_cdata.xlsx", 3, "Sheet1!A1", "Hello CDATA", null]],
  },
  {
    reader: "exceljs",
    what: "loses",
    why: "it shows the value of a merge for every cell under it, whatever the file keeps there; we deliver what is kept",
    cells: [["phpss-HiddenMergeCellsTest.xlsx", 2, "Sheet1!B2", 4, null]],
  },
  {
    reader: "exceljs",
    what: "loses",
    why: "it knows elements by their written names, or sheets by numbered part names, and skips what it does not know",
    cells: [
      ["readxl-nonstandard-xml-ns-prefix.xlsx", 6, "Sheet1!A1", "a", null],
      ["roo-numbers-export.xlsx", 1, "Sheet 1!A1", "Sheet 1", null],
    ],
  },
  {
    reader: "sheetjs",
    what: "reads otherwise",
    why: "it drops the formatted runs behind plain text in one cell",
    cells: [
      ["calamine-minimal_package.xlsx", 1, "Sheet1!A1", "ARREST BOOKINGS for 01/30/17", "ARREST BOOKINGS for "],
      ["readxl-los-angeles-arrests-xlsx.xlsx", 1, "Sheet1!A1", "ARREST BOOKINGS for 01/30/17", "ARREST BOOKINGS for "],
    ],
  },
  {
    reader: "exceljs",
    what: "reads otherwise",
    why: "the format allows a cell 32,767 characters; we mark the cell and repeat none of it",
    cells: [["poi-poc-shared-strings.xlsx", 11_997, "Tabelle1!A1", UNUSABLE, "ffff…"]],
  },
  {
    reader: "sheetjs",
    what: "reads otherwise",
    why: "the format allows a cell 32,767 characters; we mark the cell and repeat none of it",
    cells: [["poi-poc-shared-strings.xlsx", 11_997, "Tabelle1!A1", UNUSABLE, "ffff…"]],
  },
  {
    reader: "exceljs",
    what: "reads otherwise",
    why: "it takes the line that names the separator for a row",
    cells: [["phpss-sep.csv", 3, "!A1", "A", "sep="]],
  },
  {
    reader: "exceljs",
    what: "loses",
    why: "it takes the line that names the separator for a row",
    cells: [["phpss-sep.csv", 1, "!B1", "1", null]],
  },
  {
    reader: "exceljs",
    what: "adds",
    why: "it takes the line that names the separator for a row",
    cells: [["phpss-sep.csv", 2, "!A3", null, "2"]],
  },
];

/** Everything that a reader is known to do otherwise with this file. */
export function explained(reader: ReaderName, file: string): readonly Found[] {
  const refused = REFUSALS.filter((one) => one.reader === reader && one.files.includes(file));
  const differing = DIFFERENCES.filter((one) => one.reader === reader).flatMap(({ what, cells }) =>
    cells.filter(([name]) => name === file).map(([, count, at, ours, theirs]) => ({ what, count, at, ours, theirs })),
  );
  return [...refused.map(() => ({ what: "refuses" }) as const), ...differing];
}

/** Files and readers that the table speaks of, to find entries that explain nothing any more. */
export function explainedFiles(): readonly string[] {
  const differing = DIFFERENCES.flatMap(({ cells }) => cells.map(([file]) => file));
  return [...new Set([...REFUSALS.flatMap(({ files }) => files), ...differing])].sort();
}
