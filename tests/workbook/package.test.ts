import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { opened, refused, valuesOf } from "./reading.js";
import { relationships, smallParts, smallWorkbook } from "./small-workbook.js";

const DATA = `<row r="1"><c r="A1"><v>1480</v></c></row>`;
const GOOD = smallWorkbook([{ data: DATA }]);
const NUMBER = { kind: "number", number: 1480, format: "general" };

async function opensAs1480(bytes: Uint8Array): Promise<void> {
  expect(valuesOf((await opened(bytes)).sheets[0])).toEqual({ "1:1": NUMBER });
}

describe("the parts of a workbook", () => {
  const rootLinks = (target: string, mode?: string) => relationships([["rId1", "officeDocument", target, mode]]);

  it("finds them by relationships alone: absolute, climbing, escaped and in other letters", async () => {
    const { "xl/worksheets/sheet1.xml": sheet, "xl/workbook.xml": book } = smallParts([{ data: DATA }]);
    const parts = {
      "_rels/.rels": strToU8(rootLinks("/A/Book%20One.xml")),
      "a/book one.xml": book ?? new Uint8Array(),
      "A/_rels/Book One.xml.rels": strToU8(relationships([["rId1", "worksheet", "./../b\\x/../Data.XML"]])),
      "b/data.xml": sheet ?? new Uint8Array(),
    };
    await opensAs1480(zipSync(parts));
  });

  it("reads prefixed and strict names", async () => {
    const strict = "http://purl.oclc.org/ooxml/spreadsheetml/main";
    const links = "http://purl.oclc.org/ooxml/officeDocument/relationships";
    const parts = {
      "_rels/.rels": `<p:Relationships xmlns:p="urn:x"><p:Relationship Id="a" Type="${links}/officeDocument" Target="xl/workbook.xml"/></p:Relationships>`,
      "xl/_rels/workbook.xml.rels": `<p:Relationships xmlns:p="urn:x"><p:Relationship Id="q" Type="${links}/worksheet" Target="worksheets/sheet1.xml"/></p:Relationships>`,
      "xl/workbook.xml": `<x:workbook xmlns:x="${strict}" xmlns:k="${links}"><x:sheets><x:sheet name="S" sheetId="7" k:id="q"/></x:sheets></x:workbook>`,
      "xl/worksheets/sheet1.xml": `<x:worksheet xmlns:x="${strict}"><x:sheetData><x:row r="1"><x:c r="A1"><x:v>1480</x:v></x:c></x:row></x:sheetData></x:worksheet>`,
    };
    await opensAs1480(smallWorkbook([{}], { parts }));
  });

  it.each(["utf-16le", "utf-16be"])("reads parts in %s", async (encoding) => {
    const text = `\ufeff<?xml version="1.0" encoding="UTF-16"?><worksheet><sheetData>${DATA}</sheetData></worksheet>`;
    const bytes = new Uint8Array(text.length * 2);
    const view = new DataView(bytes.buffer);
    for (let i = 0; i < text.length; i++) view.setUint16(i * 2, text.charCodeAt(i), encoding === "utf-16le");
    await opensAs1480(smallWorkbook([{}], { parts: { "xl/worksheets/sheet1.xml": bytes } }));
  });

  const sheetPart = (xml: string) => smallWorkbook([{}], { parts: { "xl/worksheets/sheet1.xml": xml } });
  const cases: readonly (readonly [what: string, file: Uint8Array, code: string])[] = [
    ["a document type", sheetPart(`<!DOCTYPE worksheet [<!ENTITY a "1">]><worksheet/>`), "document-type"],
    ["XML that stops", sheetPart("<worksheet><sheetData>"), "damaged-xml"],
    [
      "an entity that nobody declared",
      sheetPart(`<worksheet><sheetData><row><c><v>&a;</v></c></row></sheetData></worksheet>`),
      "damaged-xml",
    ],
    ["an empty part", sheetPart(""), "damaged-xml"],
    [
      "bytes that are no text",
      smallWorkbook([{}], {
        parts: { "xl/worksheets/sheet1.xml": new Uint8Array([...strToU8("<worksheet>"), 255, 254]) },
      }),
      "damaged-xml",
    ],
    ["an unknown encoding", sheetPart(`<?xml version="1.0" encoding="x-none"?><worksheet/>`), "unknown-part-encoding"],
    ["a part that is another thing", sheetPart("<chart/>"), "not-a-worksheet"],
    ["a sheet that is missing", smallWorkbook([{}], { parts: { "xl/worksheets/sheet1.xml": null } }), "missing-sheet"],
    [
      "a sheet outside the file",
      smallWorkbook([{}], {
        parts: {
          "xl/_rels/workbook.xml.rels": relationships([["rId1", "worksheet", "http://127.0.0.1:9/a.xml", "External"]]),
        },
      }),
      "missing-sheet",
    ],
    [
      "a target above the package",
      smallWorkbook([{}], {
        parts: { "xl/_rels/workbook.xml.rels": relationships([["rId1", "worksheet", "../../../sheet.xml"]]) },
      }),
      "missing-sheet",
    ],
    [
      "two sheets in one part",
      smallWorkbook([{}, {}], {
        parts: {
          "xl/_rels/workbook.xml.rels": relationships([
            ["rId1", "worksheet", "worksheets/sheet1.xml"],
            ["rId2", "worksheet", "worksheets/sheet1.xml"],
          ]),
        },
      }),
      "duplicate-sheet",
    ],
    ["two sheets of one name", smallWorkbook([{ name: "Survey" }, { name: "SURVEY" }]), "duplicate-sheet"],
    ["no sheet at all", smallWorkbook([]), "no-worksheet"],
    [
      "a text document",
      smallWorkbook([{}], { parts: { "xl/workbook.xml": "<w:document xmlns:w='u'/>" } }),
      "not-a-workbook",
    ],
    [
      "a binary workbook",
      smallWorkbook([{}], { parts: { "_rels/.rels": rootLinks("xl/workbook.bin"), "xl/workbook.bin": "x" } }),
      "binary-workbook",
    ],
    [
      "two workbooks",
      smallWorkbook([{}], {
        parts: {
          "_rels/.rels": relationships([
            ["a", "officeDocument", "xl/workbook.xml"],
            ["b", "officeDocument", "xl/other.xml"],
          ]),
        },
      }),
      "two-workbooks",
    ],
    [
      "a workbook kept outside",
      smallWorkbook([{}], { parts: { "_rels/.rels": rootLinks("http://127.0.0.1:9/", "External") } }),
      "zip-without-workbook",
    ],
    ["an OpenDocument file", zipSync({ mimetype: strToU8("x"), "content.xml": strToU8("<x/>") }), "open-document"],
    ["a zip with a survey inside", zipSync({ "survey.xlsx": GOOD }), "zip-archive"],
    ["any other zip", zipSync({ "readme.txt": strToU8("hello") }), "zip-without-workbook"],
    [
      "a merge without an address",
      smallWorkbook([{ after: `<mergeCells><mergeCell ref="A"/></mergeCells>` }]),
      "bad-merge",
    ],
  ];

  it.each(cases)("refuses %s", async (_what, file, code) => {
    expect((await refused(file)).code).toBe(code);
  });

  it("leaves out what is no worksheet and says so", async () => {
    const file = smallWorkbook([{ data: DATA }, { name: "Trend" }], {
      parts: {
        "xl/_rels/workbook.xml.rels": relationships([
          ["rId1", "worksheet", "worksheets/sheet1.xml"],
          ["rId2", "chartsheet", "chartsheets/sheet1.xml"],
        ]),
      },
    });
    const workbook = await opened(file);
    expect(workbook.sheets).toHaveLength(1);
    expect(workbook.remarks).toEqual(['the sheet "Trend" is not a worksheet and was left out']);
  });

  it("tells hidden sheets, rows and columns, merges and the date system", async () => {
    const workbook = await opened(
      smallWorkbook(
        [
          {
            name: "A &amp; B",
            data: `<row r="2" hidden="1"><c r="A2"><v>1</v></c></row><row r="3"><c r="A3"><v>1</v></c></row>`,
          },
          {
            state: "hidden",
            before: `<cols><col min="2" max="3" hidden="true"/><col min="5" max="5" hidden="0"/></cols>`,
          },
          { state: "veryHidden", after: `<mergeCells><mergeCell ref="B2:C4"/></mergeCells>` },
        ],
        { workbookProperties: `<workbookPr date1904="1"/>` },
      ),
    );
    expect(workbook.dateSystem).toBe(1904);
    expect(workbook.sheets.map(({ name, visibility }) => [name, visibility])).toEqual([
      ["A & B", "visible"],
      ["Sheet2", "hidden"],
      ["Sheet3", "very-hidden"],
    ]);
    expect(workbook.sheets[0]?.rows.map(({ row, hidden }) => [row, hidden])).toEqual([
      [2, true],
      [3, false],
    ]);
    expect([...(workbook.sheets[1]?.hiddenColumns ?? [])]).toEqual([2, 3]);
    expect(workbook.sheets[2]?.merges).toEqual([{ top: 2, left: 2, bottom: 4, right: 3 }]);
  });

  it("tells how far it is, never falling, to the end", async () => {
    const shares: number[] = [];
    await opened(smallWorkbook([{ data: DATA }, { data: DATA }]), { onProgress: (share) => shares.push(share) });
    expect(shares.at(-1)).toBe(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });
});
