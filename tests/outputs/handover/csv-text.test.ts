import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SIGNS } from "../../../src/handover/index.js";
import { csvText, encoded } from "../../../src/outputs/handover/csv-text.js";
import { mappingOf, pointsMapping } from "../../handover/made-mapping.js";

describe("a text table", () => {
  it("is read back as it was, with any separator and line end", async () => {
    const [target] = (await mappingOf(pointsMapping([{ heading: "A", field: "id" }]))).targets;
    if (!target) throw new Error("a mapping has a target");
    const unit = fc.constantFrom("a", "=", '"', ",", ";", "\t", "|", "\n", "\r", "#", " ", "ü", "'", "\ufeff");
    const field = fc.option(fc.string({ unit, maxLength: 8 }), { nil: null });
    const form = fc.record({
      separator: fc.constantFrom("comma", "semicolon", "tab", "pipe" as const),
      lineEnd: fc.constantFrom("crlf", "lf" as const),
    });
    const rows = fc.integer({ min: 1, max: 4 }).chain((width) =>
      fc.record({
        headings: fc.array(fc.string({ unit, minLength: 1, maxLength: 8 }), { minLength: width, maxLength: width }),
        rows: fc.array(fc.array(field, { minLength: width, maxLength: width }), { maxLength: 5 }),
      }),
    );
    fc.assert(
      fc.property(form, rows, ({ separator, lineEnd }, { headings, rows }) => {
        const columns = headings.map((heading) => ({ heading, key: false }));
        const mapped = rows.map((values) => ({ id: "", points: [], values }));
        const text = csvText({ form: { ...target.form, separator, lineEnd } }, columns, mapped);
        const options = { delimiter: SIGNS[separator], record_delimiter: lineEnd === "lf" ? "\n" : "\r\n" };
        expect(parse(text, options)).toEqual([headings, ...rows.map((row) => row.map((value) => value ?? ""))]);
        expect(text.endsWith(lineEnd === "lf" ? "\n" : "\r\n")).toBe(true);
        expect(/(^|\n)#/.test(text.replaceAll(/"(?:[^"]|"")*"/g, ""))).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  it("has the bytes of its encoding, and no question marks", () => {
    expect([...encoded("a€", "windows-1252")]).toEqual([0x61, 0x80]);
    expect([...encoded("a", "utf-8-bom")]).toEqual([0xef, 0xbb, 0xbf, 0x61]);
    expect([...encoded("ü", "utf-8")]).toEqual([0xc3, 0xbc]);
    expect(() => encoded("ą", "windows-1252")).toThrow(RangeError);
  });
});
