import { describe, expect, it } from "vitest";
import { columnOption, readColumnFile } from "../../src/rulebook/index.js";

/** The mistakes of a column file as places and codes. */
function mistakes(text: string): readonly string[] {
  const reading = readColumnFile({ path: "c.yaml", text });
  return reading.ok ? [] : reading.findings.map(({ line, column, code }) => `${line}:${column} ${code}`);
}

function sentence(text: string): string {
  const reading = readColumnFile({ path: "c.yaml", text });
  return reading.ok ? "" : reading.findings.map((finding) => finding.text).join("\n");
}

describe("a column file", () => {
  it("says of columns, sheets and the whole survey what it is read as, and where it says so", () => {
    const text = [
      "language: de",
      "sheets:",
      '  "Halle 1": { headingRows: [3, 20], decimalSign: comma }',
      "  Legende: ignore",
      "columns:",
      '  - { heading: "Loch", fact: hole_depth, unit: Zoll }',
      '  - { heading: "Art", column: F, fact: mounting_method, values: { "B": tapped-hole } }',
      "  - { column: H, fact: ignore }",
    ].join("\n");
    const reading = readColumnFile({ path: "c.yaml", text });
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const { columns, language, sheets } = reading.columns;
    expect(language).toEqual({ value: "de", by: "column file c.yaml line 1" });
    expect(sheets.map(({ name, leftOut }) => [name, leftOut])).toEqual([
      ["Halle 1", false],
      ["Legende", true],
    ]);
    expect(sheets[0]?.headingRows).toEqual({ value: [3, 20], by: "column file c.yaml line 3" });
    expect(columns.map(({ heading, letters, fact, unit, by }) => [heading, letters, fact, unit, by])).toEqual([
      ["Loch", null, "hole_depth", "in", "column file c.yaml line 6"],
      ["Art", "F", "mounting_method", null, "column file c.yaml line 7"],
      [null, "H", null, null, "column file c.yaml line 8"],
    ]);
    expect(columns[1]?.values).toEqual(new Map([["B", "tapped-hole"]]));
    expect(reading.columns.digest).toMatch(/^[0-9a-f]{64}$/);
  });

  it.each([
    ["an unknown fact", 'columns: [{ heading: "Loch", fact: hole_depht }]', "1:36 unknown-fact"],
    [
      "a unit of another dimension",
      'columns: [{ heading: "Loch", fact: hole_depth, unit: Nm }]',
      "1:54 wrong-dimension",
    ],
    ["a unit that nobody knows", 'columns: [{ heading: "Loch", fact: hole_depth, unit: ell }]', "1:54 unknown-unit"],
    ["a unit of a fact without one", 'columns: [{ heading: "Art", fact: mounting_method, unit: mm }]', "1:58 no-unit"],
    ["a column that is not named", "columns: [{ fact: hole_depth }]", "1:11 no-column"],
    ["letters that are none", "columns: [{ column: f1, fact: hole_depth }]", "1:21 bad-form"],
    ["an unknown language", "language: it", "1:11 unknown-language"],
    ["an unknown decimal sign", 'decimalSign: ","', "1:14 unknown-decimal-sign"],
    ["an unknown key", "colums: []", "1:1 unknown-key"],
    ["a heading without quotes", "columns: [{ heading: Loch, fact: hole_depth }]", "1:22 no-quotes"],
    ["an alias", 'columns: [{ heading: "a", fact: *x }]', "1:33 alias"],
    ["no row of headings", "headingRows: []", "1:14 list-too-short"],
    ["row 0", "headingRows: [0]", "1:15 wrong-form"],
    [
      "an unknown choice",
      'columns: [{ heading: "a", fact: mounting_method, values: { "B": taped-hole } }]',
      "1:65 unknown-choice",
    ],
    ["words of a quantity", 'columns: [{ heading: "a", fact: hole_depth, values: { "B": deep } }]', "1:60 no-choices"],
    ["a unit of a column that is not read", 'columns: [{ heading: "a", fact: ignore, unit: mm }]', "1:41 not-needed"],
    ["a sheet that is named twice", "sheets: { Halle: ignore, HALLE: ignore }", "1:26 said-twice"],
    ["nothing", "", "1:1 empty-file"],
  ])("is refused with %s", (_name, text, mistake) => {
    expect(mistakes(text)).toEqual([mistake]);
  });

  it("is refused with a heading that is named twice, unless letters tell the two apart", () => {
    const first = '  - { heading: "Wert", fact: hole_depth }';
    const head = `columns:\n${first}\n`;
    expect(mistakes(`${head}  - { heading: "WERT", fact: thread_depth }`)).toEqual(["3:5 said-twice"]);
    expect(sentence(`${head}  - { heading: "WERT", fact: thread_depth }`)).toContain("named in line 2 already");
    expect(mistakes(`${head}  - { heading: "Wert", column: F, fact: thread_depth }`)).toEqual([]);
  });

  it("says what was probably meant", () => {
    expect(sentence('columns: [{ heading: "Loch", fact: hole_depht }]')).toContain('did you mean "hole_depth"?');
    expect(sentence('columns: [{ heading: "Loch", fact: hole_depth, unit: Nm }]')).toContain(
      "is a length; write one such as mm",
    );
  });

  it("may be left empty where a draft is still to be filled in", () => {
    expect(mistakes("sheets:\n  Halle 3:\n    columns:\n  Legende:\n")).toEqual([]);
  });
});

describe("an option for one column", () => {
  it.each([
    ["Loch=hole_depth", ["Loch", "hole_depth", null]],
    ["Loch = hole_depth in", ["Loch", "hole_depth", "in"]],
    ["a=b=speed_reference", ["a=b", "speed_reference", null]],
    ["Md=target_torque ft lb", ["Md", "target_torque", "ft·lbf"]],
    ["Bemerkung=ignore", ["Bemerkung", null, null]],
  ])("reads %s", (text, expected) => {
    const option = columnOption(text);
    if (!option.ok) throw new Error(option.text);
    expect([option.word.heading, option.word.fact, option.word.unit]).toEqual(expected);
  });

  it.each([
    ["Loch", /write it as HEADING=fact/],
    ["=hole_depth", /write it as HEADING=fact/],
    ["Loch=", /write it as HEADING=fact/],
    ["Loch=ignore mm", /write it as HEADING=fact/],
    ["Loch=hole_depht", /did you mean "hole_depth"/],
    ["Loch=model.thread_depth_min", /no fact that surveys hold/],
    ["Loch=hole_depth Nm", /is a unit of torque/],
    ["Loch=mounting_method mm", /has no unit/],
  ])("refuses %s", (text, sentenceLike) => {
    expect(columnOption(text)).toMatchObject({ ok: false, text: expect.stringMatching(sentenceLike) });
  });
});
