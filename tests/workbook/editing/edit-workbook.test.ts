import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { relationships } from "../small-workbook.js";
import { adding, partOf, ROWS, SHEET, STYLES, sheetOf, textsIn, withSheet } from "./added-columns.js";
import { changedParts, editedFile, LOOK, read } from "./small-edit.js";

describe("a column goes into the rows that are there", () => {
  it("behind an empty one, with everything else byte for byte", async () => {
    const file = sheetOf(ROWS, {}, { styles: STYLES });
    const before = strFromU8(unzipSync(file)[SHEET] ?? new Uint8Array());
    const after = await partOf(file, adding([1, 2]));
    const cell = (row: number) => `<c r="C${row}" s="2" t="inlineStr"><is><t>added</t></is></c>`;
    const cols =
      '<cols><col min="2" max="2" width="2" customWidth="1"/><col min="3" max="3" width="12" customWidth="1"/></cols>';
    const wanted = before
      .replace("</c></row><row", `</c>${cell(1)}</row><row`)
      .replace("</c></row></sheetData>", `</c>${cell(2)}</row></sheetData>`)
      .replace("<sheetData>", `${cols}<sheetData>`);
    expect(after).toBe(wanted);
    expect(changedParts(file, await editedFile(file, adding([1, 2])))).toEqual(["xl/styles.xml", SHEET].sort());
  });

  it.each([
    ["rows without an element", "", "<sheetData></sheetData>", { "1:1": "added", "3:1": "added" }],
    ["a sheet without rows", null, "<sheetData/>", { "1:1": "added", "3:1": "added" }],
    ["rows that close themselves", '<row r="1" /><row r="3"/>', "", { "1:1": "added", "3:1": "added" }],
    [
      "rows and cells without numbers",
      "<row><c><v>1</v></c></row><row/><row><c><v>3</v></c></row>",
      "",
      { "1:1": 1, "1:3": "added", "3:1": 3, "3:3": "added" },
    ],
    [
      "a row between two others",
      '<row r="2"><c r="A2"><v>2</v></c></row><row r="9"/>',
      "",
      { "1:3": "added", "2:1": 2, "3:3": "added" },
    ],
  ])("%s", async (_what, data, own, expected) => {
    const whole = own === "" ? sheetOf(data ?? "") : withSheet(own);
    expect(await textsIn(whole, adding([1, 3]))).toEqual(expected);
  });

  it("of every prefix and family of names", async () => {
    const prefixed = withSheet('<x:sheetData><x:row r="1"><x:c r="A1"><x:v>1</x:v></x:c></x:row></x:sheetData>', "x:");
    expect(await textsIn(prefixed, adding([1, 3]))).toEqual({ "1:1": 1, "1:3": "added", "3:3": "added" });
    expect(await partOf(prefixed, adding([1]))).toContain("<x:is><x:t>added</x:t></x:is></x:c></x:row>");
  });

  it("in front of what stands further right, and in place of cells that hold nothing", async () => {
    const data =
      '<row r="1"><c r="A1"><v>1</v></c><c r="C1" s="1"/><c r="D1"></c><c r="Z1" s="1"/></row><row r="2"><c r="C2" s="1"/></row>';
    const after = await partOf(sheetOf(data, {}, { styles: STYLES }), adding([1]));
    expect(after).toContain(
      '<c r="A1"><v>1</v></c><c r="C1" s="2" t="inlineStr"><is><t>added</t></is></c><c r="D1"></c><c r="Z1" s="1"/></row>',
    );
    expect(after).toContain('<row r="2"><c r="C2" s="1"/></row>');
  });

  it("with true spans and a true range", async () => {
    const data =
      '<row spans="1:1" r="1"><c r="A1"><v>1</v></c></row><row r="4" spans="2:2 5:6"><c r="B4"><v>1</v></c></row>';
    const after = await partOf(sheetOf(data, { before: '<dimension ref="A1:XFD9"/>' }), adding([1, 4]));
    expect(after).toContain('<row spans="1:4" r="1">');
    expect(after).toContain('<row r="4" spans="2:6">');
    expect(after).toContain('<dimension ref="A1:D4"/>');
  });
});

