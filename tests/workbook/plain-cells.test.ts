import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainIndex, plainNumber } from "../../src/workbook/cell-bytes.js";
import { opened, refused, valuesOf } from "./reading.js";
import { type SmallParts, smallWorkbook } from "./small-workbook.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const EXTRA: SmallParts = {
  sharedStrings: "<si><t>one</t></si><si><t> </t></si><si><t>three</t></si>",
  styles: `<cellXfs><xf/><xf numFmtId="14"/><xf numFmtId="10"/></cellXfs>`,
};

/** Numbers as files write them, and things that look nearly like one. */
const written = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
  fc.integer().map(String),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((number) => number.toFixed(3)),
  fc.stringMatching(/^[-+]?[0-9]{0,20}(\.[0-9]{0,20})?$/),
  fc.stringMatching(/^[-+.0-9eE ]{0,8}$/),
);

describe("numbers from bytes", () => {
  it("are those that the text gives, or left to the text", () => {
    fc.assert(
      fc.property(written, (text) => {
        const number = plainNumber(utf8(text), 0, text.length);
        if (!Number.isNaN(number)) expect(number).toBe(Number(text));
      }),
      { numRuns: 20_000 },
    );
  });

  it("are taken for all usual numbers", () => {
    for (const text of ["0", "-0", "1", "1480", "-0.5", "24.05", "0.1", "123456789012345", "1.", ".5"]) {
      expect(plainNumber(utf8(text), 0, text.length)).toBe(Number(text));
    }
    for (const text of ["", "-", ".", "-.", "1e5", "+1", "1234567890123456", "0x1", "1.2.3", " 1", "1,5"]) {
      expect(plainNumber(utf8(text), 0, text.length), text).toBeNaN();
    }
  });

  it("count places", () => {
    for (const [text, index] of [
      ["0", 0],
      ["999999999", 999_999_999],
      ["", -1],
      ["1000000000", -1],
      ["1.", -1],
      ["-1", -1],
    ] as const) {
      expect(plainIndex(utf8(text), 0, text.length)).toBe(index);
    }
  });
});

/** A cell as programs write it, and with a blank more, which keeps it off the short way. */
const cell = fc
  .record({
    column: fc.constantFrom("A", "B", "Z", "AA", "AAA", "a", ""),
    style: fc.constantFrom("", ` s="0"`, ` s="1"`, ` s="2"`, ` s="9"`, ` s=""`),
    type: fc.constantFrom("", "", ` t="s"`, ` t="n"`, ` t="str"`, ` t="b"`),
    content: fc.oneof(
      written.map((text) => `<v>${text}</v>`),
      fc.constantFrom(
        "<v>0</v>",
        "<v>1</v>",
        "<v>2</v>",
        "<v>3</v>",
        "<v/>",
        "",
        "<f>1</f><v>1</v>",
        "<v>1</v><v>2</v>",
      ),
    ),
    short: fc.boolean(),
  })
  .map(({ column, style, type, content, short }) => (space: string, row: number) => {
    const address = column === "" ? "" : ` r="${column}${row}"`;
    const start = `<c${space}${address}${style}${type}`;
    return content === "" && short ? `${start}/>` : `${start}>${content}</c>`;
  });

/** Values or code of refusal. */
async function outcome(data: string): Promise<unknown> {
  const file = smallWorkbook([{ data }], EXTRA);
  try {
    return valuesOf((await opened(file)).sheets[0]);
  } catch {
    return await refused(file);
  }
}

describe("cells on the short way", () => {
  it("read as on the long way", async () => {
    const data = fc.array(
      fc.tuple(fc.constantFrom(` r="3"`, ` r="12"`, ` r="12" hidden="1"`), fc.array(cell, { maxLength: 4 })),
      { maxLength: 3 },
    );
    const rowsOf = (
      rows: readonly (readonly [string, readonly ((space: string, row: number) => string)[]])[],
      space: string,
    ) =>
      rows
        .map(([attributes, cells]) => {
          const row = Number(/\d+/.exec(attributes)?.[0]);
          return `<row${attributes}>${cells.map((write) => write(space, row)).join("")}</row>`;
        })
        .join("");
    await fc.assert(
      fc.asyncProperty(data, async (rows) => {
        expect(await outcome(rowsOf(rows, ""))).toEqual(await outcome(rowsOf(rows, " ")));
      }),
      { numRuns: 500 },
    );
  });

  it("read alike when they come near the end of what is in hand", async () => {
    const cells = Array.from(
      { length: 20 },
      (_, i) => `<c r="${String.fromCharCode(65 + i)}1" s="1"><v>${i}.25</v></c>`,
    ).join("");
    const values = valuesOf((await opened(smallWorkbook([{ data: `<row r="1">${cells}</row>` }], EXTRA))).sheets[0]);
    expect(Object.values(values)).toEqual(
      Array.from({ length: 20 }, (_, i) => ({ kind: "number", number: i + 0.25, format: "date" })),
    );
  });

  it("share the value of a shared text, and of equal texts and errors written in the cells", async () => {
    const data = `<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>0</v></c><c r="C1" t="inlineStr"><is><t>x</t></is></c>
      <c r="D1" t="str"><v>x</v></c><c r="E1" t="e"><v>#N/A</v></c><c r="F1" t="e"><v>#N/A</v></c></row>`;
    const sheet = (await opened(smallWorkbook([{ data }], EXTRA))).sheets[0];
    const at = (column: number) => sheet?.rows[0]?.at(column);
    for (const [a, b] of [
      [1, 2],
      [3, 4],
      [5, 6],
    ] as const) {
      expect(at(a)).toBeDefined();
      expect(at(a)).toBe(at(b));
    }
    expect(at(1)).not.toBe(at(3));
  });
});
