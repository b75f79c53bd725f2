import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { opened, refused, valuesOf } from "./reading.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Texts of a table file by "line:column". */
async function table(bytes: Uint8Array, options = {}): Promise<Record<string, string>> {
  const values = valuesOf((await opened(bytes, options)).sheets[0]);
  return Object.fromEntries(
    Object.entries(values).map(([place, value]) => [place, value.kind === "text" ? value.text : value.kind]),
  );
}

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(text.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < text.length; i++) view.setUint16(i * 2, text.charCodeAt(i), littleEndian);
  return bytes;
}

describe("values stay as typed", () => {
  it.each([
    "1/4-28",
    "10-12",
    "3/8",
    "37,5",
    "1.480,0",
    "1,480",
    "00123",
    "2E5",
    "01/02/2025",
    "12:30",
    "(12)",
    "50%",
    "true",
    "#N/A",
    " 5 ",
    "=1+1",
  ])("%s", async (typed) => {
    expect(await table(utf8(`Tag;Value\nP-1;${typed}\n`))).toMatchObject({ "2:2": typed });
  });

  it("keeps inches, doubled quotes, and line ends inside quotes", async () => {
    expect(await table(utf8('a,b,c\n3/4" pipe,"say ""so""","two\r\nlines"\n"1/2"" x",2" ,z\n'))).toEqual({
      "1:1": "a",
      "1:2": "b",
      "1:3": "c",
      "2:1": '3/4" pipe',
      "2:2": 'say "so"',
      "2:3": "two\r\nlines",
      "4:1": '1/2" x',
      "4:2": '2" ',
      "4:3": "z",
    });
  });
});

describe("lines", () => {
  it.each([
    ["\n", "line feeds"],
    ["\r\n", "both"],
    ["\r", "carriage returns"],
  ])("are numbered with %j (%s)", async (end) => {
    const text = ["title", "", "a,b", '"x', 'y",1', "", ",,", "2,3"].join(end);
    expect(Object.keys(await table(utf8(text)))).toEqual(["1:1", "3:1", "3:2", "4:1", "4:2", "8:1", "8:2"]);
  });

  it("are numbered from a line that names the separator", async () => {
    expect(await table(utf8("sep=|\na|b\n1|2"))).toEqual({ "2:1": "a", "2:2": "b", "3:1": "1", "3:2": "2" });
  });

  it("may be ragged", async () => {
    expect(Object.keys(await table(utf8("a,b,c\n1\n1,2,3,4\n")))).toEqual([
      "1:1",
      "1:2",
      "1:3",
      "2:1",
      "3:1",
      "3:2",
      "3:3",
      "3:4",
    ]);
  });

  it("that run on through a lost quote get a remark", async () => {
    const workbook = await opened(utf8(`a,b\n"1,2${"\n1,2".repeat(30)}"\n3,4`));
    expect(workbook.remarks.join()).toContain("record in line 2");
  });
});

