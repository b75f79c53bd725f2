import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { screenFiles } from "../../src/index.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const KNOWN = [
  "samples/survey.xlsx",
  "samples/survey.csv",
  "tests/data/surveys/dunkelforst.xlsx",
  "tests/data/surveys/quillmoor.xlsx",
  "tests/data/surveys/tallgrass.csv",
];
const ODD = projectPath("tests/data/columns/nebelkuhle.csv");

function folder(): string {
  return mkdtempSync(join(tmpdir(), "columns-"));
}

function written(text: string, name = "columns.yaml"): string {
  const path = join(folder(), name);
  writeFileSync(path, text);
  return path;
}

interface ScreenedPoints {
  readonly digest: string;
  readonly reading: {
    readonly columnFile: unknown;
    readonly wordFiles: readonly unknown[];
    readonly options: readonly string[];
  };
  readonly surveys: readonly {
    readonly columns: readonly {
      readonly column: string;
      readonly facts: readonly string[];
      readonly unit: string | null;
      readonly why: string;
    }[];
    readonly sheets: readonly { readonly language: string | null; readonly languageWhy: string }[];
    readonly problems: readonly { readonly code: string; readonly text: string }[];
  }[];
  readonly points: readonly { readonly point: string | null; readonly verdict: string }[];
}

async function screened(...args: readonly string[]): Promise<ScreenedPoints> {
  const run = await runCommand("screen", ...args, "--json", "--all-findings", "--site", "Nebelkuhle");
  if (run.code !== 0) throw new Error(run.err);
  return JSON.parse(run.out) as ScreenedPoints;
}

/** What a reading gives, without the reasons for it. */
function read({ surveys, points }: ScreenedPoints): unknown {
  const columns = surveys.map((survey) => survey.columns.map(({ column, facts, unit }) => [column, facts, unit]));
  return { columns, points, problems: surveys.map(({ problems }) => problems) };
}

