import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { testsOfCorpus } from "./comparing/corpus-tests.js";
import { explainedFiles, NOT_ASKED } from "./comparing/explained.js";
import { MADE_FILES } from "./comparing/made-files.js";
import { ourCells } from "./comparing/our-cells.js";
import { foundBy, READERS, type TextForm } from "./comparing/two-readers.js";
import { corpusExists, corpusFiles } from "./corpus.js";
import { opened } from "./reading.js";

/** Larger ones are left to the slow tests. */
const MOST_BYTES = 60_000;

describe.skipIf(!corpusExists("workbooks"))("small real workbooks, beside two other readers", () => {
  testsOfCorpus(corpusFiles("workbooks").filter(({ bytes }) => bytes < MOST_BYTES));

  it("explains nothing of a file that is not there", () => {
    const known = new Set(corpusFiles("workbooks").map(({ file }) => file));
    expect(explainedFiles().filter((file) => !known.has(file))).toEqual([]);
    expect([...NOT_ASKED].filter((asked) => !known.has(asked.split(" ")[1] ?? ""))).toEqual([]);
  });
});

const SURVEYS: readonly { readonly path: string; readonly form?: TextForm }[] = [
  { path: "samples/survey.xlsx" },
  { path: "tests/data/surveys/quillmoor.xlsx" },
  { path: "tests/data/surveys/dunkelforst.xlsx" },
  { path: "tests/data/surveys/tallgrass.csv", form: { encoding: "utf-8", delimiter: "," } },
];

describe.each(READERS)("%s", (reader) => {
  it.each(SURVEYS)("reads the cells of $path as we do", async ({ path, form }) => {
    const bytes = new Uint8Array(readFileSync(new URL(`../../${path}`, import.meta.url)));
    const ours = ourCells(await opened(bytes));
    expect([...ours.values()].reduce((sum, cells) => sum + cells.size, 0)).toBeGreaterThan(100);
    expect(await foundBy(reader, bytes, ours, form)).toEqual([]);
  });

  it.each(MADE_FILES)("and $what", async ({ bytes, ours, differs }) => {
    const cells = ourCells(await opened(bytes));
    expect([...cells.values()].flatMap((sheet) => [...sheet])).toEqual(ours);
    expect(await foundBy(reader, bytes, cells)).toEqual(differs[reader] ?? []);
  });

  it("agrees on whatever a workbook may hold", async () => {
    const value = fc.oneof(
      fc.string({ unit: fc.constantFrom("a", "Ω", " ", "&", "<", '"', "\n", "7", "_", "🔧"), maxLength: 12 }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer(),
      fc.boolean(),
      fc.integer({ min: 100, max: 20_000 }).map((days) => new Date(days * 86_400_000)),
    );
    const table = fc.array(fc.array(fc.option(value), { maxLength: 5 }), { minLength: 1, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(table, async (rows) => {
        const book = new ExcelJS.Workbook();
        book.addWorksheet("Survey").addRows(rows);
        const bytes = new Uint8Array(await book.xlsx.writeBuffer());
        expect(await foundBy(reader, bytes, ourCells(await opened(bytes)))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
