import { describe, expect, it } from "vitest";
import { findingsOf, mappingOf, mappingText, pointsMapping } from "./made-mapping.js";

const GOOD = `# comment
mapping: trial
version: "1"
title: "a trial"
form: { separator: semicolon, days: DD.MM.YYYY, whenEmpty: { clear: CLEAR } }
targets:
  - target: machines
    rows: { one: machine, per: [machine, { by: plant_area, whenEmpty: together }] }
    columns:
      - { heading: "Machine", field: machine, key: true }
  - target: points
    file: "{asOf}-points-{part}.csv"
    rowLimit: 100
    form: { separator: tab }
    where: { verdicts: [pass], rulesDoNotSay: { point-twice: [fail], seat-diameter: [warn, undecided] }, facts: { criticality: [A, B], has_standby: [true] } }
    columns:
      - { heading: "Id", field: id, key: true }
      - { heading: "Machine", field: machine, type: code, references: machines }
      - { heading: "Depth", fact: hole_depth, unit: cm, type: number, takes: lowest, decimals: 2 }
      - { heading: "Day", field: asOf, type: date, whenEmpty: blank }
`;

/** The good file with one line of it replaced. */
function withLine(line: number, text: string): string {
  return GOOD.split("\n")
    .map((one, index) => (index + 1 === line ? text : one))
    .join("\n");
}

describe("a mapping file", () => {
  it("says which files are made, with columns, form and filter", async () => {
    const { id, version, digest, targets } = await mappingOf(GOOD);
    expect({ id, version }).toEqual({ id: "trial", version: "1" });
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    const [machines, points] = targets;
    expect(machines).toMatchObject({
      number: 1,
      file: "{number}-{target}.csv",
      rowLimit: null,
      form: { kind: "csv", encoding: "utf-8", separator: "semicolon", lineEnd: "crlf", days: "DD.MM.YYYY" },
      at: { file: "mapping.yaml", line: 7, column: 5 },
    });
    expect(machines?.columns[0]).toMatchObject({ type: "code", key: true, required: true });
    expect(points?.form).toMatchObject({ separator: "tab", whenEmpty: { clear: "CLEAR" } });
    expect(points?.filter.facts).toEqual(
      new Map<string, unknown>([
        ["criticality", ["A", "B"]],
        ["has_standby", [true]],
      ]),
    );
    expect(points?.columns[2]).toMatchObject({
      takes: "lowest",
      decimals: 2,
      source: { name: { unit: { id: "cm" } } },
    });
    expect(points?.columns[3]).toMatchObject({ whenEmpty: "blank", days: "DD.MM.YYYY" });
  });

  it("of a workbook has no decimal comma and no separator", async () => {
    const [target] = (
      await mappingOf(
        pointsMapping(
          [{ heading: "A", field: "id" }],
          { file: "a.xlsx" },
          { form: { decimalSign: "comma", encoding: "windows-1252" } },
        ),
      )
    ).targets;
    expect(target?.form).toMatchObject({ kind: "xlsx", decimalSign: "point", encoding: "utf-8" });
  });
});

