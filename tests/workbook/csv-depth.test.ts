import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { opened, refused, valuesOf } from "./reading.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(text.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < text.length; i++) view.setUint16(i * 2, text.charCodeAt(i), littleEndian);
  return bytes;
}

/** Rows as their line and the texts of their cells. */
async function rows(bytes: Uint8Array, options = {}): Promise<readonly (readonly (number | string)[])[]> {
  const [sheet] = (await opened(bytes, options)).sheets;
  return (sheet?.rows ?? []).map(({ row, cells }) => [
    row,
    ...cells.map(({ value }) => (value.kind === "text" ? value.text : value.kind)),
  ]);
}

const TABLE = [
  [2, "Tag", "Speed"],
  [3, "P-1", "1485"],
];

describe("a first line that names the separator", () => {
  const text = "sep=;\r\nTag;Speed\r\nP-1;1485\r\n";

  it.each([
    ["plain", utf8(text)],
    ["in quotes", utf8(text.replace("sep=;", '"sep=;"'))],
    ["behind a mark of UTF-8", utf8(`\ufeff${text}`)],
    ["in UTF-16, low byte first", utf16(`\ufeff${text}`, true)],
    ["in UTF-16, high byte first", utf16(`\ufeff${text}`, false)],
    ["naming a tab", utf8(text.replaceAll(";", "\t"))],
  ])("is heard %s", async (_how, bytes) => {
    expect(await rows(bytes)).toEqual(TABLE);
  });

  it("is not believed against the user's own word", async () => {
    expect(await rows(utf8("sep=;\na,b;c\n"), { separator: "," })).toEqual([[2, "a", "b;c"]]);
  });
});

describe("bytes that were said to be UTF-16", () => {
  const text = "Tag;Speed\nP-1;1485\n";

  it.each([
    ["in the other order", utf16(text, false), "utf-16le", "--encoding utf-16be"],
    ["in the order that the short name does not mean", utf16(text, false), "utf-16", "--encoding utf-16be"],
    ["low byte first, said to be high", utf16(text, true), "utf-16be", "--encoding utf-16le"],
    ["of one byte for each character", utf8(text), "utf-16le", "leave --encoding out"],
  ])("and are %s are refused, not turned into other letters", async (_what, bytes, encoding, says) => {
    const error = await refused(bytes, { encoding });
    expect(error.code).toBe("wrong-encoding");
    expect(error.text).toContain(says);
  });

  it("are read where they are, in either order and in any script", async () => {
    for (const littleEndian of [true, false]) {
      const bytes = utf16("Tag;名前\nP-1;送風機\n", littleEndian);
      const encoding = littleEndian ? "utf-16le" : "utf-16be";
      expect(await rows(bytes, { encoding })).toEqual([
        [1, "Tag", "名前"],
        [2, "P-1", "送風機"],
      ]);
    }
  });
});

describe("what stands behind the last value", () => {
  it.each([
    ["blank lines", "\n".repeat(50)],
    ["lines of separators", ";;;\r\n".repeat(50)],
    ["blanks, tabs and blank lines", " \t \n\n".repeat(50)],
    ["more blank lines than a sheet may have", "\n".repeat(1_100_000)],
  ])("does not count: %s", async (_what, end) => {
    expect(await rows(utf8(`Tag;Speed\nP-1;1485\n${end}`))).toEqual([
      [1, "Tag", "Speed"],
      [2, "P-1", "1485"],
    ]);
  });

  it("an end mark is left out, and said to be", async () => {
    for (const end of ["\u001a", "\n\u001a", "\r\n\u001a\r\n"]) {
      const workbook = await opened(utf8(`Tag;Speed\nP-1;1485${end}`));
      expect(workbook.sheets[0]?.rows).toHaveLength(2);
      expect(valuesOf(workbook.sheets[0])["2:2"]).toEqual({ kind: "text", text: "1485" });
      expect(workbook.remarks.join()).toContain("Ctrl-Z");
    }
  });

  it("a last empty cell does not take the one before it along", async () => {
    expect(await rows(utf8("a;b;c\n1;2;\n"))).toEqual([
      [1, "a", "b", "c"],
      [2, "1", "2"],
    ]);
  });

  it("nothing that is in quotes is cut", async () => {
    expect(await rows(utf8('a;b\n1;"x\n\n "\n'))).toEqual([
      [1, "a", "b"],
      [2, "1", "x\n\n "],
    ]);
    expect((await refused(utf8('a;b\n1;"x\n\n'))).code).toBe("unclosed-quote");
  });
});

