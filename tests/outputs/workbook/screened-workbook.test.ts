import exceljs from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { screenedWorkbook } from "../../../src/outputs/index.js";
import type { CellValue } from "../../../src/workbook/index.js";
import { finding, point } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";
import { number, rowOf, SURVEYS, screenedInput, sheetOf, text, workbookOf } from "./fake-survey.js";
import { countedInput, largeInput } from "./large-survey.js";

const OUR_HEADINGS = [
  "verdict",
  "leading reason",
  "what to do",
  "missing facts",
  "other findings",
  "note",
  "another method",
  "methods tried",
  "source",
  "point id",
];

async function opened(bytes: Uint8Array): Promise<exceljs.Workbook> {
  const workbook = new exceljs.Workbook();
  await workbook.xlsx.load(bytes.slice().buffer);
  return workbook;
}

function sheetIn(workbook: exceljs.Workbook, name: string): exceljs.Worksheet {
  const sheet = workbook.getWorksheet(name);
  if (!sheet) throw new Error(`no sheet "${name}"`);
  return sheet;
}

function partsOf(bytes: Uint8Array): Map<string, string> {
  return new Map(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));
}

/** What a value must be found as; dates by their serial number in the 1900 system. */
function expected(value: CellValue): unknown {
  switch (value.kind) {
    case "text":
    case "error":
      return value.text.replace("\u0007", "<U+0007>");
    case "number":
      return value.number;
    case "boolean":
      return value.boolean;
    case "date":
      return Date.parse(value.iso) / 86_400_000 + 25_569;
    case "no-result":
      return "[formula without a saved result]";
    case "unusable":
      return `[cannot be shown: ${value.why}]`;
  }
}

function found(value: exceljs.CellValue): unknown {
  return value instanceof Date ? value.getTime() / 86_400_000 + 25_569 : value;
}

