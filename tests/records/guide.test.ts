import { describe, expect, it } from "vitest";
import type { Survey } from "../../src/records/index.js";
import { guideOf } from "../tools/guide.js";
import { plainFacts, surveyOfCsv, surveyOfWorkbook } from "../tools/survey-of.js";

const HEAD = "Point;Machine;Bore;Speed\n";

function why(survey: Survey, column: string): string {
  return survey.columns.find((one) => one.column === column)?.why ?? "(no such column)";
}

function missed(survey: Survey): readonly string[] {
  return survey.problems.filter(({ code }) => code === "not-in-survey").map(({ text }) => text);
}

describe("what a person settles comes before headings and evidence", () => {
  it("reads a column for the fact and in the unit that the column file says, and says where it stands", async () => {
    const guide = guideOf('columns:\n  - { heading: "BORE", fact: hole_depth, unit: in }');
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;0.5;1480\n`, null, guide);
    expect(plainFacts(survey, "hole_depth", "nominal_speed")).toEqual([[12.7, 1480]]);
    expect(why(survey, "C")).toMatch(/^column file c\.yaml line 2/);
    expect(survey.columns[2]).toMatchObject({ facts: ["hole_depth"], unit: "in" });
    expect(why(survey, "D")).toContain("heading listed");
  });

  it("reads a heading that is listed for something else as it is told", async () => {
    const guide = guideOf('columns: [{ heading: "Speed", fact: highest_speed, unit: Hz }]');
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;1;40\n`, null, guide);
    expect(plainFacts(survey, "highest_speed", "nominal_speed")).toEqual([[2400, "(no fact)"]]);
  });

  it("takes the unit from the heading where the column file names none, and finds a heading without its unit", async () => {
    const guide = guideOf('columns: [{ heading: "Bore", fact: hole_depth }]');
    const survey = await surveyOfCsv("Point;Machine;Bore [cm];Speed\nP1;Pump;1.5;1480\n", null, guide);
    expect(plainFacts(survey, "hole_depth")).toEqual([[15]]);
  });

  it("leaves a column out without a remark, and reads one that has no heading", async () => {
    const guide = guideOf('columns:\n  - { heading: "Speed", fact: ignore }\n  - { column: E, fact: thread_depth }');
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;x;1480;9.5\n`, null, guide);
    expect(plainFacts(survey, "nominal_speed", "thread_depth")).toEqual([["(no fact)", 9.5]]);
    expect(why(survey, "D")).toContain("left out by column file c.yaml line 2");
    expect(survey.problems.filter(({ code, cell }) => code === "unknown-heading" && cell !== "C1")).toEqual([]);
  });

  it("tells headings apart that repeat, by their letters", async () => {
    const guide = guideOf(
      'columns:\n  - { heading: "depth", column: C, fact: hole_depth }\n  - { heading: "depth", column: D, fact: thread_depth }',
    );
    const survey = await surveyOfCsv("Point;Machine;Depth;Depth\nP1;Pump;16;9\n", null, guide);
    expect(plainFacts(survey, "hole_depth", "thread_depth")).toEqual([[16, 9]]);
  });

  it("compares two columns that it reads for one fact, cell by cell", async () => {
    const guide = guideOf('columns: [{ heading: "Bore", fact: hole_depth }, { heading: "Speed", fact: hole_depth }]');
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;16;16\nP2;Pump;16;17\nP3;Pump;;17\n`, null, guide);
    expect(plainFacts(survey, "hole_depth")).toEqual([[16], ["(conflicting)"], [17]]);
    expect(survey.problems.filter(({ code }) => code === "conflicting").map(({ text }) => text)).toEqual([
      "cells C3 and D3 contradict each other; correct the wrong one",
    ]);
  });

  it.each([
    ["language: en", 1485],
    ["language: de", 1.485],
    ["decimalSign: point", 1485],
    ["decimalSign: comma", 1.485],
    ["language: en\ndecimalSign: comma", 1.485],
    ['columns: [{ heading: "Bore", fact: hole_depth, decimalSign: comma }]', 1.485],
    ['columns: [{ heading: "Bore", fact: hole_depth, language: en }]', 1485],
  ])("reads 1,485 by %s", async (text, value) => {
    const columns = text.includes("columns") ? "" : '\ncolumns: [{ heading: "Bore", fact: distance_to_bearing }]';
    const survey = await surveyOfCsv(
      `${HEAD}P1;Pump;1,485;\n`,
      null,
      guideOf(`${text.replace("hole_depth", "distance_to_bearing")}${columns}`),
    );
    expect(plainFacts(survey, "distance_to_bearing")).toEqual([[value]]);
  });

  it("believes a decimal sign that it is told, though speeds then have three decimals", async () => {
    const rows = `${HEAD}P1;Pump;1;1,485\nP2;Pump;1;2,970\n`;
    const asked = await surveyOfCsv(rows, null, guideOf("language: de"));
    expect(plainFacts(asked, "nominal_speed")).toEqual([["(unreadable)"], ["(unreadable)"]]);
    const told = await surveyOfCsv(rows, null, guideOf("language: de\ndecimalSign: point"));
    expect(plainFacts(told, "nominal_speed")).toEqual([[1485], [2970]]);
    const comma = await surveyOfCsv(rows, null, guideOf("decimalSign: comma"));
    expect(plainFacts(comma, "nominal_speed")).toEqual([[1.485], [2.97]]);
  });

  it("says by what the language and the decimal sign are settled", async () => {
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;1;1480\n`, null, guideOf("language: fr\ndecimalSign: comma"));
    expect(survey.sheets[0]).toMatchObject({ language: "fr", languageWhy: "column file c.yaml line 1" });
    expect(why(survey, "D")).toContain("numbers: decimal comma by column file c.yaml line 2");
  });

  it("puts the command line before the sheet, and the sheet before the whole file", async () => {
    const file = [
      'columns: [{ heading: "Bore", fact: hole_depth }, { heading: "Speed", fact: ignore }]',
      'sheets: { One: { columns: [{ heading: "Bore", fact: thread_depth }], language: es } }',
      "language: de",
    ].join("\n");
    const build = (names: readonly string[]) => (workbook: import("exceljs").Workbook) => {
      for (const name of names)
        workbook.addWorksheet(name).addRows([
          ["Point", "Machine", "Bore", "Speed"],
          [`P ${name}`, "Pump", 12, 900],
        ]);
    };
    const survey = await surveyOfWorkbook(build(["One", "Two"]), null, guideOf(file));
    expect(plainFacts(survey, "thread_depth", "hole_depth", "nominal_speed")).toEqual([
      [12, "(no fact)", "(no fact)"],
      ["(no fact)", 12, "(no fact)"],
    ]);
    expect(survey.sheets.map(({ language }) => language)).toEqual(["es", "de"]);
    const options = { column: ["bore=flat_diameter"], language: { value: "fr", by: "option --language" } } as const;
    const over = await surveyOfWorkbook(
      build(["One", "Two"]),
      null,
      guideOf(file, { ...options, column: [...options.column] }),
    );
    expect(plainFacts(over, "flat_diameter", "thread_depth", "hole_depth")).toEqual([
      [12, "(no fact)", "(no fact)"],
      [12, "(no fact)", "(no fact)"],
    ]);
    expect(over.sheets.map(({ languageWhy }) => languageWhy)).toEqual(["option --language", "option --language"]);
  });

  it("leaves a sheet out that it is told to", async () => {
    const survey = await surveyOfWorkbook(
      (workbook) => {
        for (const name of ["One", "Two"])
          workbook.addWorksheet(name).addRows([
            ["Point", "Machine"],
            [name, "Pump"],
          ]);
      },
      null,
      guideOf("sheets: { two: ignore }"),
    );
    expect(survey.records.map(({ sheet }) => sheet)).toEqual(["One"]);
    expect(survey.sheets[1]).toMatchObject({ used: false, why: "left out by column file c.yaml line 1" });
  });

  it("finds the row of headings by the headings that it names, or by its number", async () => {
    const text = "Werk Nord;;\nStelle;Ding;Loch\nK 1;Mühle;16\n";
    const columns = 'columns: [{ heading: "Ding", fact: machine_name }, { heading: "Loch", fact: hole_depth }]';
    const found = await surveyOfCsv(text, null, guideOf(columns));
    expect(found.sheets[0]?.headingRows).toEqual([2]);
    expect(plainFacts(found, "machine_name", "hole_depth")).toEqual([["Mühle", 16]]);
    const numbered = await surveyOfCsv(text, null, guideOf(`headingRows: [2]\n${columns}`));
    expect(numbered.sheets[0]?.why).toBe("headings in row 2, by column file c.yaml line 1");
    expect(plainFacts(numbered, "hole_depth")).toEqual([[16]]);
  });

  it("gives words of a column their meaning, whole cells alone, also marks for nothing", async () => {
    const guide = guideOf(
      'columns:\n  - { heading: "Bore", fact: mounting_method, values: { "Kl. 1": tapped-hole, "-": adhesive-pad } }\n' +
        '  - { heading: "Speed", fact: variable_speed, values: { "starr": no } }',
    );
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;kl.  1;STARR\nP2;Pump;-;VFD\nP3;Pump;Kl. 1 neu;\n`, null, guide);
    expect(plainFacts(survey, "mounting_method", "variable_speed")).toEqual([
      ["tapped-hole", "no"],
      ["adhesive-pad", "yes"],
      ["(unreadable)", "(missing)"],
    ]);
  });
});

