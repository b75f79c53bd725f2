import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { WorkbookEdits } from "../../../src/workbook/index.js";
import { valuesOf } from "../reading.js";
import { relationships } from "../small-workbook.js";
import { adding, partOf, ROWS, SHEET, STYLES, sheetOf, withSheet } from "./added-columns.js";
import { changedParts, editableParts, editableWorkbook, edited, editedFile, LOOK, read } from "./small-edit.js";

describe("new sheets", () => {
  const rows = () => [{ height: 20, cells: [{ content: "of ours", look: 0 }, null, { content: 4.5, look: 0 }] }];
  const withSheets = (...names: string[]): WorkbookEdits => ({
    looks: [LOOK],
    sheets: [],
    added: names.map((name) => ({ name, widths: [10], footer: "R&D", frozenRows: 1, rows })),
  });

  it("come last, under names, ids and parts that are free", async () => {
    const file = editableWorkbook(
      [
        { name: "Remarks", data: ROWS },
        { name: "b", data: ROWS },
      ],
      {
        parts: { "xl/worksheets/sheet4.xml": "<not-linked/>" },
      },
    );
    const result = await editedFile(file, withSheets("Remarks", "REMARKS", "n".repeat(40)));
    const { sheets } = await read(result);
    expect(sheets.map(({ name }) => name)).toEqual(["Remarks", "b", "Remarks (2)", "REMARKS (3)", "n".repeat(31)]);
    expect(valuesOf(sheets[2])).toEqual({
      "1:1": { kind: "text", text: "of ours" },
      "1:3": { kind: "number", number: 4.5, format: "general" },
    });
    const book = strFromU8(unzipSync(result)["xl/workbook.xml"] ?? new Uint8Array());
    expect(book).toContain('<sheet name="Remarks (2)" sheetId="3" r:id="rId3"/>');
    expect(changedParts(file, result).filter((name) => name.includes("worksheets/"))).toEqual(
      ["sheet3", "sheet5", "sheet6"].map((name) => `xl/worksheets/${name}.xml`),
    );
  });

  it("are listed in workbooks with prefixes, absolute targets and slashes of the other kind", async () => {
    const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    const parts = editableParts([{ data: ROWS }], {
      parts: {
        "xl/workbook.xml": `<m:workbook xmlns:m="${main}"><m:sheets><m:sheet name="Sheet1" sheetId="7" id:id="rId1" xmlns:id="${office}"/></m:sheets></m:workbook>`,
        "xl/_rels/workbook.xml.rels": relationships([["rId1", "worksheet", "/xl/worksheets/sheet1.xml"]]),
      },
    });
    const renamed = Object.fromEntries(
      Object.entries(parts).map(([name, bytes]) => [name.replaceAll("/", "\\"), bytes]),
    );
    const result = await editedFile(zipSync(renamed), withSheets("Ours"));
    expect((await read(result)).sheets.map(({ name }) => name)).toEqual(["Sheet1", "Ours"]);
    expect(strFromU8(unzipSync(result)["xl\\workbook.xml"] ?? new Uint8Array())).toContain(
      `<m:sheet xmlns:r="${office}" name="Ours" sheetId="8" r:id="rId2"/></m:sheets>`,
    );
  });
});

describe("what is printed", () => {
  const area = (names: string) =>
    partOf(
      sheetOf(ROWS, {}, { workbookProperties: "", parts: { "xl/workbook.xml": bookWith(names) } }),
      adding([1], { printed: 1 }),
      "xl/workbook.xml",
    );
  const bookWith = (names: string) =>
    strFromU8(editableParts([{}])["xl/workbook.xml"] ?? new Uint8Array()).replace(
      "</sheets>",
      `</sheets>${names}<calcPr/>`,
    );

  it("is said for a sheet that does not say it itself", async () => {
    const ours = `<definedName name="_xlnm.Print_Area" localSheetId="0">'Sheet1'!$A$1:$C$2</definedName>`;
    expect(await area("")).toContain(`</sheets><definedNames>${ours}</definedNames><calcPr/>`);
    const other = '<definedNames><definedName name="x">1</definedName>';
    expect(await area(`${other}</definedNames>`)).toContain(`${other}${ours}</definedNames>`);
    const own =
      '<definedNames><definedName localSheetId="0" name="_xlnm.Print_Area">Sheet1!$A$1</definedName></definedNames>';
    expect(await area(own)).toContain(`${own}<calcPr/>`);
  });
});

