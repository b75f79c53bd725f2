import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { screenFiles } from "../../src/cli/screen-files.js";
import { type CommandRun, runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const SAMPLE = projectPath("samples/survey.xlsx");
const DEVIATIONS = projectPath("samples/deviations.yaml");
const RUN = ["--site-file", projectPath("samples/site.yaml"), "--as-of", "2026-11-25"] as const;
const ROWS = "Point ID;Site;Flat diameter (mm)\nP-1;North;28\nP-1;South;28\n";

let folder = "";
const here = (name: string): string => join(folder, name);

/** Everything that the run of the sample wrote. */
let written: CommandRun;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "spotface-deviations-"));
  writeFileSync(here("rows.csv"), ROWS);
  written = await runCommand("screen", SAMPLE, ...RUN, "--deviations", DEVIATIONS, "--out", here("out"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function tableOf(name: string): readonly Readonly<Record<string, string>>[] {
  return parse(readFileSync(here(name), "utf8"), { columns: true, bom: true });
}

/** The texts of a sheet, row by row. */
async function textsOf(path: string, sheet: string): Promise<readonly (readonly string[])[]> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(path);
  const rows: string[][] = [];
  workbook.getWorksheet(sheet)?.eachRow({ includeEmpty: true }, (row) => {
    const cells: string[] = [];
    row.eachCell({ includeEmpty: true }, (cell) => cells.push(cell.text));
    rows.push(cells);
  });
  return rows;
}

function deviationFile(point: string, more = ""): string {
  const file = here("made.yaml");
  const rest = 'outcome: fail, reason: "a trial", acceptedBy: "N. Nemo, engineer", from: 2026-01-01, until: 2027-01-01';
  writeFileSync(file, `deviations:\n  - { point: ${JSON.stringify(point)}, rule: seat-diameter, ${rest} }\n${more}`);
  return file;
}

describe("screen --deviations", () => {
  it("reports how many there are of each kind, and those to act on first", () => {
    expect(written).toMatchObject({ code: 0, err: "" });
    const report = written.out.replace(/\s+/g, " ");
    expect(report).toContain("3 in use, 1 not yet in force, 1 with nothing to accept, 1 of a point that is not there");
    expect(report).toContain(
      "1 expired, 1 ending within 30 days 3 points with everything accepted that speaks against them",
    );
    const order = [
      "min-speed: ended on 2026-11-01, and the finding stands again: ■ fail (B. Marlow, head of maintenance;",
      "seat-diameter: covers nothing: accepted as undecided, and now fail",
      "thread-depth: covers nothing: accepted under a limit of 8 mm, and the one that speaks now is 9 mm",
      "speed-reference: ends on 2026-12-15",
      "seat-material: the rule says nothing against the point",
      "VM3-99, hole-depth: no such point in these surveys",
      "of those that do not pass, accepted: 3",
    ].map((text) => report.indexOf(text));
    expect(Math.min(...order)).toBeGreaterThan(0);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    for (const line of written.out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("names in the tables what is accepted, by whom, until when and why", () => {
    const points = tableOf("out/survey.points.csv").filter((row) => row.accepted !== "");
    expect(
      points.map(({ point, verdict, accepted, "accepted until": until }) => [point, verdict, accepted, until]),
    ).toEqual([
      ["P-1101, pump, non drive end, vertical", "fail", "yes", "2027-10-01"],
      ["A-1203, motor, drive end, horizontal", "warn", "yes", "2026-12-15"],
      ["P-2201, pump, non drive end, horizontal", "warn", "yes", "2027-04-01"],
    ]);
    const findings = tableOf("out/survey.findings.csv").filter((row) => row.accepted === "yes");
    expect(findings.map((row) => [row.rule, row.outcome, row["accepted by"], row["accepted because"]])).toEqual([
      [
        "seat-diameter",
        "fail",
        "A. Quill, vibration engineer",
        "the boss is no wider, and the resonance was measured with the sensor in place",
      ],
      ["speed-reference", "warn", "B. Marlow, head of maintenance", "the drive is replaced in the outage of December"],
      [
        "tightening-torque",
        "undecided",
        "A. Quill, vibration engineer",
        "the fitter sets the torque by the sheet of the sensor and records it",
      ],
    ]);
  });

  it("says so beside the points of the screened workbook, and lists all on its summary", async () => {
    const rows = await textsOf(here("out/survey.screened.xlsx"), "Halls 1 and 2");
    const heading = rows.find((row) => row.includes("leading reason")) ?? [];
    const [verdict, accepted] = [heading.indexOf("verdict"), heading.indexOf("accepted")];
    expect(accepted).toBe(verdict + 5);
    const said = rows.filter((row) => row[verdict]?.endsWith(", accepted"));
    expect(said.map((row) => row[verdict])).toEqual(["■ fail, accepted", "▲ warn, accepted", "▲ warn, accepted"]);
    expect(said[0]?.[accepted]).toBe(
      "seat-diameter: accepted until 2027-10-01 by A. Quill, vibration engineer, because the boss is no wider, and the resonance was measured with the sensor in place",
    );
    const summary = (await textsOf(here("out/survey.screened.xlsx"), "Summary")).map((row) => row.join("|"));
    const start = summary.findIndex((row) => row.startsWith("accepted deviations|"));
    expect(summary.slice(start + 1, start + 9).map((row) => row.split("|").slice(1, 3))).toContainEqual([
      "expired",
      "1",
    ]);
    expect(
      summary.filter((row) => /^VM3-99\n|^F-2101, motor, non drive end, horizontal\nmin-speed/.test(row)),
    ).toHaveLength(2);
  });

  it("says the same in a workbook made anew, and keeps quiet where none were handed in", async () => {
    const csv = here("few.csv");
    writeFileSync(csv, "Point ID;Flat diameter (mm)\nP-1;28\n");
    const headingsOf = async (name: string, ...more: readonly string[]): Promise<readonly string[]> => {
      const run = await runCommand(
        "screen",
        csv,
        "--as-of",
        "2026-06-01",
        "--site",
        "x",
        "--workbook",
        here(name),
        ...more,
      );
      expect(run.code).toBe(0);
      const rows = await textsOf(here(name), "few");
      expect(rows[1]?.some((text) => text.startsWith("seat-diameter: accepted until"))).toBe(more.length > 0);
      return rows[0] ?? [];
    };
    expect(await headingsOf("with.xlsx", "--deviations", deviationFile("P-1"))).toContain("accepted");
    expect(await headingsOf("without.xlsx")).not.toContain("accepted");
  });

  it.each([
    ["a file that is not there", ["--deviations", "nowhere.yaml"], "nowhere.yaml"],
    ["days without deviations", ["--ending-within", "10"], "--ending-within: it speaks of accepted deviations"],
    ["days that are no number", ["--deviations", DEVIATIONS, "--ending-within", "soon"], "a whole number of days"],
    ["too many days", ["--deviations", DEVIATIONS, "--ending-within", "4000"], "at most 3650 days"],
  ])("ends before anything is read: %s", async (_name, args, text) => {
    const run = await runCommand("screen", SAMPLE, ...RUN, ...args, "--out", here("none"));
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(text);
    expect(existsSync(here("none"))).toBe(false);
  });

  it("names every mistake with its place, and refuses what nobody can accept", async () => {
    const more =
      '  - { point: P-2, rule: supply-voltage, outcome: fail, reason: "w", acceptedBy: "N. N.", from: 2026-01-01, until: 2026-02-01 }\n';
    const run = await runCommand("screen", here("rows.csv"), "--deviations", deviationFile("P-3", more));
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain('made.yaml:3:25: no deviation from "supply-voltage" is accepted');
    expect(run.err).toContain("the file of deviations has 1 mistake");
  });

  it("ends the run, with nothing written, where a name is that of several points", async () => {
    const args = [here("rows.csv"), "--deviations", deviationFile("P-1"), "--as-of", "2026-06-01"] as const;
    const run = await runCommand("screen", ...args, "--result", here("unclear.json"));
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toMatch(/made\.yaml:2:5: "P-1" is the name of 2 points; write the id .*rows\.csv line 2\)/);
    expect(existsSync(here("unclear.json"))).toBe(false);
    expect(await runCommand("why", ...args, "--point", "2")).toMatchObject({ code: 2, out: "" });
    const { asOf, deviations } = { asOf: "2026-06-01", deviations: here("made.yaml") };
    const called = await screenFiles([here("rows.csv")], { asOf, deviations });
    expect(called).toMatchObject({ ok: false, findings: [{ code: "name-of-several", line: 2 }] });
  });

  it("never writes over the file of deviations", async () => {
    const file = deviationFile("P-9");
    const before = readFileSync(file);
    const run = await runCommand("screen", SAMPLE, ...RUN, "--deviations", file, "--result", file, "--overwrite");
    expect(run.code).toBe(2);
    expect(readFileSync(file)).toEqual(before);
  });
});

describe("why --deviations", () => {
  const why = async (point: string): Promise<string> => {
    const run = await runCommand("why", SAMPLE, ...RUN, "--deviations", DEVIATIONS, "--point", point);
    expect(run).toMatchObject({ code: 0, err: "" });
    return run.out.replace(/\s+/g, " ");
  };

  it("says who accepted a finding, and until when", async () => {
    const text = await why("P-1101, pump, non drive end, vertical");
    expect(text).toContain("row 11 ■ fail, accepted ■ fail, accepted The flat, ground area is wide enough");
    expect(text).toContain("accepted until 2027-10-01 by A. Quill, vibration engineer, because the boss is no wider");
  });

  it("says which deviation covers the finding no more", async () => {
    const text = await why("F-2101, motor, non drive end, horizontal");
    expect(text).toContain(
      "a deviation by B. Marlow, head of maintenance: ended on 2026-11-01, and the finding stands again",
    );
    expect(text).not.toContain(", accepted");
  });
});

describe("screenFiles", () => {
  it("takes deviations, and the days ahead in which their end is told of", async () => {
    const options = { asOf: "2026-11-25", siteFile: projectPath("samples/site.yaml"), deviations: DEVIATIONS };
    const soonOf = async (endingWithin?: number): Promise<number> => {
      const result = await screenFiles([SAMPLE], endingWithin === undefined ? options : { ...options, endingWithin });
      if (!result.ok) throw new Error(JSON.stringify(result));
      return result.screening.head.deviations?.list.filter(({ endsSoon }) => endsSoon).length ?? 0;
    };
    expect([await soonOf(), await soonOf(19), await soonOf(365)]).toEqual([1, 0, 3]);
  });
});
