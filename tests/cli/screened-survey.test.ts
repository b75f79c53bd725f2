import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { RawSheet, RawWorkbook } from "../../src/workbook/index.js";
import { richWorkbook } from "../tools/rich-workbook.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";
import { cellsOfExcelJs, cellsOfOurs, cellsOfSheetJs, changedCells } from "../workbook/editing/other-readers.js";
import { changedParts, read } from "../workbook/editing/small-edit.js";
import { valuesOf } from "../workbook/reading.js";

let folder = "";
const here = (...names: readonly string[]): string => join(folder, ...names);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-screened-"));
  for (const name of ["quillmoor.xlsx", "tallgrass.csv"]) cpSync(projectPath(`tests/data/surveys/${name}`), here(name));
  writeFileSync(here("rich.xlsx"), richWorkbook());
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Screens surveys; the report with its lines joined, so that a sentence can be looked for. */
async function screened(...args: readonly string[]): Promise<string> {
  const { code, out, err } = await runCommand("screen", ...args, "--as-of", "2026-11-25", "--site", "mill");
  expect([code, err]).toEqual([0, ""]);
  return out.replace(/\s+/g, " ");
}

async function opened(...names: readonly string[]): Promise<RawWorkbook> {
  return read(readFileSync(here(...names)));
}

function sheetIn(workbook: RawWorkbook, name: string): RawSheet {
  const sheet = workbook.sheets.find((one) => one.name === name);
  if (!sheet) throw new Error(`no sheet "${name}"`);
  return sheet;
}

function textsOf(sheet: RawSheet): string {
  const lines = sheet.rows.map(({ cells }) =>
    cells
      .map(({ value }) => (value.kind === "text" ? value.text : value.kind === "number" ? value.number : value.kind))
      .join("|"),
  );
  return lines.join("\n");
}