describe("the separator is found by evidence", () => {
  it.each([
    ["comma", "Tag,Speed\nP-1,1480\nP-2,990\n", "P-1"],
    ["semicolon with decimal commas", "Tag;Speed;Dia\nP-1;1480,5;25,4\nP-2;990,0;30,1\n", "P-1"],
    ["semicolon with a comma in every row but the heading", "Tag;Dia\nP-1;25,4\nP-2;30,1\n", "P-1"],
    ["semicolon with one comma everywhere", "Tag;Dia, mm\nP-1;25,4\nP-2;30,1\n", "P-1"],
    ["tab", "Tag\tPlace\nP-1\tpump, drive end; left\n", "P-1"],
    ["pipe", "Tag|Speed|Note\nP-1|1,480|a;b\nP-2|1,490|c\n", "P-1"],
    ["comma with lists in cells", "Tag,Sensors,Speed\nP-1,a;b,1480\nP-2,a;c,990\n", "P-1"],
    [
      "comma under padded title lines",
      "   North mill   \n\n  Walkdown; lines 1 and 2; by R. E.  \nTag,Speed,Dia\nP-1,1480,25\nP-2,990,25\n",
      "P-1",
    ],
    [
      "semicolon under a title with commas",
      "Mill, north, lines 1, 2 and 3\nTag;Speed;Dia\nP-1;1480;25\nP-2;990;25\n",
      "P-1",
    ],
    ["separators inside quotes", 'Tag;Note\n"P-1";"a,b,c"\n"P-2";"d,e,f"\n', "P-1"],
  ])("%s", async (_name, text, tag) => {
    expect(Object.values(await table(utf8(text)))).toContain(tag);
  });

  it("says so where there is none", async () => {
    const workbook = await opened(utf8("one\ntwo\n"));
    expect(workbook.remarks.join()).toContain("no separator was found");
  });

  it("takes the one that is named", async () => {
    expect(await table(utf8("a,b;c\n"), { separator: "semicolon" })).toEqual({ "1:1": "a,b", "1:2": "c" });
    expect(await table(utf8("a^b\n"), { separator: "^" })).toEqual({ "1:1": "a", "1:2": "b" });
    expect((await refused(utf8("a"), { separator: "and" })).code).toBe("unknown-separator");
    expect((await refused(utf8("a"), { separator: '"' })).code).toBe("unknown-separator");
  });
});

describe("the encoding is known, never guessed", () => {
  const text = "Prüfstelle;Ø µm\nP–1;5 °C €\n";
  const expected = { "1:1": "Prüfstelle", "1:2": "Ø µm", "2:1": "P–1", "2:2": "5 °C €" };

  it.each([
    ["UTF-8", utf8(text)],
    ["UTF-8 with its mark", utf8(`\ufeff${text}`)],
    ["UTF-16 little-endian", utf16(`\ufeff${text}`, true)],
    ["UTF-16 big-endian", utf16(`\ufeff${text}`, false)],
  ])("reads %s", async (_name, bytes) => {
    expect(await table(bytes)).toEqual(expected);
  });

  const western = Uint8Array.from(
    [...text].map(
      (c) =>
        new Map([
          ["–", 0x96],
          ["€", 0x80],
        ]).get(c) ?? c.charCodeAt(0),
    ),
  );

  it("reads another when told", async () => {
    for (const encoding of ["windows-1252", "CP1252", "ANSI"])
      expect(await table(western, { encoding })).toEqual(expected);
    const macintosh = Uint8Array.from([80, 114, 0x9f, 59, 0xaf]);
    expect(await table(macintosh, { encoding: "mac_roman" })).toEqual({ "1:1": "Prü", "1:2": "Ø" });
    expect(await table(utf16(text, true), { encoding: "utf-16le" })).toEqual(expected);
  });

  it("believes the mark more than its user", async () => {
    const workbook = await opened(utf8(`\ufeff${text}`), { encoding: "windows-1252" });
    expect(workbook.remarks.join()).toContain("was not used");
    expect(valuesOf(workbook.sheets[0])["1:1"]).toEqual({ kind: "text", text: "Prüfstelle" });
  });

  it.each([
    ["another encoding", western, {}, "not-utf-8", "line 1, column 3"],
    ["a cut character", Uint8Array.from([...utf8("a\nbü")].slice(0, -1)), {}, "not-utf-8", "line 2, column 2"],
    [
      "a stray byte after a whole character",
      Uint8Array.from([...utf8("ü"), 0xbc, 65]),
      {},
      "not-utf-8",
      "line 1, column 2",
    ],
    ["UTF-32", Uint8Array.from([255, 254, 0, 0, 65, 0, 0, 0]), {}, "utf-32", "UTF-32"],
    ["UTF-16 without its mark", utf16("Tag;Speed\nP-1;5\n", true), {}, "utf-16-unmarked", "--encoding utf-16le"],
    ["a NUL", utf8("a,b\n1,\0\n"), {}, "nul-character", "line 2"],
    ["an unknown name", utf8("a"), { encoding: "klingon" }, "unknown-encoding", '"klingon"'],
    ["the wrong name", western, { encoding: "utf-8" }, "wrong-encoding", "line 1, column 3"],
    ["an odd byte of UTF-16", utf16("\ufeffab", true).subarray(0, 5), {}, "wrong-encoding", "utf-16le"],
  ])("refuses %s", async (_name, bytes, options, code, words) => {
    const error = await refused(bytes, options);
    expect(error.code).toBe(code);
    expect(error.text).toContain(words);
  });
});

