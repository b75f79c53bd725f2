import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { columnLetters } from "../../src/base/index.js";
import { nodeInflating } from "../../src/disk/index.js";
import { DEFAULT_LIMITS, type ReadingLimits } from "../../src/workbook/index.js";
import { WorkbookPackage } from "../../src/workbook/package.js";
import { opened, refused, valuesOf } from "./reading.js";
import { smallParts, smallWorkbook } from "./small-workbook.js";

const csv = (text: string): Uint8Array => new TextEncoder().encode(text);
const rowWith = (row: number, ...columns: string[]): string =>
  `<row r="${row}">${columns.map((column) => `<c r="${column}${row}"><v>1</v></c>`).join("")}</row>`;
const inline = (text: string): string => `<row r="1"><c r="A1" t="inlineStr"><is><t>${text}</t></is></c></row>`;

/** Reads under, at and over a limit: the first two open, the third is refused by name. */
async function holdsAt(limit: keyof ReadingLimits, size: number, file: Uint8Array, code: string): Promise<string> {
  await opened(file, { limits: { [limit]: size + 1 } });
  await opened(file, { limits: { [limit]: size } });
  const error = await refused(file, { limits: { [limit]: size - 1 } });
  expect(error.code).toBe(code);
  return error.text;
}

describe("each limit holds at its value and refuses the next", () => {
  it("bytes of the file", async () => {
    const file = smallWorkbook([{ data: rowWith(1, "A") }]);
    expect(await holdsAt("fileBytes", file.length, file, "file-too-large")).toContain("limit of");
  });

  it("bytes of a sheet part", async () => {
    const sheets = [{ data: rowWith(1, "A") }];
    const size = smallParts(sheets)["xl/worksheets/sheet1.xml"]?.length ?? 0;
    const text = await holdsAt("sheetPartBytes", size, smallWorkbook(sheets), "part-too-large");
    expect(text).toContain("xl/worksheets/sheet1.xml");
  });

  it("bytes of another part", async () => {
    const extra = { sharedStrings: `<si><t>${"x".repeat(2_000)}</t></si>` };
    const size = smallParts([{}], extra)["xl/sharedStrings.xml"]?.length ?? 0;
    await holdsAt("otherPartBytes", size, smallWorkbook([{}], extra), "part-too-large");
  });

  it("rows", async () => {
    const file = smallWorkbook([{ data: rowWith(1, "A") + rowWith(40, "A") }]);
    expect(await holdsAt("rows", 40, file, "too-many-rows")).toContain("row 40");
    expect(await holdsAt("rows", 3, csv("a,b\n\n1,2\n"), "too-many-rows")).toContain("line 3");
  });

  it("columns", async () => {
    const file = smallWorkbook([{ data: rowWith(2, "A", "AB") }]);
    expect(await holdsAt("columns", 28, file, "too-many-columns")).toContain("AB2");
    expect(await holdsAt("columns", 4, csv("a,b,c,d\n1,2,3,4\n"), "too-many-columns")).toContain("line 1");
  });

  it("cells, over all sheets", async () => {
    const sheet = { data: rowWith(1, "A", "B") };
    await holdsAt("cells", 4, smallWorkbook([sheet, sheet]), "too-many-cells");
    await holdsAt("cells", 4, csv("a,b\n1,2\n"), "too-many-cells");
  });

  it("merged ranges", async () => {
    const merges = `<mergeCells><mergeCell ref="A1:B1"/><mergeCell ref="C1:C9"/><mergeCell ref="D1"/></mergeCells>`;
    await holdsAt("merges", 3, smallWorkbook([{ after: merges }]), "too-many-merges");
  });

  it("characters of a cell, which spoil the cell alone", async () => {
    const shared = { sharedStrings: "<si><t>12345</t></si>" };
    const files = [
      smallWorkbook([{ data: inline("12345") }]),
      smallWorkbook([{ data: `<row r="1"><c r="A1" t="s"><v>0</v></c></row>` }], shared),
      csv("12345\n"),
    ];
    for (const file of files) {
      for (const [limit, kind] of [
        [6, "text"],
        [5, "text"],
        [4, "unusable"],
      ] as const) {
        const workbook = await opened(file, { limits: { cellCharacters: limit } });
        expect(valuesOf(workbook.sheets[0])["1:1"]?.kind).toBe(kind);
      }
    }
  });

  it("sheets of a workbook", async () => {
    await opened(smallWorkbook(Array.from({ length: 1_024 }, () => ({}))));
    expect((await refused(smallWorkbook(Array.from({ length: 1_025 }, () => ({}))))).code).toBe("too-many-sheets");
  });

  it("parts of a workbook", async () => {
    const photographs = (count: number) =>
      Object.fromEntries(Array.from({ length: count }, (_, i) => [`xl/media/image${i}.png`, new Uint8Array(0)]));
    const usual = Object.keys(smallParts([{}])).length;
    await opened(smallWorkbook([{}], { parts: photographs(5_000 - usual) }));
    const error = await refused(smallWorkbook([{}], { parts: photographs(5_001 - usual) }));
    expect(error.code).toBe("too-many-parts");
  });

  it("levels of nesting", async () => {
    const nested = (levels: number): string => "<x>".repeat(levels) + "</x>".repeat(levels);
    await opened(smallWorkbook([{ data: nested(198) }]));
    expect((await refused(smallWorkbook([{ data: nested(199) }]))).code).toBe("too-deep");
  });
});