describe("a workbook is not edited", () => {
  const bookWith = (extra: string) => ({ workbookProperties: extra });
  const big = '<row r="1"><c r="XFD1"><v>1</v></c></row>';
  const utf16 = new Uint8Array(
    Buffer.from(
      `\ufeff<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData/></worksheet>`,
      "utf16le",
    ),
  );

  it.each([
    ["that is signed", "signed", sheetOf(ROWS, {}, { parts: { "_xmlsignatures/sig1.xml": "<s/>" } })],
    ["that is shared with a log", "shared", sheetOf(ROWS, {}, { parts: { "xl/revisions/log1.xml": "<s/>" } })],
    [
      "whose structure is protected",
      "structure-protected",
      sheetOf(ROWS, {}, bookWith('<workbookProtection lockStructure="1"/>')),
    ],
    ["whose sheet is protected", "sheet-protected", sheetOf(ROWS, { after: '<sheetProtection sheet="1"/>' })],
    ["without room to the right", "no-room", sheetOf(big)],
    ["whose rows are not in order", "rows-out-of-order", sheetOf('<row r="2"/><row r="1"/>')],
    ["that lists a row twice", "rows-out-of-order", sheetOf('<row r="2"/><row r="2"/>')],
    ["whose cells are not in order", "cells-out-of-order", sheetOf('<row r="1"><c r="B1"/><c r="A1"/></row>')],
    ["with a cell of another row", "cells-out-of-order", sheetOf('<row r="1"><c r="B7"/></row>')],
    ["with a row 0", "rows-out-of-order", sheetOf('<row r="0"/>')],
    ["without an element for its rows", "no-sheet-data", withSheet("")],
    ["with two of them", "two-sheet-data", withSheet("<sheetData/><sheetData/>")],
    [
      "that mixes prefixes",
      "mixed-prefixes",
      withSheet(
        '<sheetData><y:row r="1" xmlns:y="http://schemas.openxmlformats.org/spreadsheetml/2006/main"/></sheetData>',
      ),
    ],
    ["written in UTF-16", "not-utf-8", editableWorkbook([{}], { parts: { [SHEET]: utf16 } })],
    ["whose sheet is damaged", "damaged-xml", withSheet("<sheetData><row></sheetData>")],
    ["whose styles are damaged", "damaged-xml", sheetOf(ROWS, {}, { styles: "<fonts>" })],
    ["with a name that climbs", "unsafe-name", sheetOf(ROWS, {}, { parts: { "xl/../../up.txt": "x" } })],
    ["with a name that climbs backwards", "unsafe-name", sheetOf(ROWS, {}, { parts: { "..\\up.txt": "x" } })],
    ["with a name on a drive", "unsafe-name", sheetOf(ROWS, {}, { parts: { "C:\\up.txt": "x" } })],
    [
      "with macros that its type hides",
      "undeclared-macros",
      sheetOf(ROWS, {}, { parts: { "xl/vbaProject.bin": "x" } }),
    ],
    ["that is no zip file", "truncated", strToU8("PK\u0003\u0004")],
  ])("%s", async (_what, code, file) => expect(await edited(file, adding([1]))).toBe(code));

  it("that has no such sheet", async () => {
    expect(await edited(sheetOf(ROWS), adding([1], { sheet: "Other" }))).toBe("missing-sheet");
  });

  it("but is, where another sheet is protected", async () => {
    const file = editableWorkbook([{ data: ROWS }, { data: ROWS, after: '<sheetProtection sheet="1"/>' }]);
    expect(changedParts(file, await editedFile(file, adding([1])))).not.toContain("xl/worksheets/sheet2.xml");
  });
});

describe("a long sheet", () => {
  const rows = Array.from(
    { length: 20_000 },
    (_, i) =>
      `<row r="${i + 1}"><c r="A${i + 1}"><v>${i}</v></c><c r="B${i + 1}" t="str"><v>é${"x".repeat(i % 90)}</v></c></row>`,
  );
  const file = sheetOf(rows.join(""), {}, { styles: STYLES });
  const numbers = rows.map((_, i) => i + 1);
  const edits = adding(numbers, {
    frames: numbers.filter((row) => row % 3 === 0).map((row) => ({ row, column: 2, line: "thick" as const })),
  });

  it("is changed at its places alone, wherever the pieces end in which it is unpacked", async () => {
    const after = await partOf(file, edits);
    const wanted = rows.map((row, i) => {
      const framed = (i + 1) % 3 === 0 ? row.replace(`<c r="B`, `<c s="3" r="B`) : row;
      return framed.replace("</row>", `<c r="D${i + 1}" s="2" t="inlineStr"><is><t>added</t></is></c></row>`);
    });
    expect(after.includes(wanted.join(""))).toBe(true);
  });

  it("gives the same bytes each time", async () => {
    expect(Buffer.compare(await editedFile(file, edits), await editedFile(file, edits))).toBe(0);
  });
});
