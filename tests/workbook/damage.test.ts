import ExcelJS from "exceljs";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { isSentence, opened, plainSheets } from "./reading.js";
import { smallWorkbook } from "./small-workbook.js";

const TEXT = new TextEncoder().encode('Tag;Speed;"Place; end"\nP-1;1.480,0;"DE, ""left"""\nP-2;990;NDE µ\n');
const SMALL = smallWorkbook(
  [{ data: `<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" s="1"><v>46000</v></c></row>` }],
  {
    sharedStrings: "<si><t>Tag</t></si>",
    styles: `<cellXfs><xf/><xf numFmtId="14"/></cellXfs>`,
  },
);
let ordinary: Uint8Array;

beforeAll(async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Survey");
  sheet.addRow(["Tag", "Speed", "Day"]);
  for (let i = 0; i < 20; i++) sheet.addRow([`P-${i}`, 1480 + i, new Date(Date.UTC(2026, 0, 1 + i))]);
  ordinary = new Uint8Array(await book.xlsx.writeBuffer());
});

/** Whatever happens to the bytes, the answer is cells or a sentence; never a throw, never a hang. */
async function answers(bytes: Uint8Array): Promise<"opens" | "refused"> {
  const reading = await readWorkbook(bytes, nodeInflating);
  if (reading.ok) return "opens";
  if (!isSentence(reading.error.text)) throw new Error(`not fit for people: ${reading.error.text}`);
  return "refused";
}

describe("a workbook that was cut", () => {
  it("is refused at every length", async () => {
    for (let length = 0; length < SMALL.length; length++) {
      // A few bytes of "PK" are a text of two letters, which is nobody's survey but harmless.
      if (length > 0 && length < 4) continue;
      expect(await answers(SMALL.subarray(0, length)), `cut to ${length}`).toBe("refused");
    }
  });
});

describe("a workbook with wrong bytes", () => {
  it("gives a sentence or the same cells", async () => {
    for (const good of [SMALL, ordinary]) {
      const cells = plainSheets(await opened(good));
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.tuple(fc.nat(good.length - 1), fc.integer({ min: 1, max: 255 })), { minLength: 1, maxLength: 3 }),
          async (flips) => {
            const bytes = good.slice();
            for (const [at, mask] of flips) bytes[at] = (bytes[at] ?? 0) ^ mask;
            const reading = await readWorkbook(bytes, nodeInflating);
            // Checksums cover the parts; what is left are fields that no reader looks at, and styles or texts that
            // can no longer be found by their relationships.
            if (reading.ok && reading.workbook.kind === "xlsx") expect(plainSheets(reading.workbook)).toEqual(cells);
            else if (!reading.ok) expect(reading.error.text).toSatisfy(isSentence);
          },
        ),
        { numRuns: 1_000 },
      );
    }
  });
});

describe("a text file with wrong bytes", () => {
  it("gives a sentence or cells", async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(TEXT.length), fc.nat(TEXT.length - 1), fc.nat(255), async (length, at, byte) => {
        const bytes = TEXT.slice(0, length);
        if (at < length) bytes[at] = byte;
        expect(["opens", "refused"]).toContain(await answers(bytes));
      }),
      { numRuns: 1_000 },
    );
  });

  it("even if all of them are", async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (bytes) => {
        expect(["opens", "refused"]).toContain(await answers(bytes));
      }),
      { numRuns: 500 },
    );
  });
});