describe("the first byte that is not UTF-8", () => {
  it("is found wherever it stands, also where pieces meet", async () => {
    const bad = [[0xff], [0xc3], [0xe2, 0x82], [0x80], [0xf0, 0x9f, 0x94]];
    for (const length of [0, 1, 65_531, 65_533, 65_534, 65_535, 65_536, 65_537, 131_072, 200_000]) {
      for (const bytes of bad) {
        const line = "µ".repeat(Math.floor(length / 2)) + "a".repeat(length % 2);
        const text = Uint8Array.from([...utf8(`first\r\n${line}`), ...bytes, 65]);
        const column = ([...line].length + 1).toString().replace(/\B(?=(?:\d{3})+$)/g, ",");
        expect((await refused(text)).text).toContain(`(first at line 2, column ${column})`);
      }
    }
  });
});

describe("what cannot be read", () => {
  it("an unclosed quote, naming the line", async () => {
    const error = await refused(utf8('a,b\n1,2\n3,"4\n5,6\n'));
    expect(error).toMatchObject({ code: "unclosed-quote", text: expect.stringContaining("line 3") });
  });

  it.each(["", "\ufeff", "\n\n", " , ,\n"])("nothing but blanks: %j", async (text) => {
    expect((await refused(utf8(text))).code).toBe("empty-file");
  });
});

describe("what a program writes comes back", () => {
  const field = fc.string({ unit: fc.constantFrom("a", "Ü", "7", ",", ";", '"', "\n", "\r\n", " ", "\t", "|", "-") });
  const row = fc.array(field, { minLength: 2, maxLength: 6 });

  it("for every table, separator and line end", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 1, maxLength: 8 }),
        fc.constantFrom(",", ";", "\t", "|"),
        fc.constantFrom("\n", "\r\n", "\r"),
        async (rows, separator, end) => {
          const filled = rows.map((cells) => ["x", ...cells]);
          const text = filled
            .map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(separator))
            .join(end);
          const workbook = await opened(utf8(text), { separator });
          const back = workbook.sheets[0]?.rows.map(({ cells }) =>
            cells.map(({ column, value }) => [column, value.kind === "text" ? value.text : ""]),
          );
          const typed = filled.map((cells) =>
            cells.map((cell, i) => [i + 1, cell] as const).filter(([, cell]) => /\S/.test(cell)),
          );
          expect(back).toEqual(typed);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("with the separator found, for every survey-like table", async () => {
    const number = fc.tuple(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 0, max: 99 }));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(";", "\t", "|"),
        fc.array(fc.tuple(number, number), { minLength: 2, maxLength: 30 }),
        fc.constantFrom([], ["North mill"], ["North mill, lines 1, 2 and 3", ""]),
        async (separator, rows, titles) => {
          const lines = [
            ...titles,
            ["Tag", "Speed", "Diameter, mm"].join(separator),
            ...rows.map(([a, b], i) => [`P-${i}`, a.join(","), b.join(",")].join(separator)),
          ];
          const workbook = await opened(utf8(lines.join("\r\n")));
          expect(workbook.sheets[0]?.rows.at(-1)?.cells).toHaveLength(3);
        },
      ),
    );
  });
});