describe("a survey with all that a workbook can hold", () => {
  let before = new Uint8Array();
  let after = new Uint8Array();
  const parts = (): Record<string, string> =>
    Object.fromEntries(Object.entries(unzipSync(after)).map(([name, bytes]) => [name, strFromU8(bytes)]));

  beforeAll(async () => {
    before = new Uint8Array(readFileSync(here("rich.xlsx")));
    const report = await screened(here("rich.xlsx"), "--workbook", here("rich.screened.xlsx"));
    expect(report).not.toContain("new workbook");
    after = new Uint8Array(readFileSync(here("rich.screened.xlsx")));
  });

  it("comes back with all of it, byte for byte, in the same order", () => {
    expect(changedParts(before, after)).toEqual([
      "[Content_Types].xml",
      "xl/_rels/workbook.xml.rels",
      "xl/styles.xml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
      ...[3, 4, 5, 6].map((number) => `xl/worksheets/sheet${number}.xml`),
    ]);
    const names = Object.keys(unzipSync(before));
    expect(Object.keys(unzipSync(after)).slice(0, names.length)).toEqual(names);
    const { "xl/worksheets/sheet1.xml": sheet = "", "xl/workbook.xml": book = "" } = parts();
    for (const kept of [
      "<dataValidation ",
      "<cfRule ",
      "<mergeCell ",
      "<drawing ",
      "<legacyDrawing ",
      "<tablePart ",
      "<pane ",
    ]) {
      expect(sheet, kept).toContain(kept);
    }
    expect(book).toContain('<definedName name="Depths">Survey!$G$4:$G$9</definedName>');
    expect(book).toContain('<definedName name="_xlnm.Print_Titles" localSheetId="0">Survey!$3:$3</definedName>');
    expect(book).toContain("<pivotCaches>");
  });

  it("keeps every cell, for three readers", async () => {
    expect(changedCells(cellsOfOurs(await read(before)), cellsOfOurs(await read(after)))).toEqual([]);
    const [theirs, now] = [cellsOfSheetJs(before), cellsOfSheetJs(after)];
    expect(theirs?.size).toBeGreaterThan(50);
    expect(changedCells(theirs ?? new Map(), now ?? new Map())).toEqual([]);
    const [third, then] = [await cellsOfExcelJs(before), await cellsOfExcelJs(after)];
    if (third) expect(changedCells(third, then ?? new Map())).toEqual([]);
  });

  it("has our columns behind the picture, on the row of its headings", async () => {
    const values = valuesOf(sheetIn(await read(after), "Survey"));
    expect(values["3:13"]).toEqual({ kind: "text", text: "verdict" });
    const verdicts = ["▲ warn", "▲ warn", "▲ warn", "■ fail", "▲ warn", "▲ warn"];
    verdicts.forEach((text, i) => {
      expect(values[`${4 + i}:13`]).toEqual({ kind: "text", text });
    });
    expect(values["7:14"]).toEqual({
      kind: "text",
      text: "the shaft runs as slow as 560 r/min, the sensor needs more than 600 r/min",
    });
    expect(values["7:12"]).toBeUndefined();
  });

  it("frames the offending cells in formats of their own, and no other", () => {
    const { "xl/worksheets/sheet1.xml": sheet = "", "xl/styles.xml": styles = "" } = parts();
    const formats = [...styles.slice(styles.indexOf("<cellXfs")).matchAll(/<xf [^>]*borderId="(\d+)"/g)].map((one) =>
      Number(one[1]),
    );
    const borders = [...styles.matchAll(/<border>.*?<\/border>/g)].map(([border]) => border);
    const lineOf = (cell: string) => {
      const tag = new RegExp(`<c [^>]*r="${cell}"[^>]*>`).exec(sheet)?.[0] ?? "";
      const style = / s="(\d+)"/.exec(tag)?.[1] ?? "0";
      return /<left style="(\w+)"/.exec(borders[formats[Number(style)] ?? 0] ?? "")?.[1] ?? null;
    };
    expect(["F7", "F8", "G4", "F4", "A4"].map(lineOf)).toEqual(["thick", "dotted", "dotted", null, null]);
  });

  it("says on four sheets of ours what was screened, under names that are free", async () => {
    const workbook = await read(after);
    const names = ["Survey", "Summary", "Summary (2)", "Rules applied", "Remarks", "Marked cells"];
    expect(workbook.sheets.map(({ name }) => name)).toEqual(names);
    expect(textsOf(sheetIn(workbook, "Summary (2)"))).toContain("A verdict is a screening, not a permission.");
    expect(textsOf(sheetIn(workbook, "Marked cells"))).toContain(
      "Survey|F7|■ fail|the shaft runs as slow as 560 r/min",
    );
  });

  it("writes no formula and gives the same bytes again", async () => {
    for (const [name, xml] of Object.entries(parts())) {
      if (name.startsWith("xl/worksheets/")) expect(xml, name).not.toMatch(/<f[ >/]/);
    }
    await screened(here("rich.xlsx"), "--workbook", here("again.xlsx"));
    expect(Buffer.compare(readFileSync(here("again.xlsx")), after)).toBe(0);
    expect(
      createHash("sha256")
        .update(readFileSync(here("rich.xlsx")))
        .digest("hex"),
    ).toBe(createHash("sha256").update(before).digest("hex"));
  });
});

/** The rich survey with a part changed. */
function changed(name: string, part: string, from: string, to: string): string {
  const parts = unzipSync(richWorkbook());
  parts[part] = strToU8(strFromU8(parts[part] ?? new Uint8Array()).replace(from, to));
  writeFileSync(here(name), zipSync(parts));
  return here(name);
}