describe("screenedWorkbook", () => {
  let bytes: Uint8Array;
  let workbook: exceljs.Workbook;
  let pumps: exceljs.Worksheet;

  beforeAll(async () => {
    bytes = await screenedWorkbook(screenedInput());
    workbook = await opened(bytes);
    pumps = sheetIn(workbook, "Pumps");
  });

  it("has a sheet per survey sheet, then three of its own", () => {
    const names = ["Pumps", "Legend", "second", "Summary", "Rules applied", "Remarks"];
    expect(workbook.worksheets.map((sheet) => sheet.name)).toEqual(names);
    expect(workbook.worksheets.every((sheet) => sheet.state === "visible")).toBe(true);
  });

  it("shows every survey value at its own address", () => {
    const written = SURVEYS.flatMap((survey) => survey.workbook.sheets);
    written.forEach((raw, index) => {
      const sheet = workbook.worksheets[index];
      for (const cell of raw.rows.flatMap((row) => row.cells)) {
        expect(
          found(sheet?.getCell(cell.row, cell.column).value ?? null),
          `${raw.name} ${cell.row}/${cell.column}`,
        ).toEqual(expected(cell.value));
      }
    });
  });

  it("keeps dates, percentages and times readable", () => {
    const formats = ["H7", "I7", "D8", "C8", "G8"].map((cell) => pumps.getCell(cell).numFmt);
    expect(formats).toEqual(["yyyy-mm-dd hh:mm", "0%", "yyyy-mm-dd", "yyyy-mm-dd", "hh:mm:ss"]);
  });

  it("keeps merges, cut to the survey's own columns; one that overlaps is remarked on", () => {
    expect(pumps.getCell("J1").master.address).toBe("A1");
    expect(pumps.getCell("K1").isMerged).toBe(false);
    expect(pumps.getCell("B6").master.address).toBe("B4");
    expect(textOf("Remarks")).toContain('sheet "Pumps": 1 merged range shown as single cells');
  });

  it("writes its columns after an empty one", () => {
    expect(pumps.getCell("K3").value).toBeNull();
    expect(OUR_HEADINGS.map((_, index) => pumps.getCell(3, 12 + index).value)).toEqual(OUR_HEADINGS);
    expect([4, 5, 6, 7].map((row) => pumps.getCell(row, 12).value)).toEqual(["● pass", "■ fail", "▲ warn", "▲ warn"]);
    expect(pumps.getCell("M5").value).toBe("the full thread is 7.5 mm deep, the bolt needs 9 mm");
    expect(pumps.getCell("N5").value).toBe("tap deeper, or choose a bonded pad");
    expect(pumps.getCell("P5").value).toBe("■ fail: the supply is 12 V\n▲ warn: the seat is painted");
    expect(pumps.getCell("Q6").value).toBe("hidden in the survey");
    expect(pumps.getCell("U5").value).toBe("0c9d3a52-7b1e-5f0a-8c44-000000000005");
    expect(sheetIn(workbook, "Legend").getCell("D1").value).toBeNull();
  });

  it("shows rows that were hidden", () => expect(pumps.getRow(6).hidden).toBe(false));

  it("frames offending cells by outcome and says why", () => {
    const [fail, warn, open] = ["E5", "F6", "D7"].map((cell) => pumps.getCell(cell));
    const lines = [fail, warn, open].map((cell) => cell?.border?.left?.style);
    expect(lines).toEqual(["thick", "mediumDashed", "dotted"]);
    expect(commentOn(fail)).toBe(
      [
        "■ fail: The internal thread is deep enough for the bolt",
        "found: depth of full thread 7.5 mm ± 0.2 mm",
        "limit: not below 9 mm (full thread the bolt of the model needs)",
        "source: bolt length, as the trade does it (common practice)",
      ].join("\n"),
    );
    expect(commentOn(sheetIn(workbook, "second").getCell("B8"))).toContain(
      "planned tightening torque (cannot be read)",
    );
    expect(pumps.getCell("E4").border?.left).toBeUndefined();
    expect(commentOn(pumps.getCell("E4"))).toBe("");
  });

  it("tells outcomes apart without colour", () => {
    const styles = partsOf(bytes).get("xl/styles.xml") ?? "";
    const colours = [...styles.matchAll(/<(?:fgColor|color) rgb="FF(..)(..)(..)"/g)];
    const spread = ([, ...parts]: RegExpMatchArray) => {
      const levels = parts.map((part) => Number.parseInt(part, 16));
      return Math.max(...levels) - Math.min(...levels);
    };
    expect(colours.length).toBeGreaterThan(0);
    expect(Math.max(...colours.map(spread))).toBeLessThan(8);
  });

  it("writes no formula, and marks texts that look like one as texts", () => {
    const parts = partsOf(bytes);
    for (const [name, xml] of parts) if (name.startsWith("xl/worksheets/")) expect(xml).not.toMatch(/<f[ >/]/);
    expect(parts.get("xl/styles.xml")).toMatch(/<xf quotePrefix="1" numFmtId="49"/);
    for (const cell of ["G5", "G6", "B7", "C7"]) {
      expect(pumps.getCell(cell).type).toBe(exceljs.ValueType.String);
      expect(pumps.getCell(cell).numFmt).toBe("@");
    }
  });

  it("says on its own sheets what was screened, by which rules, and what was remarked", () => {
    expect(textOf("Summary")).toContain("A verdict is a screening, not a permission.");
    expect(textOf("Summary")).toMatch(/■ fail\|2\n▲ warn\|2\n● pass\|1/);
    expect(textOf("Summary")).toContain("thread-depth|The internal thread is deep enough for the bolt|0|1|0|5");
    for (const caution of HEAD.cautions) expect(textOf("Summary")).toContain(caution);
    expect(textOf("Rules applied")).toMatch(
      /seat-material\|[^|]*\|[^|]*one of: not solid[^|]*\|.*ISO 5348, clause 5\.1.*overdue/,
    );
    expect(textOf("Remarks")).toContain("survey.xlsx|Pumps|E8|Thread|not a number|deep enough|expected a number in mm");
    expect(textOf("Remarks")).toContain("G|Inspector's mood||not used|no known heading");
  });

  it("is laid out for paper and screen", () => {
    expect(pumps.pageSetup).toMatchObject({ orientation: "landscape", fitToWidth: 1, fitToHeight: 0, paperSize: 9 });
    expect(pumps.pageSetup).toMatchObject({ printTitlesRow: "3:3" });
    expect(pumps.views[0]).toMatchObject({ state: "frozen", ySplit: 3 });
  });

  it("gives the same bytes at another time", async () => {
    await new Promise((later) => setTimeout(later, 2_100));
    expect(Buffer.compare(await screenedWorkbook(screenedInput()), bytes)).toBe(0);
    const core = partsOf(bytes).get("docProps/core.xml");
    expect(core).toContain("2026-06-01T00:00:00Z");
  });

  function textOf(sheet: string): string {
    const rows: string[] = [];
    sheetIn(workbook, sheet).eachRow((row) => {
      const cells = Array.isArray(row.values) ? row.values.slice(1) : [];
      rows.push(Array.from(cells, (value) => String(value ?? "")).join("|"));
    });
    return rows.join("\n");
  }
});

