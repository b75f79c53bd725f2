import ExcelJS from "exceljs";
import fc from "fast-check";
import { expect, it } from "vitest";
import type { CellValue } from "../../src/workbook/index.js";
import { opened, valuesOf } from "./reading.js";

type Written = string | number | boolean | Date | null;

const day = fc.integer({ min: 100, max: 20_000 }).map((days) => new Date(days * 86_400_000));
const written: fc.Arbitrary<Written> = fc.oneof(
  fc.string({ unit: fc.constantFrom("a", "Ω", "µ", " ", "&", "<", '"', "\n", "7", "_", "🔧"), maxLength: 12 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer(),
  fc.boolean(),
  day,
  fc.constant(null),
);

/** What we must give for what was written. */
function expected(value: Written): CellValue | undefined {
  if (value === null) return undefined;
  if (typeof value === "string") return /\S/.test(value) ? { kind: "text", text: value } : undefined;
  // A file has no minus zero: that program writes it as 0.
  if (typeof value === "number") return { kind: "number", number: value + 0, format: "general" };
  if (typeof value === "boolean") return { kind: "boolean", boolean: value };
  return { kind: "number", number: value.getTime() / 86_400_000 + 25_569, format: "date" };
}

it("reads what another program wrote, as that program meant it", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.array(written, { maxLength: 5 }), { minLength: 1, maxLength: 8 }), async (rows) => {
      const book = new ExcelJS.Workbook();
      const sheet = book.addWorksheet("Survey");
      const want: Record<string, CellValue> = {};
      for (const [i, row] of rows.entries()) {
        for (const [j, value] of row.entries()) {
          if (value === null) continue;
          sheet.getCell(i + 1, j + 1).value = value;
          if (value instanceof Date) sheet.getCell(i + 1, j + 1).numFmt = "yyyy-mm-dd";
          const cell = expected(value);
          if (cell) want[`${i + 1}:${j + 1}`] = cell;
        }
      }
      const got = valuesOf((await opened(new Uint8Array(await book.xlsx.writeBuffer()))).sheets[0]);
      expect(got).toEqual(want);
    }),
    { numRuns: 100 },
  );
});

it("agrees with a second reader on sheets, hidden rows and columns, merges and formulas", async () => {
  const book = new ExcelJS.Workbook();
  const survey = book.addWorksheet("Survey");
  survey.addRow(["Tag", "Speed", "Share"]);
  survey.addRow(["P-1", { formula: "1400+80", result: 1480 }, 0.5]);
  survey.addRow(["P-2", { formula: "0", result: 0 }, 0.25]);
  survey.getCell("C2").numFmt = "0%";
  survey.getRow(3).hidden = true;
  survey.getColumn(3).hidden = true;
  survey.mergeCells("A5:B6");
  survey.getCell("A5").value = { richText: [{ text: "two " }, { text: "runs", font: { bold: true } }] };
  book.addWorksheet("Lists", { state: "veryHidden" }).addRow(["x"]);
  const bytes = new Uint8Array(await book.xlsx.writeBuffer());

  const ours = await opened(bytes);
  const theirs = await new ExcelJS.Workbook().xlsx.load(bytes.buffer as ArrayBuffer);
  expect(ours.sheets.map(({ name }) => name)).toEqual(theirs.worksheets.map(({ name }) => name));
  expect(ours.sheets.map(({ visibility }) => visibility)).toEqual(["visible", "very-hidden"]);
  const values = valuesOf(ours.sheets[0]);
  theirs.getWorksheet("Survey")?.eachRow((row, r) => {
    row.eachCell((cell, c) => {
      if (cell.isMerged && cell.master !== cell) return;
      const value = values[`${r}:${c}`];
      const text = value?.kind === "number" ? String(value.number) : value?.kind === "text" ? value.text : "";
      expect(text).toBe(String(cell.model.result ?? cell.text));
    });
  });
  expect(values["2:3"]).toMatchObject({ format: "percent" });
  expect(values["3:2"]).toMatchObject({ number: 0 });
  expect(ours.sheets[0]?.rows.find(({ row }) => row === 3)?.hidden).toBe(true);
  expect([...(ours.sheets[0]?.hiddenColumns ?? [])]).toEqual([3]);
  expect(ours.sheets[0]?.merges).toEqual([{ top: 5, left: 1, bottom: 6, right: 2 }]);
});
