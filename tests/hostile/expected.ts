import { existsSync, readFileSync } from "node:fs";
import { projectPath } from "../tools/shipped.js";

/** A file of the collection, what it is to do, and what it may cost. */
export interface HostileFile {
  readonly file: string;
  readonly expect: "clear-error" | "opens-safely";
  readonly either_outcome_ok: boolean;
  readonly max_seconds: number;
  readonly max_rss_mb: number;
}

/** Where the collection lies; tests that need it are left out where it is not. */
export const HOSTILE = projectPath("../shared/hostile");

/** Whether a file is one that a survey could be. */
export const isSurvey = (file: string): boolean => /\.(?:xlsx|csv)$/.test(file);

/** The spreadsheet files of the collection; empty where it is not there. */
export const HOSTILE_FILES: readonly HostileFile[] = existsSync(`${HOSTILE}/index.json`)
  ? (JSON.parse(readFileSync(`${HOSTILE}/index.json`, "utf8")) as HostileFile[]).filter(({ file }) => isSurvey(file))
  : [];

/** What a refusal must say, by file. */
export const SAYS: Readonly<Record<string, RegExp>> = {
  "bomb-sheet-300mb.xlsx": /limit/,
  "declared-small-inflates-120mb.xlsx": /more than the 400 bytes/,
  "entities-nested-in-sheet.xlsx": /document type/,
  "entities-quadratic.xlsx": /document type/,
  "entity-external-file.xlsx": /document type/,
  "many-entries-6000.xlsx": /6,006 parts/,
  "overlapping-entries.xlsx": /shares its bytes/,
  "row-16384-columns.xlsx": /limit of 1,024 columns/,
  "many-sheets-1200.xlsx": /1,024 sheets/,
  "no-rows-at-all.xlsx": /no heading row/,
  "cell-index-out-of-range.xlsx": /shared text 999999/,
  "truncated-at-10.xlsx": /incomplete/,
  "truncated-at-120.xlsx": /incomplete/,
  "truncated-at-1150.xlsx": /incomplete/,
  "truncated-at-2279.xlsx": /incomplete/,
  "old-binary-workbook.xlsx": /old binary.*password.*save it as \.xlsx/,
  "duplicate-entry-names.xlsx": /twice/,
  "encrypted-flag.xlsx": /encrypted/,
  "sheet-not-wellformed.xlsx": /sheet1\.xml.*damaged/,
  "sheet-deep-nesting.xlsx": /levels deep/,
  "csv-broken-utf8.csv": /line 2, column 9/,
  "csv-latin1.csv": /encoding/,
  "csv-unclosed-quote.csv": /line 2/,
  "csv-300k-commas.csv": /limit of 1,024/,
  "csv-nul-bytes.csv": /NUL/,
};

/** Points that a file which opens must give. */
export const ROWS: Readonly<Record<string, number>> = {
  "control-good-survey.xlsx": 3,
  "dimension-1e6-one-cell.xlsx": 0,
  "only-heading-row.xlsx": 0,
  "merged-whole-sheet.xlsx": 3,
  "heading-proto.xlsx": 3,
  "heading-duplicate.xlsx": 3,
  "heading-synonym-clash.xlsx": 3,
  "heading-30k-chars.xlsx": 3,
  "heading-invisible.xlsx": 3,
  "formula-like-text.xlsx": 23,
  "formula-real-cells.xlsx": 2,
  "cell-number-bait.xlsx": 9,
  "entry-path-traversal.xlsx": 3,
  "relationship-external.xlsx": 3,
  "macro-part.xlsx": 3,
  "styles-60k.xlsx": 3,
  "csv-utf16le-bom.csv": 2,
  "csv-utf8-bom.csv": 2,
  "csv-one-line-1mb.csv": 1,
  "csv-ragged.csv": 3,
};
