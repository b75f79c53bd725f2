import { describe, expect, it } from "vitest";
import { refused, valueIn, valuesIn } from "./reading.js";
import { smallWorkbook } from "./small-workbook.js";

const text = (value: string) => ({ kind: "text", text: value });
const number = (value: number, format = "general") => ({ kind: "number", number: value, format });

describe("numbers", () => {
  it.each([
    ["12", 12],
    ["-0.5", -0.5],
    ["+3", 3],
    [".5", 0.5],
    ["1.", 1],
    ["1.5E3", 1500],
    [" 7 ", 7],
    ["0", 0],
    ["1e-400", 0],
  ])("reads %s", async (written, expected) => {
    expect(await valueIn(`<c r="A1"><v>${written}</v></c>`)).toEqual(number(expected));
  });

  it.each(["1e999", "NaN", "Infinity", "0x10", "1_000", "1,5", "1 2", "-", "1".repeat(1_101)])(
    "marks %s as unusable",
    async (written) => {
      expect(await valueIn(`<c r="A1"><v>${written}</v></c>`)).toMatchObject({ kind: "unusable" });
    },
  );

  it("reads a number of many digits", async () => {
    expect(await valueIn(`<c r="A1"><v>${"0".repeat(1_099)}1</v></c>`)).toEqual(number(1));
  });
});

describe("formulas give their saved result", () => {
  it.each([
    [`<c r="A1"><f>B1</f><v>0</v></c>`, number(0)],
    [`<c r="A1" t="b"><f>B1</f><v>0</v></c>`, { kind: "boolean", boolean: false }],
    [`<c r="A1" t="str"><f>B1</f><v>run</v></c>`, text("run")],
    [`<c r="A1" t="str"><f>B1</f><v></v></c>`, undefined],
    [`<c r="A1" t="e"><f>B1</f><v>#REF!</v></c>`, { kind: "error", text: "#REF!" }],
    [`<c r="A1"><f>B1</f></c>`, { kind: "no-result" }],
    [`<c r="A1"><f>B1</f><v/></c>`, { kind: "no-result" }],
    [`<c r="A1" t="str"><f>B1</f></c>`, { kind: "no-result" }],
    [`<c r="A1"><f t="shared" si="0"/></c>`, { kind: "no-result" }],
  ])("%s", async (cell, expected) => {
    expect(await valueIn(cell)).toEqual(expected);
  });
});

describe("true, false, errors and dates", () => {
  it.each([
    [`<c r="A1" t="b"><v>1</v></c>`, { kind: "boolean", boolean: true }],
    [`<c r="A1" t="b"><v>false</v></c>`, { kind: "boolean", boolean: false }],
    [`<c r="A1" t="e"><v>#N/A</v></c>`, { kind: "error", text: "#N/A" }],
    [`<c r="A1" t="d"><v>2026-02-28</v></c>`, { kind: "date", iso: "2026-02-28" }],
    [`<c r="A1" t="d"><v>2026-02-28T10:30:00.5Z</v></c>`, { kind: "date", iso: "2026-02-28T10:30:00.5Z" }],
    [`<c r="A1" t="d"><v>10:30:00</v></c>`, { kind: "date", iso: "10:30:00" }],
  ])("%s", async (cell, expected) => {
    expect(await valueIn(cell)).toEqual(expected);
  });

  it.each([
    `<c r="A1" t="b"><v>2</v></c>`,
    `<c r="A1" t="d"><v>2026-02-30</v></c>`,
    `<c r="A1" t="d"><v>46000</v></c>`,
    `<c r="A1" t="z"><v>1</v></c>`,
  ])("marks %s as unusable", async (cell) => {
    expect(await valueIn(cell)).toMatchObject({ kind: "unusable" });
  });
});

