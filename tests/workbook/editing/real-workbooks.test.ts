import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../../src/disk/index.js";
import { readWorkbook } from "../../../src/workbook/index.js";
import { corpusBytes, corpusExists, corpusFiles } from "../corpus.js";
import { cellsOfExcelJs, cellsOfOurs, cellsOfSheetJs, changedCells } from "./other-readers.js";
import { changedParts, edited, read, smallEdit, textOf } from "./small-edit.js";

/** Workbooks that open and are not edited, with the reason. */
const REFUSED: Readonly<Record<string, string>> = {
  "poi-poc-shared-strings.xlsx": "rows-out-of-order",
  "phpss-utf16be.bom.xlsx": "not-utf-8",
  "openpyxl-bigfoot.xlsx": "too-many-sheets",
  "poi-CVLKRA-KYC_Download_File_Structure_V3.1.xlsx": "structure-protected",
  "messytables-large.xlsx": "sheet-protected",
  "made-no-content-types.xlsx": "missing-part",
};
/** exceljs takes many seconds for larger files, and hangs on thousands of merged ranges. */
const TOO_MUCH_FOR_EXCELJS = 150_000;
const HANGS_EXCELJS = "poi-57893-many-merges.xlsx";
/** The largest files show nothing that others do not, and take a quarter of a minute each. */
const LARGE = 600_000;
const CHANGED =
  /^(?:\[content_types\]\.xml|.*workbook\d*\.xml(?:\.rels)?|.*styles\d*\.xml|.*sheets?[^/\\]*(?:[/\\][^/\\]*)?\.xml)$/i;

const files = corpusFiles("workbooks").filter(({ file }) => file.endsWith(".xlsx"));

describe.skipIf(!corpusExists("workbooks"))("a column, a mark and a sheet added to real workbooks", () => {
  it.each(files)("$file", async ({ file }) => {
    const before = corpusBytes("workbooks", file);
    const reading = await readWorkbook(before, nodeInflating);
    if (!reading.ok) return;
    const { workbook } = reading;
    const after = await edited(before, smallEdit(workbook));
    if (typeof after === "string" || REFUSED[file]) {
      expect(after).toBe(REFUSED[file]);
      return;
    }
    const changed = changedParts(before, after);
    expect(changed.filter((name) => !CHANGED.test(name))).toEqual([]);
    expect(changed.length).toBeLessThanOrEqual(7);

    const ours = await read(after);
    const cells = cellsOfOurs(ours);
    expect(changedCells(cellsOfOurs(workbook), cells)).toEqual([]);
    const [sheet] = workbook.sheets;
    const added = [...(sheet?.rows ?? [])].map(({ row }) => textOf(row));
    const values = [...cells].filter(([place]) => place.startsWith(`${sheet?.name}!`)).map(([, value]) => value);
    expect(values.filter((value) => added.includes(value)).length).toBe(added.length);
    expect(ours.sheets.map(({ name }) => name)).toEqual([
      ...workbook.sheets.map(({ name }) => name),
      expect.stringContaining("Marked cells"),
    ]);
    expect(ours.sheets.map(({ merges }) => merges)).toEqual([...workbook.sheets.map(({ merges }) => merges), []]);

    const theirs = before.length < LARGE ? cellsOfSheetJs(before) : null;
    if (theirs) expect(changedCells(theirs, cellsOfSheetJs(after) ?? new Map())).toEqual([]);
    const third = file !== HANGS_EXCELJS && before.length < TOO_MUCH_FOR_EXCELJS ? await cellsOfExcelJs(before) : null;
    if (third) expect(changedCells(third, (await cellsOfExcelJs(after)) ?? new Map())).toEqual([]);
  });
});
