import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { looksLikeFormula } from "../../../src/base/index.js";
import { csvRecord } from "../../../src/outputs/csv/record.js";
import { safeText } from "../../../src/outputs/csv/safe-text.js";
import { findingsCsv, pointsCsv } from "../../../src/outputs/index.js";
import { finding, POINTS, point } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";

function read(pieces: Iterable<string>): Record<string, string>[] {
  return parse([...pieces].join(""), { columns: true, record_delimiter: "\r\n" });
}

describe("csvRecord", () => {
  it("is read back exactly", () => {
    const texts = fc.array(fc.string({ unit: fc.constantFrom(..."a\"',;\r\n\t =é漢") }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(texts, texts, (one, other) => {
        const rows = [one, other.slice(0, one.length).concat(one.slice(other.length))];
        const text = rows.map(csvRecord).join("");
        expect(parse(text, { record_delimiter: "\r\n" })).toEqual(rows);
      }),
    );
  });

  it("writes numbers in their shortest form", () => {
    expect(csvRecord([0.1, -5, -0, null, 1e21])).toBe("0.1,-5,0,,1e+21\r\n");
    expect(() => csvRecord([Number.POSITIVE_INFINITY])).toThrow(RangeError);
  });
});

describe("safeText", () => {
  const TRIGGERS = [..."=+-@＝＋－＠"];
  it.each(TRIGGERS)("puts an apostrophe before %s", (trigger) => {
    expect(safeText(`${trigger}1`)).toBe(`'${trigger}1`);
    expect(safeText(`  \u00a0${trigger}1`)).toBe(`'  \u00a0${trigger}1`);
    expect(safeText(`\u200b${trigger}1`)).toBe(`'\u200b${trigger}1`);
  });

  it.each(["\tx", "\rx", "\nx", "\u0000x"])("puts an apostrophe before a leading control character (%#)", (text) => {
    expect(safeText(text).startsWith("'")).toBe(true);
  });

  it("leaves other texts alone", () => {
    for (const text of ["", "P-1", "a=b", "Ø 30 mm", "'quoted'"]) expect(safeText(text)).toBe(text);
  });

  it("shows control characters and halves of characters as code points", () => {
    expect(safeText("a\u001b[2J\ud800")).toBe("a<U+001B>[2J<U+D800>");
  });

  it("never leaves a formula behind", () => {
    fc.assert(fc.property(fc.string({ unit: "binary" }), (text) => !looksLikeFormula(safeText(text))));
  });
});

describe("pointsCsv", () => {
  const rows = read(pointsCsv(HEAD, POINTS));

  it("has a row per point, in their order, with the leading finding", () => {
    expect(rows.map((row) => row.row)).toEqual(["4", "5", "6", "7", "8"]);
    expect(rows[1]).toMatchObject({
      "point id": "0c9d3a52-7b1e-5f0a-8c44-000000000005",
      verdict: "fail",
      "leading rule": "thread-depth",
      outcome: "fail",
      reason: "the full thread is 7.5 mm deep, the bolt needs 9 mm",
      source: "bolt length, as the trade does it (common practice)",
      "rules failed": "2",
      "rules warned": "1",
      "rules undecided": "0",
      "rulebook version": "2026.1",
      "as of": "2026-06-01",
      caution: "a screening, not a permission",
    });
    expect(rows[3]).toMatchObject({ "missing facts": expect.stringContaining("lowest speed"), "rules undecided": "2" });
    expect(rows[0]).toMatchObject({ verdict: "pass", "leading rule": "", reason: "", remedy: "" });
    expect(rows[4]).toMatchObject({
      "point id": "",
      sheet: "",
      outcome: "undecided",
      "leading rule": "tightening-torque",
    });
  });

  it("ends lines with CRLF and holds no formula", () => {
    const hostile = {
      ...point(9, "fail", [finding("x", "fail", { message: "@SUM(A1)" })]),
      point: "=1+1",
      machine: "\t-2",
    };
    const text = [...pointsCsv(HEAD, [hostile])].join("");
    expect(text.replace(/\r\n/g, "")).not.toMatch(/[\r\n]/);
    expect(read([text])[0]).toMatchObject({ point: "'=1+1", machine: "'\t-2", reason: "'@SUM(A1)" });
  });
});

describe("findingsCsv", () => {
  const rows = read(findingsCsv(HEAD, POINTS));

  it("has a row per finding that keeps a point from passing", () => {
    expect(rows.map((row) => `${row.row} ${row.rule} ${row.outcome}`)).toEqual([
      "5 thread-depth fail",
      "5 supply-voltage fail",
      "5 seat-material warn",
      "6 seat-material warn",
      "7 min-speed undecided",
      "7 hole-depth no-limit-in-force",
      "8 tightening-torque undecided",
    ]);
  });

  it("keeps numbers as numbers", () => {
    expect(rows[0]).toMatchObject({ found: "7.5 mm ± 0.2 mm", margin: "-1.7", "margin unit": "mm", cells: "E5" });
  });
});