describe("a survey that cannot be edited", () => {
  it.each([
    [
      "protected-sheet.xlsx",
      "xl/worksheets/sheet1.xml",
      "</sheetData>",
      '</sheetData><sheetProtection sheet="1"/>',
      'its sheet "Survey" is protected against changes',
    ],
    [
      "protected-book.xlsx",
      "xl/workbook.xml",
      "<bookViews>",
      '<workbookProtection lockStructure="1"/><bookViews>',
      "its structure is protected, so that no sheet can be added",
    ],
  ])("%s is written anew, and the reason is said twice", async (name, part, from, to, reason) => {
    const file = changed(name, part, from, to);
    expect(await screened(file, "--workbook", here("anew.xlsx"), "--overwrite")).toContain(
      `the survey itself could not be edited: ${reason}`,
    );
    const workbook = await opened("anew.xlsx");
    expect(textsOf(sheetIn(workbook, "Remarks"))).toContain(reason);
    expect(workbook.sheets.map(({ name: sheet }) => sheet)).toEqual([
      "Survey",
      "Summary",
      "Summary (2)",
      "Rules applied",
      "Remarks",
    ]);
  });

  it("for its macros is named as such a file, or written anew", async () => {
    const main = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml";
    const macros = "application/vnd.ms-excel.sheet.macroEnabled.main+xml";
    const file = changed("macros.xlsm", "[Content_Types].xml", main, macros);
    mkdirSync(here("m"));
    expect(await screened(file, "--out", here("m"))).not.toContain("new workbook");
    expect(readdirSync(here("m"))).toContain("macros.screened.xlsm");
    expect(await screened(file, "--workbook", here("m", "x.xlsx"))).toContain("needs a file name that ends in .xlsm");
    expect((await opened("m", "x.xlsx")).sheets).toHaveLength(5);
    expect(await screened(here("quillmoor.xlsx"), "--workbook", here("m", "y.xlsm"))).toContain(
      "needs a file name that ends in .xlsx",
    );
    const types = strFromU8(unzipSync(readFileSync(here("m", "y.xlsm")))["[Content_Types].xml"] ?? new Uint8Array());
    expect([types.includes(macros), types.includes(main)]).toEqual([true, false]);
  });
});

describe("several surveys", () => {
  it("get a workbook each in a folder, named after them", async () => {
    mkdirSync(here("other"));
    cpSync(here("rich.xlsx"), here("other", "quillmoor.xlsx"));
    const files = [here("quillmoor.xlsx"), here("tallgrass.csv"), here("other", "quillmoor.xlsx")];
    const report = await screened(...files, "--out", here("out"));
    expect(readdirSync(here("out")).filter((name) => name.endsWith(".xlsx"))).toEqual([
      "quillmoor-2.screened.xlsx",
      "quillmoor.screened.xlsx",
      "tallgrass.screened.xlsx",
    ]);
    expect(report).toContain(
      "tallgrass.screened.xlsx a new workbook, without what is not cells: the survey itself could not be edited: it is a table of text",
    );
    expect(
      changedParts(readFileSync(files[2] ?? ""), readFileSync(here("out", "quillmoor-2.screened.xlsx"))),
    ).toHaveLength(9);
    const summary = textsOf(sheetIn(await opened("out", "quillmoor-2.screened.xlsx"), "Summary (2)"));
    expect(summary).toMatch(/verdict\|points of this survey\n■ fail\|1\n▲ warn\|5\n● pass\|0\n/);
    const remarks = textsOf(sheetIn(await opened("out", "tallgrass.screened.xlsx"), "Remarks"));
    expect(remarks).not.toContain("quillmoor");
  });

  it("stand in one new workbook where one file is named", async () => {
    const report = await screened(here("quillmoor.xlsx"), here("tallgrass.csv"), "--workbook", here("all.xlsx"));
    expect(report).toContain("it holds several surveys; give them one by one, or a folder with --out");
    expect((await opened("all.xlsx")).sheets.map(({ name }) => name)).toContain("tallgrass");
  });
});

describe("the list of marked cells", () => {
  it("makes every row as high as its reasons need", async () => {
    const out = here("marked.xlsx");
    await screened(projectPath("samples/survey.xlsx"), "--set", "full", "--workbook", out);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(new Uint8Array(readFileSync(out)).buffer);
    const heights: (readonly [lines: number, points: number])[] = [];
    book.getWorksheet("Marked cells")?.eachRow((row) => {
      heights.push([String(row.getCell(4).value).split("\n").length, row.height ?? 15]);
    });
    const several = heights.filter(([lines]) => lines > 1);
    expect(several.length).toBeGreaterThan(3);
    for (const [lines, points] of several) expect(points).toBeGreaterThanOrEqual(12 * lines);
  });
});