function commentOn(cell: exceljs.Cell | undefined): string {
  const note: unknown = cell?.note;
  if (typeof note === "string") return note;
  const texts = (note as { readonly texts?: readonly { readonly text: string }[] } | undefined)?.texts ?? [];
  return texts.map((one) => one.text).join("");
}

describe("screenedWorkbook on odd surveys", () => {
  const [survey] = SURVEYS;
  const only = (sheets: Parameters<typeof workbookOf>[0], parts: Parameters<typeof workbookOf>[1] = {}) =>
    survey ? [{ ...survey, workbook: workbookOf(sheets, parts) }] : [];

  it("keeps dates of the 1904 system on their day, alone and beside another survey", async () => {
    const raw = sheetOf("Pumps", [rowOf(4, [number(43_538, "date")])]);
    const surveys = only([raw], { dateSystem: 1904 });
    const alone = sheetIn(await opened(await screenedWorkbook(screenedInput(surveys))), "Pumps").getCell("A4");
    const both = await screenedWorkbook(screenedInput([...surveys, ...SURVEYS.slice(1)]));
    const beside = sheetIn(await opened(both), "Pumps").getCell("A4");
    expect([alone.value, beside.value]).toEqual([new Date("2023-03-15"), new Date("2023-03-15")]);
  });

  it("finds a name for every sheet", async () => {
    const names = ["Summary", "summary", "a".repeat(40), `${"a".repeat(31)}b`, "x[y]:z", "'quoted'", "History", ""];
    const raw = names.map((name) => sheetOf(name, [rowOf(1, [text(name)])]));
    const { worksheets } = await opened(await screenedWorkbook(screenedInput(only(raw), [])));
    const written = worksheets.map((sheet) => sheet.name);
    expect(new Set(written.map((name) => name.toLowerCase())).size).toBe(names.length + 3);
    for (const name of written) expect(name).toMatch(/^[^\\/?*[\]:]{1,31}$/);
    expect(written.slice(-3)).toEqual(["Summary (3)", "Rules applied", "Remarks"]);
  });

  it("bounds what merges can cost", async () => {
    const raw = sheetOf("Pumps", [rowOf(1, [text("a"), text("b")]), rowOf(900_000, [text("z")])], {
      merges: [{ top: 1, left: 1, bottom: 1_048_576, right: 16_384 }],
    });
    const workbook = await opened(await screenedWorkbook(screenedInput(only([raw]), [])));
    expect(sheetIn(workbook, "Pumps").getCell("A900000").value).toBe("z");
  });

  it("cuts texts at what a cell can hold, and holds messages that look like formulas", async () => {
    const hostile = { ...point(4, "fail", [finding("x", "fail", { message: "=cmd|x" })]), point: "=1" };
    const raw = sheetOf("Pumps", [rowOf(3, [text("Point")]), rowOf(4, [text("\u0001".repeat(20_000))])]);
    const workbook = await opened(await screenedWorkbook(screenedInput(only([raw]), [hostile])));
    const pumps = sheetIn(workbook, "Pumps");
    expect(String(pumps.getCell("A4").value)).toHaveLength(32_767);
    expect(pumps.getCell("D4").value).toBe("=cmd|x");
    expect(pumps.getCell("D4").type).toBe(exceljs.ValueType.String);
  });

  it("looks at rows and points twice as often where there are twice as many, not more", async () => {
    const looks = async (rows: number): Promise<number> => {
      const counted = countedInput(rows);
      await screenedWorkbook(counted.input);
      return counted.looks();
    };
    const once = await looks(300);
    expect(once).toBeGreaterThan(600);
    expect((await looks(600)) / once).toBeLessThan(2.1);
  });

  it("caps comments with a remark", { timeout: 180_000 }, async () => {
    const bytes = await screenedWorkbook(largeInput(8_000));
    const parts = partsOf(bytes);
    expect(parts.get("xl/comments1.xml")?.match(/<comment /g)).toHaveLength(5_000);
    expect(parts.get("xl/sharedStrings.xml")).toContain("334 framed cells have no comment");
  });
});