describe("what a person names and the survey does not have", () => {
  it("is reported with what was probably meant", async () => {
    const file = [
      'columns: [{ heading: "Boer", fact: hole_depth }, { column: Q, fact: thread_depth }]',
      'sheets: { "Sheet two": { language: de } }',
      "headingRows: [1, 40]",
    ].join("\n");
    const survey = await surveyOfCsv(`${HEAD}P1;Pump;1;1480\n`, null, guideOf(file, { column: ["Sped=ignore"] }));
    expect(missed(survey)).toEqual([
      'option --column names the heading "Sped", which the survey does not have; did you mean "Speed"?',
      'column file c.yaml line 2 names the sheet "Sheet two", which the survey does not have',
      'column file c.yaml line 1 names the heading "Boer", which the survey does not have; did you mean "Bore"?',
      "column file c.yaml line 1 names column Q, which the survey does not have",
      "column file c.yaml line 3 names row 40 as a row of headings, and nothing stands in it; headings are looked for as usual",
    ]);
  });

  it("is silent where everything was found", async () => {
    const survey = await surveyOfCsv(
      `${HEAD}P1;Pump;1;1480\n`,
      null,
      guideOf('columns: [{ heading: "Bore", fact: hole_depth }]'),
    );
    expect(missed(survey)).toEqual([]);
  });
});