describe("spotface columns", () => {
  it("shows of each column what it is read for, in what unit, why, and how many cells could be read", async () => {
    const run = await runCommand("columns", projectPath("tests/data/surveys/tallgrass.csv"), "--json");
    expect(run.code).toBe(0);
    const { sheets, points } = JSON.parse(run.out);
    expect(points).toBe(36);
    expect(sheets[0].tables[0].columns[9]).toMatchObject({
      letters: "J",
      heading: "Drill depth (in)",
      facts: ["hole_depth"],
      unit: "in",
      decimalSign: "point",
      why: "heading listed",
      counts: { read: 19, unreadable: 0, missing: 17 },
      example: { cell: "J3", text: "0.8" },
    });
  });

  it("shows it to people too, with contradictions, and with what headings nobody knows might mean", async () => {
    const survey = written(
      "Point;Machine;Hole depth;Bohrtiefe mm;Hole depht b\nP1;Pump;16;17;9\nP2;Pump;?;16 bananas;9\n",
      "s.csv",
    );
    const run = await runCommand("columns", survey);
    expect(run.code).toBe(0);
    expect(run.out.replace(/\s+/g, " ")).toContain(
      "! hole depth stands in columns C and D; they are compared cell by cell and contradict each other in 1 row",
    );
    expect(run.out).toMatch(/E "Hole depht b": heading not known; E2 holds "9"; perhaps hole_depth/);
    expect(run.out).toMatch(/D {2}Bohrtiefe mm .* 1 +1 +0 {2}17/);
    for (const line of run.out.split("\n").slice(1)) expect(line.length).toBeLessThanOrEqual(100);
  });

  it.each(KNOWN)("drafts a column file from %s that gives the same reading", async (path) => {
    const survey = projectPath(path);
    const draft = join(folder(), `${basename(path)}.yaml`);
    const run = await runCommand("columns", survey, "--write", draft);
    expect([run.code, run.err]).toEqual([0, `Written: draft of a column file: ${draft}\n`]);
    const plain = await screened(survey);
    const guided = await screened(survey, "--columns", draft);
    expect(read(guided)).toEqual(read(plain));
    const used = guided.surveys.flatMap(({ columns }) => columns.filter(({ facts }) => facts.length > 0));
    expect(used.length).toBeGreaterThan(9);
    for (const { why } of used) expect(why).toContain(`column file ${draft} line `);
    expect(guided.reading.columnFile).toMatchObject({ file: draft });
    expect(guided.digest).not.toBe(plain.digest);
  });

  it("drafts what it was told, with left out columns and sheets, words and letters", async () => {
    const file = written(
      [
        "language: de",
        "columns:",
        '  - { heading: "Wert", column: C, fact: hole_depth, unit: "cm" }',
        '  - { heading: "Wert", column: D, fact: thread_depth }',
        '  - { heading: "Halt", fact: mounting_method, values: { "Bo \\"x\\"": tapped-hole } }',
        '  - { heading: "Rest", fact: ignore }',
      ].join("\n"),
    );
    const survey = written('Messstelle;Maschine;Wert;Wert;Halt;Rest\nK 1;Pumpe;1,6;9,5;"Bo ""x""";a\n', "s.csv");
    const draft = join(folder(), "draft.yaml");
    const run = await runCommand("columns", survey, "--columns", file, "--write", draft);
    expect([run.code, run.err]).toEqual([0, `Written: draft of a column file: ${draft}\n`]);
    const lines = readFileSync(draft, "utf8").split("\n");
    expect(lines.filter((line) => !line.startsWith("#") && !line.trimStart().startsWith("# "))).toEqual([
      "language: de",
      "decimalSign: comma",
      "columns:",
      '  - { heading: "Messstelle", fact: point_id }',
      '  - { heading: "Maschine", fact: machine_name }',
      '  - { heading: "Wert", column: C, fact: hole_depth, unit: "cm" }',
      '  - { heading: "Wert", column: D, fact: thread_depth }',
      '  - { heading: "Halt", fact: mounting_method, values: { "Bo \\"x\\"": tapped-hole } }',
      '  - { heading: "Rest", fact: ignore }',
      "",
    ]);
    expect(read(await screened(survey, "--columns", draft))).toEqual(read(await screened(survey, "--columns", file)));
  });

  it("never writes over a file, nor over what it reads", async () => {
    const draft = written("kept");
    const refused = await runCommand("columns", ODD, "--write", draft);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain("it exists already");
    expect(readFileSync(draft, "utf8")).toBe("kept");
    const over = await runCommand("columns", ODD, "--write", draft, "--columns", draft, "--overwrite");
    expect(over.code).toBe(2);
    expect(readFileSync(draft, "utf8")).toBe("kept");
    const ending = join(folder(), "draft.txt");
    expect((await runCommand("columns", ODD, "--write", ending)).err).toContain("ends in .yaml");
    expect(existsSync(ending)).toBe(false);
  });
});

