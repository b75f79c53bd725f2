import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { XmlScanner } from "../../src/workbook/xml-scan.js";
import { corpusBytes, corpusExists, corpusFiles, xmlParts } from "./corpus.js";
import { referencePass, scannerPass } from "./xml-events.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Both passes agree, however the bytes are cut. */
function agrees(bytes: Uint8Array, pieces: readonly number[] = [1, 7, 65_536]): void {
  const reference = referencePass(bytes);
  for (const size of pieces) {
    const scanned = scannerPass(bytes, [size]);
    expect(scanned.code).toBe(reference.code);
    // Compared as one text first: a sheet has hundreds of thousands of events.
    const differ = scanned.events.join("\n") !== reference.events.join("\n");
    if (reference.code === "whole" && differ) expect(scanned.events).toEqual(reference.events);
  }
}

const WELL_FORMED = [
  "<a/>",
  "\ufeff<a/>",
  "<?xml version='1.0' encoding=\"UTF-8\" standalone='yes' ?>\r\n<a></a >\n",
  '<?xml version="1.0"\n?><a/>',
  "<x:a xmlns:x='u'><x:v>1</x:v><y:b:c/></x:a>",
  "<a b='1' c=\"2\" d = '3'\n\te='\"' f=\"'\"/>",
  "<a b='x&#10;y\r\n\tz\rw&lt;&quot;&#x1F527;'>t</a>",
  "<abc>a\rb\r\nc\nd&#13;e</abc>",
  "<abc>one<!-- - two --->three</abc>".replace("--->", " -->"),
  "<abc><!----><!-->--><?p?><?p q?r??>x<?p\r\n?></abc>",
  "<abc>1<![CDATA[<&]]]]]><![CDATA[\r\n]]><![CDATA[]]>2]]&gt;3]>4</abc>",
  "<abc><![CDATA[]]>\r</abc>",
  "<abc>x<![CDATA[]]>&amp;<![CDATA[]]>y</abc>",
  "<abc>é€🔧\u007f\u0085\u2028</abc>",
  "<été ñ='ü'>ß</été>",
  "<abc><d>1<efg>2</efg>3</d>4</abc>",
  "<abc>&amp;&#38;&#x26;&#000038;&apos;</abc><!-- after --><?and this?>\r\n \t",
  `<a ${Array.from({ length: 40 }, (_, i) => `n${i}='${i}'`).join(" ")}/>`,
  `<abc>${"x".repeat(200_000)}&amp;${"é".repeat(100_000)}</abc>`,
  `<a b='${"y".repeat(200_000)}'/>`,
];

const BROKEN = [
  "",
  " ",
  "\ufeff",
  "a",
  "<",
  "<a",
  "<a>",
  "<a/><b/>",
  "<a></b>",
  "<a></ab>",
  "<ab></a>",
  "</a>",
  "<a></a></a>",
  "x<a/>",
  "<a/>x",
  "&amp;<a/>",
  "<a/>&#32;",
  "<![CDATA[x]]><a/>",
  "<a/><![CDATA[]]>",
  " <?xml version='1.0'?><a/>",
  "<a><?xml version='1.0'?></a>",
  "<?XML version='1.0'?><a/>",
  "<?xml?><a/>",
  "<?xml encoding='UTF-8'?><a/>",
  "<?xml version='2.0'?><a/>",
  "<?xml version='1.0' standalone='yes' encoding='UTF-8'?><a/>",
  "<?xml version='1.0'encoding='UTF-8'?><a/>",
  "<? a?><a/>",
  "<?1?><a/>",
  "<?a",
  "<a><!- x --></a>",
  "<a><!-- x -- y --></a>",
  "<a><!-- x ---></a>",
  "<a><!-- x",
  "<a><![CDATA[ x ]]</a>",
  "<a><![cdata[x]]></a>",
  "<a>]]></a>",
  "<a>x]]]></a>",
  "<a>&b;</a>",
  "<a>&amp</a>",
  "<a>&;</a>",
  "<a>& b</a>",
  "<a>&#;</a>",
  "<a>&#x;</a>",
  "<a>&#X41;</a>",
  "<a>&#4a;</a>",
  "<a>&#0;</a>",
  "<a>&#8;</a>",
  "<a>&#xD800;</a>",
  "<a>&#xFFFE;</a>",
  "<a>&#x110000;</a>",
  "<a>&#99999999999999999999;</a>",
  "<a>\u0001</a>",
  "<a>\ufffe</a>",
  "<a b='\u0008'/>",
  "<a b='&c;'/>",
  "<a b='<'/>",
  "<a b/>",
  "<a b>",
  "<a b=c/>",
  "<a b='1'c='2'/>",
  "<a b='1' b='2'/>",
  `<a ${Array.from({ length: 40 }, (_, i) => `n${i % 39}='${i}'`).join(" ")}/>`,
  "<a b='1/>",
  "<a / >",
  "<a/ b='1'>",
  "<1/>",
  "<a><-b/></a>",
  "<a$/>",
  "<a><b\u00d7/></a>",
  "<a></a b>",
  "< a/>",
  "<a></ a>",
  "<a><!ELEMENT b></a>",
  "<a><!DOCTYPE b></a>",
];