describe("lines", () => {
  it("may end in every way within one file", async () => {
    expect(await rows(utf8("a,b\r\n1,2\n3,4\r5,6\n\r7,8"))).toEqual([
      [1, "a", "b"],
      [2, "1", "2"],
      [3, "3", "4"],
      [4, "5", "6"],
      [6, "7", "8"],
    ]);
  });

  it("are not ended by characters that only look like it", async () => {
    expect(await rows(utf8("a,b\n1\v2,3\f4\n5\u0085,6\u20287\n"))).toEqual([
      [1, "a", "b"],
      [2, "1\v2", "3\f4"],
      [3, "5\u0085", "6\u20287"],
    ]);
  });

  it("of megabytes are read in one go, and their cell is marked", async () => {
    expect(await rows(utf8(`a,b\n${"x".repeat(3_000_000)},2\n`))).toEqual([
      [1, "a", "b"],
      [2, "unusable", "2"],
    ]);
    expect((await refused(utf8(`a,b\n${",".repeat(3_000_000)}x\n`))).code).toBe("too-many-columns");
    expect((await refused(utf8('"'.repeat(1_000_001)))).code).toBe("unclosed-quote");
  });

  it("beyond the last row of a sheet are refused before the rest is read", async () => {
    const error = await refused(utf8("a,b\n1,2\n\n\n5,6\n"), { limits: { rows: 4 } });
    expect(error).toMatchObject({ code: "too-many-rows", text: expect.stringContaining("line 5") });
    expect(await rows(utf8("a,b\n1,2\n\n\n"), { limits: { rows: 2 } })).toHaveLength(2);
  });
});

describe("quotes", () => {
  it.each([
    ["a sign for inches behind a number", 'P-1;3/4"', '3/4"'],
    ["text behind a closing quote", 'P-1;"a"b', '"a"b'],
    ["a single quote opens nothing", "P-1;'a", "'a"],
    ["a blank before a quote keeps it a character", 'P-1; "a"', ' "a"'],
    ["doubled within", 'P-1;"1/2"" pipe"', '1/2" pipe'],
  ])("%s", async (_what, line, cell) => {
    expect(await rows(utf8(`Tag;Value\n${line}\n`))).toEqual([
      [1, "Tag", "Value"],
      [2, "P-1", cell],
    ]);
  });
});

describe("a table in any encoding that its mark tells", () => {
  const cell = fc.string({
    unit: fc.constantFrom("a", "Ü", "名", "7", ",", ";", '"', "\n", " ", "µ"),
    minLength: 1,
    maxLength: 6,
  });

  it("comes back as it was written", async () => {
    const table = fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 });
    const written = fc.constantFrom(
      (text: string) => utf8(text),
      (text: string) => utf8(`\ufeff${text}`),
      (text: string) => utf16(`\ufeff${text}`, true),
      (text: string) => utf16(`\ufeff${text}`, false),
    );
    await fc.assert(
      fc.asyncProperty(table, written, fc.constantFrom("\n", "\r\n", "\r"), async (cells, encoded, end) => {
        const lines = cells.map((row) => ["x", ...row].map((text) => `"${text.replaceAll('"', '""')}"`).join(";"));
        const found = await rows(encoded(`sep=;${end}${lines.join(end)}`));
        const wanted = cells.map((row) => ["x", ...row.filter((text) => /\S/.test(text))]);
        expect(found.map(([, ...texts]) => texts)).toEqual(wanted);
      }),
    );
  });
});