describe("limits of the reader itself", () => {
  it("bytes of one tag", async () => {
    const sheetWith = (bytes: number): Uint8Array => {
      const tag = (value: string): string => `<mergeCell ref="A1" x="${value}"/>`;
      const merge = tag("y".repeat(bytes - tag("").length));
      return smallWorkbook([{ after: `<mergeCells>${merge}</mergeCells>` }]);
    };
    for (const bytes of [8_388_607, 8_388_608]) {
      expect((await opened(sheetWith(bytes))).sheets[0]?.merges).toHaveLength(1);
    }
    expect((await refused(sheetWith(8_388_609))).code).toBe("tag-too-long");
  });

  it("bytes of all parts together, by what the directory states", async () => {
    const parts = Object.fromEntries(Array.from({ length: 5 }, (_, i) => [`part${i}.xml`, new Uint8Array(1)]));
    const file = zipSync(parts);
    const view = new DataView(file.buffer);
    // The size after unpacking stands 24 bytes into each entry of the directory.
    for (let at = 0; at + 46 < file.length; at++) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 256 * 1_048_576, true);
    }
    const source = new WorkbookPackage(file, nodeInflating, DEFAULT_LIMITS);
    const codeOf = (part: number) => source.part(`part${part}.xml`, "sheet").catch((error) => error.file.code);
    // Four of 256 MiB are a gibibyte; they are let in and found to be less than stated.
    for (const part of [0, 1, 2, 3]) expect(await codeOf(part)).toBe("damaged-part");
    expect(await codeOf(4)).toBe("workbook-too-large");
  });

  it("characters of a cell and columns that can be asked for at all", async () => {
    const long = (characters: number): Uint8Array => smallWorkbook([{ data: inline("x".repeat(characters)) }]);
    const limits = { cellCharacters: Number.POSITIVE_INFINITY, columns: Number.POSITIVE_INFINITY };
    for (const [characters, kind] of [
      [499_999, "text"],
      [500_000, "text"],
      [500_001, "unusable"],
      [20_000_000, "unusable"],
    ] as const) {
      const value = valuesOf((await opened(long(characters), { limits })).sheets[0])["1:1"];
      expect(value?.kind).toBe(kind);
      if (value?.kind === "unusable") expect(value.why).toContain("more than 500,000 characters");
    }
    await opened(csv(`${",".repeat(65_534)}a`), { limits });
    expect((await refused(csv(`${",".repeat(65_535)}a`), { limits })).code).toBe("too-many-columns");
  });

  it("remarks, which many rows of one kind do not multiply", async () => {
    const data = `<row r="0"/>`.repeat(50_000);
    expect((await opened(smallWorkbook([{ data }]))).remarks).toHaveLength(1);
    const records = `"${"\n".repeat(30)}"\n`.repeat(1_000);
    const { remarks } = await opened(csv(`a;b\n${records}`));
    expect(remarks).toHaveLength(12);
    expect(remarks.at(-1)).toBe("990 more records go on for more than 20 lines");
  });

  it("one place written over and over, and rows that come back again and again", async () => {
    const again = `<row r="2"><c r="A2"><v>1</v></c></row><row r="1"><c r="B1"><v>1</v></c></row>`.repeat(100_000);
    expect((await refused(smallWorkbook([{ data: again }]))).code).toBe("duplicate-cell");
    const back = Array.from(
      { length: 1_000 },
      (_, i) => `<row r="${2 - (i % 2)}"><c r="${columnLetters(1_000 - i)}${2 - (i % 2)}"><v>${i}</v></c></row>`,
    );
    const rows = (await opened(smallWorkbook([{ data: back.join("") }]))).sheets[0]?.rows;
    expect(rows?.map(({ cells }) => cells.length)).toEqual([500, 500]);
    expect(rows?.[0]?.cells.map(({ column }) => column)).toEqual(Array.from({ length: 500 }, (_, i) => 2 * i + 1));
  });
});

describe("what costs nothing is not held against the limits", () => {
  it("empty cells and rows that only carry a format, however far out", async () => {
    const data = `${rowWith(1, "A")}<row r="1"><c r="XFD1" s="0"/></row><row r="9999999"><c r="ZZZZ9999999"/></row>`;
    const workbook = await opened(smallWorkbook([{ data }]));
    expect(workbook.sheets[0]?.rows).toHaveLength(1);
  });

  it("the claimed range of a sheet and a merge over all of it", async () => {
    const workbook = await opened(
      smallWorkbook([
        {
          before: `<dimension ref="A1:XFD1048576"/>`,
          data: rowWith(1, "A"),
          after: `<mergeCells><mergeCell ref="XFD1048576:A1"/></mergeCells>`,
        },
      ]),
    );
    expect(workbook.sheets[0]?.merges).toEqual([{ top: 1, left: 1, bottom: 1_048_576, right: 16_384 }]);
    expect(workbook.sheets[0]?.rows).toHaveLength(1);
  });

  it("columns hidden to the right edge of the sheet", async () => {
    const workbook = await opened(smallWorkbook([{ before: `<cols><col min="3" max="16384" hidden="1"/></cols>` }]));
    expect(workbook.sheets[0]?.hiddenColumns.size).toBe(DEFAULT_LIMITS.columns - 2);
  });
});