describe("a mistake in a mapping file is named with its place:", () => {
  it.each<readonly [what: string, line: number, text: string, finding: string]>([
    ["an unknown key", 5, "form: { seperator: comma }", "5:9 unknown-key"],
    ["an unknown separator", 5, "form: { separator: dot }", "5:20 unknown-separator"],
    ["a day pattern that no metadata can describe", 5, "form: { days: YY.MM.DD }", "5:15 unknown-day-pattern"],
    ["an unknown field", 10, '      - { heading: "Machine", field: machin, key: true }', "10:38 unknown-field"],
    ["an unknown fact", 19, '      - { heading: "Depth", fact: hole_dept }', "19:35 unknown-fact"],
    ["a unit of something else", 19, '      - { heading: "Depth", fact: hole_depth, unit: V }', "19:53 unknown-unit"],
    ["a unit of a choice", 19, '      - { heading: "Seat", fact: criticality, unit: mm }', "19:53 no-unit"],
    ["a unit without a fact", 19, '      - { heading: "M", field: machine, unit: mm }', "19:41 no-unit"],
    ["two sources", 19, '      - { heading: "M", field: machine, constant: "a" }', "19:9 one-source"],
    ["no source", 19, '      - { heading: "M" }', "19:9 one-source"],
    ["a template without an end", 19, '      - { heading: "M", template: "{machine" }', "19:35 bad-template"],
    ["an unknown name in a template", 19, '      - { heading: "M", template: "{machina}" }', "19:35 bad-template"],
    ["a name that every object has", 19, '      - { heading: "M", template: "{toString}" }', "19:35 bad-template"],
    ["another, to group by", 8, "    rows: { one: machine, per: [constructor] }", "8:33 unknown-name"],
    ["each on rows of points", 19, '      - { heading: "M", each: "{machine}" }', "19:25 not-grouped"],
    ["join without each", 19, '      - { heading: "M", field: machine, join: ", " }', "19:41 nothing-to-join"],
    ["a text as a number", 19, '      - { heading: "M", field: machine, type: number }', "19:47 wrong-kind"],
    ["a text as a day", 19, '      - { heading: "M", field: machine, type: date }', "19:47 wrong-kind"],
    ["decimals of a text", 19, '      - { heading: "M", field: machine, decimals: 1 }', "19:41 no-number"],
    [
      "a key that is a text",
      19,
      '      - { heading: "M", field: machine, key: true, type: text }',
      "19:58 key-of-text",
    ],
    [
      "a code that may be cut",
      19,
      '      - { heading: "M", field: machine, type: code, length: { most: 8, counted: characters, tooLong: shorten } }',
      "19:102 never-cut",
    ],
    ["characters of a text", 19, '      - { heading: "M", field: machine, characters: [upper] }', "19:41 no-code"],
    [
      "an unknown class of characters",
      19,
      '      - { heading: "M", field: machine, type: code, characters: [uper] }',
      "19:66 unknown-class",
    ],
    [
      "a list without otherwise",
      19,
      '      - { heading: "M", field: verdict, values: { pass: "1" } }',
      "19:41 no-otherwise",
    ],
    [
      "a word that the source does not have",
      19,
      '      - { heading: "M", field: verdict, values: { pas: "1" }, otherwise: stop }',
      "19:51 unknown-word",
    ],
    [
      "otherwise something else",
      19,
      '      - { heading: "M", field: verdict, values: { pass: "1" }, otherwise: blank }',
      "19:75 unknown-otherwise",
    ],
    [
      "a value longer than its column",
      19,
      '      - { heading: "M", field: verdict, values: { pass: "ok" }, otherwise: stop, length: { most: 1, counted: characters, tooLong: stop } }',
      "19:57 too-long",
    ],
    ["a code that looks like a formula", 19, '      - { heading: "M", constant: "=a", type: code }', "19:35 formula"],
    ["a heading that stands twice", 19, '      - { heading: "Id", constant: "a" }', "19:20 heading-twice"],
    [
      "a reference to what comes later",
      10,
      '      - { heading: "M", field: machine, key: true, references: points }',
      "10:64 unknown-target",
    ],
    ["a file in a folder", 12, '    file: "../points-{part}.csv"', "12:11 bad-file-name"],
    ["a name that Windows keeps", 12, '    file: "nul.{part}.csv"', "12:11 bad-file-name"],
    ["a name without part", 12, '    file: "points.csv"', "12:11 bad-file-name"],
    ["a name with an unknown part", 12, '    file: "{day}-{part}.csv"', "12:11 bad-file-name"],
    ["another ending", 12, '    file: "points-{part}.txt"', "12:11 bad-file-name"],
    ["an unknown rule", 15, "    where: { rulesSay: { hole-dept: [fail] } }", "15:26 unknown-rule"],
    ["an unknown outcome", 15, "    where: { rulesSay: { hole-depth: [failed] } }", "15:39 unknown-outcome"],
    ["a filter by a number", 15, '    where: { facts: { hole_depth: ["9 mm"] } }', "15:23 number-in-filter"],
    ["a filter by an unknown choice", 15, "    where: { facts: { criticality: [D] } }", "15:37 unknown-choice"],
    ["a filter by an unknown fact", 15, "    where: { facts: { critical: [A] } }", "15:23 unknown-fact"],
    ["grouping by what is not there", 8, "    rows: { one: machine, per: [machin] }", "8:33 unknown-name"],
    ["the word point for a group", 8, "    rows: { one: point, per: [machine] }", "8:18 taken-word"],
    ["a target twice", 11, "  - target: machines", "11:13 target-twice"],
    [
      "a separator that replaces itself",
      14,
      '    form: { separatorInValues: { replaceBy: ";" } }',
      "14:11 separator-again",
    ],
    ["code", 3, 'version: !!js/function "function () {}"', "3:10 tag"],
  ])("%s", async (_, line, text, finding) => {
    expect(await findingsOf(withLine(line, text))).toEqual([finding]);
  });

  it("two files of one name on some system", async () => {
    const column = { heading: "A", field: "id" };
    const text = mappingText([
      { target: "a", file: "points.csv", columns: [column] },
      { target: "b", file: "Points.csv", columns: [column] },
    ]);
    expect((await findingsOf(text)).map((finding) => finding.replace(/^\S+ /, ""))).toEqual(["file-twice"]);
  });

  it("a decimal comma between commas that may stand in no value", async () => {
    const form = { decimalSign: "comma", separatorInValues: "stop" };
    const findings = await findingsOf(pointsMapping([{ heading: "A", field: "id" }], { form }));
    expect(findings.map((finding) => finding.replace(/^\S+ /, ""))).toEqual(["comma-twice"]);
  });

  it("a heading that the encoding does not have", async () => {
    const text = pointsMapping([{ heading: "Głębokość", field: "id" }], {}, { form: { encoding: "windows-1252" } });
    expect((await findingsOf(text)).map((finding) => finding.replace(/^\S+ /, ""))).toEqual(["not-in-encoding"]);
  });
});