describe("the scanner and the reference parser", () => {
  it.each(WELL_FORMED)("read alike: %.60s", (text) => {
    expect(referencePass(utf8(text)).code).toBe("whole");
    agrees(utf8(text), text.length > 1_000 ? [4_099, 65_536] : [1, 2, 3, 7, 65_536]);
  });

  it.each(BROKEN)("both refuse: %.60s", (text) => {
    expect(referencePass(utf8(text)).code).toBe("damaged-xml");
    agrees(utf8(text), [1, 2, 3, 65_536]);
  });

  it("name the same line", () => {
    for (const text of [
      "<a>\n\r\n\r<b\n\rc='\n\r\n\n'>\n&x;</b></a>",
      "<?xml version='1.0'\n?>\n<a><!--\n\r\n--><?p\n?><![CDATA[\r\n]]>\n</a\n></b>",
      "<a>\n",
      "<a\n\n\nb='<'/>",
    ]) {
      const reference = referencePass(utf8(text));
      expect(reference.ending).toMatch(/ at its line \d+;/);
      for (const size of [1, 3, 65_536]) expect(scannerPass(utf8(text), [size]).ending).toBe(reference.ending);
    }
  });

  it.each([
    ["overlong", [0xc0, 0xaf]],
    ["cut short", [0xe2, 0x82]],
    ["half of a pair", [0xed, 0xa0, 0x80]],
    ["beyond the last character", [0xf4, 0x90, 0x80, 0x80]],
    ["a follower alone", [0x80]],
    ["Latin-1", [0xe9]],
  ])("both refuse bytes that are no UTF-8: %s", (_what, bad) => {
    for (const [before, after] of [
      ["<a>", "</a>"],
      ["<a b='", "'/>"],
      ["<a><!--", "--></a>"],
      ["<a", "/>"],
    ]) {
      agrees(new Uint8Array([...utf8(before ?? ""), ...bad, ...utf8(after ?? "")]), [1, 2, 65_536]);
    }
  });

  it("refuse a document type and deep nesting in the same words", () => {
    const nested = (levels: number) => utf8("<x>\n".repeat(levels) + "</x>".repeat(levels));
    for (const bytes of [utf8("<!DOCTYPE a [<!ENTITY b 'c'>]><a/>"), nested(200), nested(201)]) {
      expect(scannerPass(bytes, [5]).ending).toBe(referencePass(bytes).ending);
    }
    expect(scannerPass(nested(200), [5]).code).toBe("whole");
    expect(scannerPass(nested(201), [5]).code).toBe("too-deep");
  });

  it("read parts in other encodings alike", () => {
    const text = "\ufeff<abc d='é'>ж&amp;🔧</abc>";
    const wide = new Uint8Array(
      new Uint16Array([...text].flatMap((c) => [...Array(c.length)].map((_, i) => c.charCodeAt(i)))).buffer,
    );
    expect(scannerPass(wide, [3]).code).toBe("whole");
    agrees(wide, [1, 3, 65_536]);
    agrees(wide.subarray(0, wide.length - 1), [1, 65_536]);
    const western = [..."<?xml version='1.0' encoding='ISO-8859-1'?><abc>µ</abc>"].map((c) => c.charCodeAt(0));
    agrees(new Uint8Array(western), [1, 65_536]);
    agrees(utf8("<?xml version='1.0' encoding='x-none'?><a/>"), [1, 65_536]);
  });

  it("agree on XML put together at random", () => {
    const piece = fc.constantFrom(
      ...[
        "<a>",
        "</a>",
        "<bcd e='f'>",
        "</bcd>",
        "<g/>",
        "x",
        " ",
        "\r",
        "\n",
        "]",
        "]]>",
        ">",
        "&lt;",
        "&#233;",
        "&h;",
      ],
      ...["<![CDATA[", "<!--", "-->", "-", "<?p ", "?>", "?", "é", "🔧", "\u0001", "'", '"', "<", "&", "=", "/"],
    );
    const inner = fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join(""));
    const shape = fc
      .tuple(inner, fc.constantFrom(true, true, true, false))
      .map(([text, wrapped]) => (wrapped ? `<abc>${text}</abc>` : text));
    fc.assert(
      fc.property(shape, fc.integer({ min: 1, max: 9 }), (text, size) => agrees(utf8(text), [size])),
      { numRuns: 3_000 },
    );
  });
});

