import ExcelJS from "exceljs";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { sha256OfBytes } from "../../../src/base/index.js";
import { filesOf, fill, pointsMapping } from "../../handover/made-mapping.js";

const COLUMNS = [
  { heading: "Tag", fact: "asset_tag", key: true },
  { heading: "=Text", fact: "machine_name" },
  { heading: "Depth", fact: "hole_depth", type: "number" },
  { heading: "Day", fact: "next_outage", type: "date", days: "DD.MM.YYYY" },
  { heading: "Area", fact: "plant_area", whenEmpty: "blank" },
];
const SURVEY =
  "Point ID;Asset tag;Machine;Hole depth (mm);Next outage;Area\nP-1;00123;=1+1;15.5;2027-02-01;Hall 1\nP-2;=A1+B2;Mill;;;\n";

async function bytesOf(survey = SURVEY): Promise<Uint8Array> {
  const filling = await fill(pointsMapping(COLUMNS, { file: "points.xlsx" }), survey);
  expect(filling.problems).toEqual([]);
  const [file, ...more] = await filesOf(filling);
  expect(more).toEqual([]);
  return file?.bytes ?? new Uint8Array();
}

describe("a mapped workbook", () => {
  it("holds texts as texts, with zeros in front and signs of formulas, and numbers as numbers", async () => {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load((await bytesOf()).slice().buffer);
    const sheet = workbook.getWorksheet("points");
    const cells = (row: number): readonly unknown[] =>
      [1, 2, 3, 4, 5].map((column) => sheet?.getRow(row).getCell(column).value);
    expect(cells(1)).toEqual(["Tag", "=Text", "Depth", "Day", "Area"]);
    expect(cells(2)).toEqual(["00123", "=1+1", 15.5, "01.02.2027", "Hall 1"]);
    expect(cells(3).slice(0, 3)).toEqual(["=A1+B2", "Mill", null]);
    expect(sheet?.rowCount).toBe(3);
  });

  it("has not one formula in it, and marks texts as such", async () => {
    const parts = unzipSync(await bytesOf());
    const sheet = new TextDecoder().decode(parts["xl/worksheets/sheet1.xml"]);
    expect(sheet).toContain("<v>15.5</v>");
    expect(sheet).not.toMatch(/<f[ >]/);
    expect(new TextDecoder().decode(parts["xl/styles.xml"])).toContain('quotePrefix="1" numFmtId="49"');
  });

  it("has the same bytes every time", async () => {
    const [once, again] = [await bytesOf(), await bytesOf()];
    expect(sha256OfBytes(again)).toBe(sha256OfBytes(once));
  });

  it("refuses a text that no cell holds", async () => {
    const column = { heading: "T", constant: "x".repeat(2000) };
    const columns = [{ ...column, constant: undefined, template: "{machine_name}".repeat(20) }];
    const survey = `Point ID;Machine\nP-1;${"m".repeat(2000)}\n`;
    const filling = await fill(pointsMapping(columns, { file: "points.xlsx" }), survey);
    expect(filling.problems.map(({ code }) => code)).toEqual(["too-long"]);
  });
});