describe("a survey with headings of its own", () => {
  /** Fills a draft in as a person would: number signs away, facts and units in. */
  function filledIn(draft: string, means: Readonly<Record<string, string>>): string {
    return draft
      .replace(/# (headingRows: \[3\])/, "$1")
      .replace(
        /# (- \{ heading: "([^"]+)", )fact: ignore \}/g,
        (_, start: string, heading: string) => `${start}${means[heading] ?? "fact: ignore"} }`,
      );
  }

  it("is not understood by itself, is drafted, filled in, and screened", async () => {
    const alone = await runCommand("screen", ODD);
    expect(alone.code).toBe(2);
    expect(alone.err).toContain("no heading row and no usable column was found");
    const draft = join(folder(), "draft.yaml");
    const run = await runCommand("columns", ODD, "--write", draft);
    expect(run.code).toBe(1);
    expect(run.out).toContain("row 3 looks most like headings");
    const same = await runCommand("columns", ODD, "--columns", draft);
    expect(same.err).toContain("no points come of this survey");
    writeFileSync(
      draft,
      filledIn(readFileSync(draft, "utf8"), {
        Kürzel: "fact: point_id",
        Ding: "fact: machine_name",
        Touren: 'fact: nominal_speed, unit: "r/min"',
        Stellglied: 'fact: variable_speed, values: { "starr": no }',
        "Geber-Takt": 'fact: speed_reference, values: { "fehlt": none }',
        Grund:
          'fact: surface_material, values: { "Kl. 1": grey-cast-iron, "Kl. 2": carbon-steel, "Kl. 3": sheet-metal }',
        Teller: "fact: flat_diameter, unit: mm",
        Halt: 'fact: mounting_method, values: { "Bolzen": tapped-hole }',
        T1: "fact: hole_depth, unit: mm",
        T2: "fact: thread_depth, unit: mm",
        Md: 'fact: target_torque, unit: "N·m"',
      }),
    );
    const report = await runCommand("screen", ODD, "--columns", draft, "--language", "de");
    expect(report.out.replace(/\s+/g, "")).toContain(`withcolumnfile${draft},--languagede`);
    const { points, surveys } = await screened(ODD, "--columns", draft, "--column", "Klemme=supply_voltage V");
    expect(points.map(({ point, verdict }) => `${point?.split(",")[0]} ${verdict}`)).toEqual([
      "K 1 warn",
      "K 2 warn",
      "K 3 fail",
      "K 4 fail",
      "K 5 fail",
    ]);
    expect(surveys[0]?.columns.map(({ facts }) => facts[0])).toEqual([
      "point_id",
      "machine_name",
      "nominal_speed",
      "variable_speed",
      "speed_reference",
      "surface_material",
      "flat_diameter",
      "mounting_method",
      "hole_depth",
      "thread_depth",
      "target_torque",
      "supply_voltage",
    ]);
    expect(surveys[0]?.problems.map(({ code }) => code)).not.toContain("not-in-survey");
  });
});

describe("options that settle the reading", () => {
  it("come before the evidence, and stand in the result", async () => {
    const survey = written("Point;Machine;Bore;Bearing distance\nP1;Pump;16;1,485\n", "s.csv");
    const args = ["--language", "de", "--decimal", "point", "--column", "Bore=hole_depth mm", "--limit", "rows=50"];
    const { reading, surveys, digest } = await screened(survey, ...args);
    expect(reading).toEqual({
      columnFile: null,
      wordFiles: [],
      options: ["--language de", "--decimal point", "--column Bore=hole_depth mm", "--limit rows=50"],
    });
    expect(surveys[0]?.sheets[0]).toMatchObject({ language: "de", languageWhy: "option --language" });
    expect(surveys[0]?.columns[2]).toMatchObject({
      facts: ["hole_depth"],
      why: expect.stringMatching(/^option --column/),
    });
    expect((await screened(survey)).digest).not.toBe(digest);
  });

  it.each([
    [["--column", "Bore=hole_depht"], /--column: "Bore=hole_depht": .*did you mean "hole_depth"/],
    [["--language", "it"], /language.*Allowed choices are en, de, es, fr/],
    [["--decimal", ","], /decimal.*Allowed choices are point, comma/],
    [["--limit", "row=5"], /--limit: "row=5" names no limit; write name=number with one of file-bytes, /],
    [["--limit", "rows=many"], /--limit: "rows=many" gives no whole number above 0/],
    [["--limit", "columns=65536"], /--limit: "columns=65536": no more than 65535 can be allowed/],
    [["--limit", "rows=0"], /--limit: "rows=0" gives no whole number above 0/],
    [["--columns", "nowhere.yaml"], /nowhere\.yaml:1:1: there is no such file/],
    [["--words", "nowhere.yaml"], /nowhere\.yaml:1:1: there is no such file/],
  ])("are refused where they cannot be meant: %s", async (args, sentence) => {
    for (const command of ["screen", "columns"]) {
      const run = await runCommand(command, projectPath("samples/survey.csv"), ...args);
      expect(run.code).toBe(2);
      expect(run.err.replaceAll("\n", " ")).toMatch(sentence);
    }
  });

  it("are those of the library too", async () => {
    const options = {
      asOf: "2026-11-25",
      column: ["Bore=hole_depth"],
      language: "de",
      reading: { limits: { rows: 50 } },
    } as const;
    const survey = written("Point;Machine;Bore\nP1;Pump;16\n", "s.csv");
    const run = await screenFiles([survey], options);
    if (!run.ok) throw new Error(JSON.stringify(run));
    expect(run.screening.head.surveys[0]?.columns[2]?.facts).toEqual(["hole_depth"]);
    expect(run.screening.head.reading.options).toEqual([
      "--language de",
      "--column Bore=hole_depth",
      "--limit rows=50",
    ]);
    await expect(screenFiles([survey], { column: ["Bore"] })).rejects.toThrow(/HEADING=fact/);
    await expect(screenFiles([survey], { reading: { limits: { rows: -1 } } })).rejects.toThrow(/--reading.*above 0/);
    const broken = await screenFiles([survey], { columns: written("language: xx") });
    expect(broken).toMatchObject({ ok: false, findings: [{ code: "unknown-language", line: 1 }] });
  });
});