describe.skipIf(!corpusExists("workbooks"))("the scanner and the reference parser, on real workbooks", () => {
  it.each(corpusFiles("workbooks").filter(({ file }) => file.endsWith(".xlsx")))("$file", async ({ file }) => {
    for (const bytes of await xmlParts(corpusBytes("workbooks", file))) {
      // The few larger ones are left to the full tests.
      if (bytes.length < 1_000_000) agrees(bytes, [997]);
    }
  });
});

describe("the scanner", () => {
  it("tells where every tag stands, in bytes", () => {
    const text = "\ufeff<?xml version='1.0'?><wörk>é<x:row r='1'/><row>&amp;</row ></wörk>\n";
    const bytes = utf8(text);
    const decode = (from: number, to: number): string => new TextDecoder().decode(bytes.subarray(from, to));
    for (const size of [1, 4, 1_000]) {
      const tags: string[] = [];
      const note = (xml: XmlScanner): void => {
        tags.push(`${xml.element} ${xml.isSelfClosing} ${decode(xml.tagFrom, xml.tagTo)}`);
      };
      const scanner = new XmlScanner("p.xml", ["c", "row"], {
        open(xml) {
          note(xml);
          return false;
        },
        close: note,
      });
      for (let at = 0; at < bytes.length; at += size) scanner.write(bytes.slice(at, at + size));
      scanner.end();
      expect(tags).toEqual([
        "0 false <wörk>",
        "2 true <x:row r='1'/>",
        "2 true <x:row r='1'/>",
        "2 false <row>",
        "2 false </row >",
        "0 false </wörk>",
      ]);
    }
  });

  it("finds attributes by their full names", () => {
    const found: (string | null)[] = [];
    const scanner = new XmlScanner("p.xml", [], {
      open({ tag }) {
        for (const name of ["r", "x:r", "none"]) {
          const index = tag.find(utf8(name));
          found.push(index < 0 ? null : tag.value(index));
        }
        return false;
      },
      close() {},
    });
    scanner.write(utf8("<a x:r='1' rr='2' r='&lt;3'/>"));
    scanner.end();
    expect(found).toEqual(["<3", "1", null]);
  });

  it("refuses a tag without end before it fills the memory, and takes time in step with its length", () => {
    const scanner = new XmlScanner("p.xml", [], { open: () => false, close() {} });
    const piece = utf8("y".repeat(65_536));
    scanner.write(utf8("<a b='"));
    let pieces = 0;
    const refusal = (): void => {
      for (; pieces < 1_000; pieces++) scanner.write(piece);
    };
    expect(refusal).toThrow(/a tag of more than 8,388,608 bytes at its line 1/);
    expect(pieces * piece.length).toBeLessThan(20_000_000);
  });

  it("keeps only the beginning of a text that no cell can hold, and says so", () => {
    const seen: [number, boolean][] = [];
    const scanner = new XmlScanner("p.xml", [], {
      open: () => true,
      close: ({ text }) => seen.push([text.string.length, text.isTooLong]),
    });
    const piece = utf8("y".repeat(1_048_576));
    scanner.write(utf8("<a>"));
    for (let i = 0; i < 6; i++) scanner.write(piece);
    scanner.write(utf8("</a>"));
    scanner.end();
    expect(seen).toEqual([[5_242_880, true]]);
  });
});
