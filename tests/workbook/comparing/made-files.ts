import { type SmallParts, type SmallSheet, smallWorkbook } from "../small-workbook.js";
import type { PlainValue } from "./plain-cells.js";
import type { Found, ReaderName } from "./two-readers.js";

/** A workbook made for the comparison, what it holds, and what the other readers make of it where they differ. */
export interface MadeFile {
  readonly what: string;
  readonly bytes: Uint8Array;
  readonly ours: readonly (readonly [string, PlainValue])[];
  readonly differs: Partial<Record<ReaderName, readonly Found[]>>;
}

/** A list of the content types of the parts; without it one of the readers opens nothing. */
function contentTypes(extra: SmallParts): string {
  const parts: readonly (readonly [string, string])[] = [
    ["workbook", "sheet.main"],
    ["worksheets/sheet1", "worksheet"],
    ...(extra.sharedStrings === undefined ? [] : [["sharedStrings", "sharedStrings"] as const]),
    ...(extra.styles === undefined ? [] : [["styles", "styles"] as const]),
  ];
  const listed = parts.map(
    ([part, type]) =>
      `<Override PartName="/xl/${part}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${type}+xml"/>`,
  );
  return `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">${listed.join("")}</Types>`;
}

const DATE_STYLES = '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs>';
const made = (sheets: readonly SmallSheet[], extra: SmallParts = {}): Uint8Array =>
  smallWorkbook(sheets, { ...extra, parts: { "[Content_Types].xml": contentTypes(extra) } });
const inline = (address: string, content: string): string => `<c r="${address}" t="inlineStr"><is>${content}</is></c>`;

/** Forms that real programs write and one or the other reader is known to get wrong. */
export const MADE_FILES: readonly MadeFile[] = [
  {
    what: "texts in runs, with readings and escapes",
    bytes: made([{ data: '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c></row>' }], {
      sharedStrings:
        '<si><r><t xml:space="preserve">two </t></r><r><t>runs</t></r><rPh sb="0" eb="1"><t>reading</t></rPh></si><si><t>a_x000D_\nb</t></si>',
    }),
    ours: [
      ["A1", "two runs"],
      ["B1", "a\nb"],
    ],
    differs: {},
  },
  {
    what: "formulas with zero, false, an error and nothing as their results",
    bytes: made([
      {
        data: '<row r="1"><c r="A1"><f>1-1</f><v>0</v></c><c r="B1" t="b"><f>1=2</f><v>0</v></c><c r="C1" t="e"><f>1/0</f><v>#DIV/0!</v></c><c r="D1"><f>1+1</f></c></row>',
      },
    ]),
    ours: [
      ["A1", 0],
      ["B1", false],
      ["C1", { error: "#DIV/0!" }],
    ],
    differs: {},
  },
  {
    what: "days counted from 1904",
    bytes: made([{ data: '<row r="1"><c r="A1" s="1"><v>40000</v></c><c r="B1"><v>40000</v></c></row>' }], {
      styles: DATE_STYLES,
      workbookProperties: '<workbookPr date1904="1"/>',
    }),
    ours: [
      ["A1", 40_000],
      ["B1", 40_000],
    ],
    differs: {},
  },
  {
    what: "days written in ISO form",
    bytes: made([{ data: '<row r="1"><c r="A1" t="d" s="1"><v>2026-03-01</v></c></row>' }], {
      styles: DATE_STYLES,
    }),
    ours: [["A1", 46_082]],
    // It takes the year for the number.
    differs: { exceljs: [{ what: "reads otherwise", count: 1, at: "Sheet1!A1", ours: 46_082, theirs: 2026 }] },
  },
  {
    what: "rows and cells that do not name their places",
    bytes: made([{ data: "<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>" }]),
    ours: [
      ["A1", 1],
      ["B1", 2],
      ["A2", 3],
    ],
    // It needs every row and cell to name its place.
    differs: { exceljs: [{ what: "refuses" }] },
  },
  {
    what: "text written in the cell, plain, in runs and as CDATA",
    bytes: made([
      {
        data: `<row r="1">${inline("A1", "<t>plain</t>")}${inline("B1", "<r><t>in </t></r><r><t>runs</t></r>")}${inline("C1", "<t><![CDATA[a < b]]></t>")}</row>`,
      },
    ]),
    ours: [
      ["A1", "plain"],
      ["B1", "in runs"],
      ["C1", "a < b"],
    ],
    // It drops CDATA sections.
    differs: { exceljs: [{ what: "loses", count: 1, at: "Sheet1!C1", ours: "a < b", theirs: null }] },
  },
  {
    what: "what is kept under a merge",
    bytes: made([
      {
        data: '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row>',
        after: '<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells>',
      },
    ]),
    ours: [
      ["A1", 1],
      ["B1", 2],
    ],
    // It shows the value of the merge for every cell under it.
    differs: { exceljs: [{ what: "loses", count: 1, at: "Sheet1!B1", ours: 2, theirs: null }] },
  },
];
