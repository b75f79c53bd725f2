import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { leastWork } from "../tools/work.js";
import { corpusBytes, corpusExists, corpusFiles, filledCells } from "./corpus.js";
import { isSentence } from "./reading.js";

/** Cells that hold blanks only: counted by the index, empty to a survey. */
const BLANK_CELLS: Readonly<Record<string, number>> = {
  "calamine-minimal_package.xlsx": 1_904,
  "readxl-los-angeles-arrests-xlsx.xlsx": 1_904,
  "opsd-21915_2019.xlsx": 2,
  "made-zip64-local-headers.xlsx": 2,
  "gppd-2___Plant_Y2017.xlsx": 20_295,
};

/** The line that names the separator is no cell. */
const NOT_CELLS: Readonly<Record<string, number>> = { ...BLANK_CELLS, "phpss-sep.csv": 1 };

/** The references read it, we ask first: the encoding is not known from the file. */
const ASKED_FIRST = new Set(["cp1252", "mac-roman", "utf-16-le"]);

const workbooks = corpusFiles("workbooks");

describe.skipIf(!corpusExists("workbooks"))("real workbooks of many producers", () => {
  it.each(workbooks.filter(({ file }) => file.endsWith(".xlsx")))("$file", async (entry) => {
    const reading = await readWorkbook(corpusBytes("workbooks", entry.file), nodeInflating);
    const wanted = entry.prefer ?? entry.expect;
    if (wanted !== "either") expect(reading.ok).toBe(wanted === "opens");
    if (!reading.ok) expect(reading.error.text).toSatisfy(isSentence);
    else if (entry.non_empty_cells !== undefined) {
      expect(filledCells(reading.workbook)).toBe(entry.non_empty_cells - (NOT_CELLS[entry.file] ?? 0));
    }
  });

  it.each(workbooks.filter(({ csv }) => csv !== undefined))("$file ($csv.encoding)", async ({ file, csv }) => {
    const bytes = corpusBytes("workbooks", file);
    const reading = await readWorkbook(bytes, nodeInflating);
    const encoding = csv?.encoding ?? "";
    if (reading.ok) {
      expect(ASKED_FIRST.has(encoding) || encoding === "utf-32").toBe(false);
      expect(filledCells(reading.workbook)).toBe((csv?.non_empty ?? 0) - (NOT_CELLS[file] ?? 0));
      return;
    }
    expect(reading.error.text).toSatisfy(isSentence);
    expect(["not-utf-8", "utf-16-unmarked", "utf-32"]).toContain(reading.error.code);
    if (!ASKED_FIRST.has(encoding)) return;
    const told = await readWorkbook(bytes, nodeInflating, { encoding });
    expect(told.ok && filledCells(told.workbook)).toBe(csv?.non_empty);
  });
});

/** Opens in the reader; what is wrong with it is said by those who look for a survey in it. */
const LEFT_TO_THE_IMPORTER = new Set(["no-rows-at-all.xlsx"]);

describe.skipIf(!corpusExists("hostile"))("files made to hurt an importer", () => {
  it.each(corpusFiles("hostile"))("$file", async (entry) => {
    const bytes = corpusBytes("hostile", entry.file);
    const most = entry.max_seconds ?? 3;
    const { result: reading, seconds } = await leastWork(most, () => readWorkbook(bytes, nodeInflating));
    expect(seconds).toBeLessThan(most);
    expect(Object.keys(Object.prototype)).toEqual([]);
    if (!reading.ok) expect(reading.error.text).toSatisfy(isSentence);
    if (!reading.ok) expect(reading.error.text.length).toBeLessThan(400);
    if (entry.either_outcome_ok || LEFT_TO_THE_IMPORTER.has(entry.file)) return;
    expect(reading.ok).toBe(entry.expect === "opens-safely");
  });

  it("reads the same three rows from every harmless disguise of the good survey", async () => {
    for (const file of [
      "control-good-survey",
      "entry-path-traversal",
      "macro-part",
      "relationship-external",
      "styles-60k",
      "merged-whole-sheet",
    ]) {
      const reading = await readWorkbook(corpusBytes("hostile", `${file}.xlsx`), nodeInflating);
      expect(reading.ok && reading.workbook.sheets[0]?.rows.length, file).toBe(4);
    }
  });

  it("marks every over-long number of the bait and nothing else", async () => {
    const reading = await readWorkbook(corpusBytes("hostile", "cell-number-bait.xlsx"), nodeInflating);
    expect(reading.ok && reading.workbook.sheets[0]?.rows.length).toBe(10);
  });
});