describe("columns that are described", () => {
  const colsOf = async (cols: string) =>
    /<cols>.*<\/cols>/.exec(await partOf(sheetOf(ROWS, { before: cols }), adding([1])))?.[0];
  const ours = '<col min="3" max="3" width="12" customWidth="1"/>';
  const gap = '<col min="2" max="2" width="2" customWidth="1"/>';

  it.each([
    ['<cols><col min="1" max="1" width="9"/></cols>', `<cols><col min="1" max="1" width="9"/>${gap}${ours}</cols>`],
    [
      '<cols><col min="1" max="99" hidden="1"></col></cols>',
      `<cols><col min="1" max="2" hidden="1"/>${ours}<col min="4" max="99" hidden="1"/></cols>`,
    ],
    ['<cols><col max="8" style="1" min="3"/></cols>', `<cols>${gap}${ours}<col max="8" style="1" min="4"/></cols>`],
    [
      '<cols><col min="3" max="3" width="1"/><col min="7" max="9"/></cols>',
      `<cols>${gap}${ours}<col min="7" max="9"/></cols>`,
    ],
    ['<cols><col min="7" max="9"/></cols>', `<cols>${gap}${ours}<col min="7" max="9"/></cols>`],
  ])("%s are cut around ours", async (before, after) => expect(await colsOf(before)).toBe(after));
});

describe("what stands beside the cells is not cut and not covered", () => {
  const LINKS = "xl/worksheets/_rels/sheet1.xml.rels";
  const firstColumn = async (file: Uint8Array) =>
    /<c r="([A-Z]+)1" s="\d+" t="inlineStr"><is><t>added/.exec(await partOf(file, adding([1, 2])))?.[1];

  it("a table, wherever it stands", async () => {
    const links = relationships([["rId1", "table", "../tables/table1.xml"]]);
    const parts = { [LINKS]: links, "xl/tables/table1.xml": '<table ref="B40:F50"/>' };
    expect(await firstColumn(sheetOf(ROWS, {}, { parts }))).toBe("H");
  });

  it("a chart in our rows, but not one below", async () => {
    const links = relationships([["rId1", "drawing", "/xl/drawings/d.xml"]]);
    const anchor = (top: number, bottom: number) =>
      `<wsDr><twoCellAnchor><from><col>3</col><row>${top}</row></from><to><col>9</col><row>${bottom}</row></to><pic/></twoCellAnchor></wsDr>`;
    const with_ = (drawing: string) => sheetOf(ROWS, {}, { parts: { [LINKS]: links, "xl/drawings/d.xml": drawing } });
    expect(await firstColumn(with_(anchor(0, 20)))).toBe("L");
    expect(await firstColumn(with_(anchor(5, 20)))).toBe("C");
    const wide =
      '<wsDr><oneCellAnchor><from><col>3</col><row>1</row></from><ext cx="1219200" cy="1"/><pic/></oneCellAnchor></wsDr>';
    expect(await firstColumn(with_(wide))).toBe("H");
  });

  it("a merged range in our rows, and the filter", async () => {
    const after = '<autoFilter ref="A1:D2"/><mergeCells><mergeCell ref="A1:F1"/><mergeCell ref="A9:Z9"/></mergeCells>';
    expect(await firstColumn(sheetOf(ROWS, { after }))).toBe("H");
  });

  it("a comment on an empty cell", async () => {
    const parts = {
      [LINKS]: relationships([["rId1", "comments", "../comments1.xml"]]),
      "xl/comments1.xml": '<comments><commentList><comment ref="E2"/></commentList></comments>',
    };
    expect(await firstColumn(sheetOf(ROWS, {}, { parts }))).toBe("G");
  });
});