describe("the sample rows of a mapping", () => {
  const target = {
    target: "points",
    columns: [
      { heading: "Verdict", field: "verdict", values: { pass: "1" }, otherwise: "stop" },
      { heading: "Depth", fact: "hole_depth", unit: "mm", type: "number" },
    ],
  };
  const check = (more: object): string =>
    mappingText([target], { checks: [{ name: "a row", target: "points", given: {}, ...more }] });
  const codes = async (more: object): Promise<readonly string[]> =>
    (await findingsOf(check(more))).map((finding) => finding.replace(/^\S+ /, ""));

  it("are tried when the file is read", async () => {
    expect(
      await codes({ given: { verdict: "pass", hole_depth: "1.5 cm" }, expect: { Verdict: "1", Depth: "15" } }),
    ).toEqual([]);
    expect((await mappingOf(check({ expect: { Depth: null } }))).checks).toBe(1);
  });

  it("refuse a code with a blank at an end, which a survey could hardly bring", async () => {
    const columns = [{ heading: "T", field: "assetTag", key: true }];
    const given = (tag: string): string =>
      mappingText([{ target: "points", columns }], {
        checks: [{ name: "a row", target: "points", given: { assetTag: tag }, refuses: ["T"] }],
      });
    for (const tag of ["A ", " A", "A\nB"]) expect(await findingsOf(given(tag)), tag).toEqual([]);
    expect(await findingsOf(given("A B"))).toHaveLength(1);
  });

  it.each<readonly [object, string]>([
    [{ given: { verdict: "pass" }, expect: { Verdict: "2" } }, "not-as-expected"],
    [{ given: { verdict: "warn" }, expect: { Verdict: "2" } }, "refused"],
    [{ given: { verdict: "pass" }, refuses: ["Verdict"] }, "not-refused"],
    [{ given: { verdict: "pas" } }, "wrong-kind"],
    [{ given: { asOf: "2026-02-30" } }, "wrong-kind"],
    [{ given: { hole_depth: "15" } }, "no-unit"],
    [{ given: { hole_dept: "15 mm" } }, "unknown-name"],
    [{ given: {}, expect: { Verdikt: "1" } }, "unknown-heading"],
    [{ target: "point" }, "unknown-target"],
    [{ given: [{}, {}] }, "one-point"],
  ])("%j is a finding", async (more, code) => {
    expect(await codes(more)).toEqual([code]);
  });
});