describe("texts", () => {
  const shared = { sharedStrings: "<si><t>one</t></si><si><r><t>tw</t></r><r><t>o</t></r></si><si><t> </t></si>" };

  it.each([
    [`<c r="A1" t="s"><v>0</v></c>`, text("one")],
    [`<c r="A1" t="s"><v>1</v></c>`, text("two")],
    [`<c r="A1" t="s"><v>2</v></c>`, undefined],
    [`<c r="A1" t="inlineStr"><is><t> as typed </t></is></c>`, text(" as typed ")],
    [`<c r="A1" t="inlineStr"><is><t>plain</t><r><t> and</t></r><r><t> run</t></r></is></c>`, text("plain and run")],
    [`<c r="A1" t="inlineStr"><is><t>課</t><rPh sb="0" eb="1"><t>カ</t></rPh><phoneticPr/></is></c>`, text("課")],
    [`<c r="A1" t="inlineStr"><is><t><![CDATA[a < b & c]]></t></is></c>`, text("a < b & c")],
    [`<c r="A1" t="inlineStr"><is><t>a&lt;b&amp;&#181;</t></is></c>`, text("a<b&µ")],
    [`<c r="A1" t="inlineStr"><is><t>\t\n</t></is></c>`, undefined],
    [`<c r="A1" t="inlineStr"><is><t>1_x000D_2_x005F_x000A_3</t></is></c>`, text("1\r2_x000A_3")],
    [`<c r="A1" t="inlineStr"><is><t>_xD83D__xDD27_</t></is></c>`, text("🔧")],
    [`<c r="A1" t="inlineStr"><is><t>a_xD83D_b_x0000_</t></is></c>`, text("a_xD83D_b_x0000_")],
    [`<c r="A1" t="str"><v>a_x000A_b</v></c>`, text("a\nb")],
    [`<c r="A1" s="0"/>`, undefined],
    [`<c r="A1" t="s"/>`, undefined],
  ])("%s", async (cell, expected) => {
    expect(await valueIn(cell, shared)).toEqual(expected);
  });

  it("refuses a shared text that does not exist, naming the cell", async () => {
    for (const index of ["3", "-1", "x"]) {
      const file = smallWorkbook([{ data: `<row r="4"><c r="C4" t="s"><v>${index}</v></c></row>` }], shared);
      const error = await refused(file);
      expect(error.code).toBe("text-out-of-range");
      expect(error.text).toContain('cell C4 of the sheet "Sheet1"');
    }
  });
});

describe("number formats", () => {
  const styles = {
    styles: `<numFmts><numFmt numFmtId="170" formatCode="yyyy\\-mm\\-dd"/><numFmt numFmtId="171" formatCode="0.0&quot; mm d&quot;"/></numFmts>
      <cellStyleXfs><xf numFmtId="14"/></cellStyleXfs>
      <cellXfs><xf/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="171"/><xf numFmtId="10"/><xf numFmtId="46"/></cellXfs>`,
  };

  it.each([
    ["0", "general"],
    ["1", "date"],
    ["2", "date"],
    ["3", "general"],
    ["4", "percent"],
    ["5", "time"],
  ])("style %s is %s", async (style, format) => {
    expect(await valueIn(`<c r="A1" s="${style}"><v>1.5</v></c>`, styles)).toEqual(number(1.5, format));
  });

  it("refuses a style that does not exist", async () => {
    const error = await refused(smallWorkbook([{ data: `<row r="1"><c r="B1" s="6"><v>1</v></c></row>` }], styles));
    expect(error.code).toBe("style-out-of-range");
    expect(error.text).toContain("cell B1");
  });
});

describe("places", () => {
  it("counts rows and cells without a number by their position", async () => {
    const values = await valuesIn(
      `<row><c><v>1</v></c><c/><c><v>2</v></c></row><row r="5"><c r="D5"><v>3</v></c><c><v>4</v></c></row><row><c><v>5</v></c></row>`,
    );
    expect(Object.keys(values)).toEqual(["1:1", "1:3", "5:4", "5:5", "6:1"]);
  });

  it("puts rows and cells in order, whatever order they are written in", async () => {
    const values = await valuesIn(
      `<row r="3"><c r="B3"><v>1</v></c><c r="A3"><v>2</v></c></row><row r="1"><c r="A1"><v>3</v></c></row><row r="3"><c r="C3"><v>4</v></c></row>`,
    );
    expect(Object.keys(values)).toEqual(["1:1", "3:1", "3:2", "3:3"]);
  });

  it.each([
    [`<row r="2"><c r="A2"><v>1</v></c><c r="A2"><v>2</v></c></row>`, "duplicate-cell"],
    [`<row r="2"><c r="A3"><v>1</v></c></row>`, "bad-cell-address"],
    [`<row r="2"><c r="2A"><v>1</v></c></row>`, "bad-cell-address"],
    [`<row r="two"><c><v>1</v></c></row>`, "bad-row-number"],
    [`<row r="-2"><c><v>1</v></c></row>`, "bad-row-number"],
  ])("refuses %s", async (data, code) => {
    expect((await refused(smallWorkbook([{ data }]))).code).toBe(code);
  });
});