describe("frames", () => {
  const frame = (row: number, column: number, line: "thick" | "dotted" = "thick") => ({ row, column, line });
  const framing = (...frames: ReturnType<typeof frame>[]) => adding([], { widths: [], frames }, []);

  it("clone the format of the cell and leave all others where they are", async () => {
    const data = '<row r="1"><c r="A1" s="1"><v>1</v></c><c s=\'1\' r="B1"/><c r="C1"><v>3</v></c></row>';
    const edits = framing(frame(1, 1), frame(1, 2), frame(1, 3, "dotted"), frame(1, 3));
    const file = sheetOf(data, {}, { styles: STYLES });
    const after = await partOf(file, edits);
    expect(after).toContain(
      '<row r="1"><c r="A1" s="2"><v>1</v></c><c s=\'2\' r="B1"/><c s="3" r="C1"><v>3</v></c></row>',
    );
    const styles = await partOf(file, edits, "xl/styles.xml");
    expect(styles).toContain('<xf fontId="0" numFmtId="9" borderId="1" applyBorder="1"><protection locked="0"/></xf>');
    expect(styles).toContain('<cellXfs count="4"><xf fontId="0"/><xf fontId="0" numFmtId="9">');
    expect(styles).toContain('<borders count="3"><border/><border><left style="thick">');
  });

  it("are put around cells that have no element, in the format that they would have had", async () => {
    const data = '<row r="1" s="1" customFormat="1"><c r="B1"><v>1</v></c></row><row r="5"/>';
    const file = sheetOf(data, { before: '<cols><col min="4" max="4" style="1"/></cols>' }, { styles: STYLES });
    const after = await partOf(file, framing(frame(1, 1), frame(1, 3), frame(3, 4), frame(5, 4), frame(7, 1)));
    expect(after).toContain(
      '<c r="A1" s="2"/><c r="B1"><v>1</v></c><c r="C1" s="2"/></row><row r="3"><c r="D3" s="2"/></row>' +
        '<row r="5"><c r="D5" s="2"/></row><row r="7"><c r="A7" s="3"/></row></sheetData>',
    );
  });

  it("come with the styles that a workbook lacks", async () => {
    const file = sheetOf(ROWS);
    const result = await editedFile(file, framing(frame(2, 1)));
    expect(changedParts(file, result)).toEqual(
      ["[Content_Types].xml", "xl/_rels/workbook.xml.rels", "xl/styles.xml", SHEET].sort(),
    );
    expect(strFromU8(unzipSync(result)["xl/styles.xml"] ?? new Uint8Array())).toContain('<cellXfs count="2">');
    expect((await read(result)).sheets[0]?.rows.length).toBe(2);
  });
});

describe("texts of ours", () => {
  const written = (content: string, look = 0) =>
    adding([1], { cellsOf: () => [{ content, look }] }, [LOOK, { ...LOOK, staysText: true }]);

  it.each([
    ["control characters", "a\u0001b\u001fc\rd", "a\u0001b\u001fc\rd", "a_x0001_b_x001F_c_x000D_d"],
    ["what looks like an escape", "_x0041_", "_x0041_", "_x005F_x0041_"],
    ["what looks like markup", '<b>&"', '<b>&"', "&lt;b&gt;&amp;&quot;"],
    ["halves of characters", "a\ud800b\u0000", "a\ufffdb\ufffd", "a\ufffdb\ufffd"],
    ["characters of all planes", "Ω 🔧 漢", "Ω 🔧 漢", "Ω 🔧 漢"],
    ["blanks at the ends", " a\n", " a\n", '<t xml:space="preserve"> a\n</t>'],
  ])("%s come back as they are", async (_what, text, back, spelled) => {
    expect((await textsIn(sheetOf(ROWS), written(text)))["1:3"]).toBe(back);
    expect(await partOf(sheetOf(ROWS), written(text))).toContain(spelled);
  });

  it("are cut at what a cell can hold, between characters", async () => {
    const [text] = Object.values(await textsIn(sheetOf(""), written("🔧".repeat(20_000))));
    expect(text).toBe(`${"🔧".repeat(16_383)}…`);
  });

  it("never become formulas, and stay texts when they are edited", async () => {
    const sheet = await partOf(sheetOf(ROWS), written("=1+1", 1));
    expect(sheet).not.toMatch(/<f[ >]/);
    const styles = await partOf(sheetOf(ROWS), written("=1+1", 1), "xl/styles.xml");
    expect(styles).toContain('<xf numFmtId="49" fontId="1" fillId="0" borderId="1" quotePrefix="1"');
  });
});
