import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { opened, refused, valuesOf } from "./reading.js";
import { relationships, smallParts, smallWorkbook } from "./small-workbook.js";

const DATA = `<row r="1"><c r="A1"><v>1480</v></c></row>`;
const GOOD = smallWorkbook([{ data: DATA }]);
const NUMBER = { kind: "number", number: 1480, format: "general" };

/** A copy with some bytes changed. */
function changed(bytes: Uint8Array, change: (view: DataView, bytes: Uint8Array) => void): Uint8Array {
  const copy = bytes.slice();
  change(new DataView(copy.buffer), copy);
  return copy;
}

/** Offsets of all records with this signature. */
function recordsAt(bytes: Uint8Array, signature: number): number[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found: number[] = [];
  for (let at = 0; at + 4 <= bytes.length; at++) if (view.getUint32(at, true) === signature) found.push(at);
  return found;
}

const directoryEntries = (bytes: Uint8Array): number[] => recordsAt(bytes, 0x02014b50);
const lastEntry = (bytes: Uint8Array): number => directoryEntries(bytes).at(-1) ?? 0;

function joined(...pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

async function opensAs1480(bytes: Uint8Array): Promise<void> {
  expect(valuesOf((await opened(bytes)).sheets[0])).toEqual({ "1:1": NUMBER });
}

describe("the zip directory", () => {
  it("reads a good one, packed or only stored", async () => {
    await opensAs1480(GOOD);
    await opensAs1480(zipSync(smallParts([{ data: DATA }]), { level: 0 }));
  });

  it("reads one inside a larger buffer", async () => {
    const larger = joined(new Uint8Array(7), GOOD);
    await opensAs1480(larger.subarray(7));
  });

  it("reads a zip comment", async () => {
    const comment = strToU8("from the plant");
    const file = changed(joined(GOOD, comment), (view) => view.setUint16(GOOD.length - 2, comment.length, true));
    await opensAs1480(file);
  });

  const cases: readonly (readonly [what: string, file: Uint8Array, code: string])[] = [
    ["bytes behind the end", joined(GOOD, strToU8("tail")), "data-after-end"],
    ["bytes in front", joined(strToU8("<html>"), GOOD), "data-before-zip"],
    ["a second zip in front", joined(GOOD, GOOD), "damaged-zip"],
    ["its second half missing", GOOD.subarray(0, GOOD.length / 2), "truncated"],
    ["nothing inside", zipSync({}), "empty-zip"],
    ["an encrypted part", changed(GOOD, (view) => view.setUint16(lastEntry(GOOD) + 8, 1, true)), "encrypted-part"],
    [
      "an unknown packing",
      changed(GOOD, (view) => view.setUint16(lastEntry(GOOD) + 10, 12, true)),
      "unknown-compression",
    ],
    ["another packing in the local header", changed(GOOD, (view) => view.setUint16(8, 0, true)), "damaged-zip"],
    ["another name in the local header", changed(GOOD, (_, bytes) => bytes.set(strToU8("X"), 30)), "damaged-zip"],
    ["a wrong checksum", changed(GOOD, (view) => view.setUint32(lastEntry(GOOD) + 16, 1, true)), "damaged-part"],
    ["an understated size", changed(GOOD, (view) => view.setUint32(lastEntry(GOOD) + 24, 9, true)), "part-size-lies"],
    ["an overstated size", changed(GOOD, (view) => view.setUint32(lastEntry(GOOD) + 24, 99_999, true)), "damaged-part"],
    [
      "two parts on the same bytes",
      changed(GOOD, (view) =>
        view.setUint32(lastEntry(GOOD) + 42, view.getUint32((directoryEntries(GOOD)[1] ?? 0) + 42, true), true),
      ),
      "overlapping-parts",
    ],
    [
      "a part twice, in other letters",
      zipSync({ ...smallParts([{ data: DATA }]), "XL\\Worksheets/SHEET1.xml": strToU8("<x/>") }),
      "duplicate-part",
    ],
    [
      "more entries stated than there are",
      changed(GOOD, (view) => view.setUint16(GOOD.length - 12, 9, true)),
      "damaged-zip",
    ],
  ];

  it.each(cases)("refuses %s", async (_what, file, code) => {
    expect((await refused(file)).code).toBe(code);
  });

  it("reads zip64 records", async () => {
    await opensAs1480(asZip64(GOOD));
  });

  it("refuses a zip64 record that leads nowhere", async () => {
    const file = asZip64(GOOD);
    const locator = recordsAt(file, 0x07064b50)[0] ?? 0;
    expect((await refused(changed(file, (view) => view.setBigUint64(locator + 8, 3n, true)))).code).toBe("damaged-zip");
  });
});

/** The same zip with its end told in zip64 records and one entry with zip64 sizes. */
function asZip64(bytes: Uint8Array): Uint8Array {
  const endAt = recordsAt(bytes, 0x06054b50)[0] ?? 0;
  const source = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = source.getUint32(endAt + 16, true);
  const at = lastEntry(bytes);
  const nameEnd = at + 46 + source.getUint16(at + 28, true);
  const field = new Uint8Array(20);
  const fieldView = new DataView(field.buffer);
  fieldView.setUint16(0, 1, true);
  fieldView.setUint16(2, 16, true);
  fieldView.setBigUint64(4, BigInt(source.getUint32(at + 24, true)), true);
  fieldView.setBigUint64(12, BigInt(source.getUint32(at + 20, true)), true);
  const head = changed(joined(bytes.subarray(0, nameEnd), field, bytes.subarray(nameEnd, endAt)), (view) => {
    view.setUint16(at + 30, field.length, true);
    view.setUint32(at + 24, 0xffffffff, true);
    view.setUint32(at + 20, 0xffffffff, true);
  });
  const end = new Uint8Array(56 + 20 + 22);
  const view = new DataView(end.buffer);
  const entries = BigInt(directoryEntries(bytes).length);
  view.setUint32(0, 0x06064b50, true);
  view.setBigUint64(4, 44n, true);
  view.setBigUint64(24, entries, true);
  view.setBigUint64(32, entries, true);
  view.setBigUint64(40, BigInt(head.length - start), true);
  view.setBigUint64(48, BigInt(start), true);
  view.setUint32(56, 0x07064b50, true);
  view.setBigUint64(64, BigInt(head.length), true);
  view.setUint32(76, 0x06054b50, true);
  view.setUint16(84, 0xffff, true);
  view.setUint16(86, 0xffff, true);
  view.setUint32(88, 0xffffffff, true);
  view.setUint32(92, 0xffffffff, true);
  return joined(head, end);
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
      smallWorkbook([{}], { parts: { "xl/worksheets/sheet1.xml": new Uint8Array([60, 97, 62, 255, 254]) } }),
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
