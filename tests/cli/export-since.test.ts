import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import ExcelJS from "exceljs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { sha256OfBytes } from "../../src/base/index.js";
import { exportFiles } from "../../src/cli/export-files.js";
import { type ExportReceipt, readReceipt } from "../../src/handover/index.js";
import { SITE_BOOK } from "../tools/edited-copy.js";
import { type CommandRun, runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const HEADINGS = ["Point ID", "Asset tag", "Speed (rpm)", "Material", "Flat diameter (mm)"];
type Row = readonly (string | number)[];
const ROWS: readonly Row[] = [
  ["P-1", "M-1", 1480, "cast iron", 40],
  ["P-2", "M-1", 1480, "cast iron", 40],
  ["P-3", "M-2", 990, "cast iron", 40],
  ["P-4", "M-2", 990, "cast iron", 12],
];
const MAPPING = `
mapping: trial
version: "1"
title: "A trial"
targets:
  - target: points
    withdrawn: { column: State, value: withdrawn }
    columns:
      - { heading: Key, field: point, key: true }
      - { heading: Id, field: id, type: code }
      - heading: State
        field: verdict
        values: { pass: suitable, warn: to be looked at, fail: not suitable }
        otherwise: stop
      - { heading: Diameter, fact: flat_diameter, type: number, whenEmpty: { clear: none } }
`;

let folder = "";
const here = (name: string): string => join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-since-"));
  writeFileSync(here("mapping.yaml"), MAPPING);
  survey(ROWS);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function survey(rows: readonly Row[]): void {
  writeFileSync(here("survey.csv"), [HEADINGS, ...rows].map((row) => `${row.join(",")}\n`).join(""));
}

/** The same rows in a workbook, spread over sheets. */
async function workbook(name: string, ...sheets: readonly (readonly Row[])[]): Promise<void> {
  const made = new ExcelJS.Workbook();
  for (const [i, rows] of sheets.entries()) {
    made.addWorksheet(`Area ${sheets.length - i}`).addRows([HEADINGS, ...rows].map((row) => [...row]));
  }
  await made.xlsx.writeFile(here(name));
}

const NORTH = ["--site", "North", "--as-of", "2026-11-25", "--set", "core"];
const SINCE = ["--since", "state.json"];

/** Runs an export into a folder; names of files stand for files of the test's folder. */
async function exported(out: string, since: readonly string[] = [], ...more: readonly string[]): Promise<CommandRun> {
  const [file = "survey.csv", ...options] = more;
  const paths = since.map((word) => (word.startsWith("--") ? word : here(word)));
  return runCommand(
    ...["export", here(file), "--mapping", here("mapping.yaml"), "--out", here(out), ...NORTH, ...paths, ...options],
  );
}

async function accepted(out: string, ...options: readonly string[]): Promise<CommandRun> {
  return runCommand("accept-export", here(`${out}/export-receipt.json`), "--state", here("state.json"), ...options);
}

function rowsIn(out: string): readonly (readonly string[])[] {
  return (parse(readFileSync(here(`${out}/01-points.csv`))) as string[][])
    .slice(1)
    .map(([key = "", , ...rest]) => [key, ...rest]);
}

function receiptIn(out: string): ExportReceipt {
  const reading = readReceipt(readFileSync(here(`${out}/export-receipt.json`), "utf8"));
  if (!reading.ok) throw new Error(reading.problems.join("\n"));
  return reading.stored;
}

const because = (out: string): unknown => receiptIn(out).targets.map(({ rows }) => rows.map((row) => row.because));

describe("spotface export --since", () => {
  it("writes exactly what changed since the last accepted export", async () => {
    expect(await exported("first")).toMatchObject({ code: 0, err: "" });
    expect(rowsIn("first")).toEqual([
      ["P-1", "to be looked at", "40"],
      ["P-2", "to be looked at", "40"],
      ["P-3", "to be looked at", "40"],
      ["P-4", "not suitable", "12"],
    ]);
    expect(readdirSync(here("first"))).toEqual(["01-points.csv", "01-points.csv-metadata.json", "export-receipt.json"]);
    await accepted("first");
    survey([
      ["P-5", "M-3", 990, "cast iron", 40],
      ["P-2", "M-1", 1480, "cast iron", 12],
      ["P-1", "M-1", 1480, "cast iron", 40],
      ["P-4", "M-2", 990, "cast iron", ""],
    ]);
    const run = await exported("second", SINCE);
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out).toMatch(/target +new +changed +withdrawn +not sent\n[- ]*\n? *points +1 +2 +1 +1\n/);
    expect(rowsIn("second")).toEqual([
      ["P-2", "not suitable", "12"],
      ["P-4", "to be looked at", "none"],
      ["P-5", "to be looked at", "40"],
      ["P-3", "withdrawn", "40"],
    ]);
    expect(because("second")).toEqual([[["survey"], ["survey"], [], ["survey"]]]);
    const [row] = receiptIn("second").targets[0]?.rows ?? [];
    expect(row?.changed).toEqual([
      { heading: "State", old: "to be looked at", new: "not suitable" },
      { heading: "Diameter", old: "40", new: "12" },
    ]);
    // Not accepted yet, so told again; accepted, no more.
    await exported("again", SINCE);
    expect(readFileSync(here("again/01-points.csv"))).toEqual(readFileSync(here("second/01-points.csv")));
    await accepted("second");
    await exported("third", SINCE);
    expect(rowsIn("third")).toEqual([]);
  });

  it("has nothing to tell of rows and sheets in another order, and whole exports are the same bytes", async () => {
    await workbook("one.xlsx", ROWS.slice(0, 2), ROWS.slice(2));
    await workbook("other.xlsx", [...ROWS].reverse().slice(0, 3), ROWS.slice(0, 1));
    await exported("one", [], "one.xlsx");
    await exported("other", [], "other.xlsx");
    expect(rowsIn("one")).toHaveLength(4);
    expect(readFileSync(here("other/01-points.csv"))).toEqual(readFileSync(here("one/01-points.csv")));
    await accepted("one");
    await exported("since", SINCE, "other.xlsx");
    expect(rowsIn("since")).toEqual([]);
    expect(receiptIn("since").targets[0]?.counts).toEqual({ new: 0, changed: 0, withdrawn: 0, unchanged: 4 });
  });

  it("gives workbooks of the same parts", async () => {
    writeFileSync(here("mapping.yaml"), MAPPING.replace("target: points", 'target: points\n    file: "points.xlsx"'));
    await exported("one");
    survey([...ROWS].reverse());
    await exported("other");
    expect(readFileSync(here("other/points.xlsx"))).toEqual(readFileSync(here("one/points.xlsx")));
  });

  it("has exactly the rows again that came back", async () => {
    await exported("first");
    writeFileSync(here("errors.csv"), "Line,Key,Message\n3,P-2,locked\n5,P-4,no such state\n");
    await accepted("first", "--refused", here("errors.csv"), "--key", "Key");
    await exported("second", SINCE);
    expect(rowsIn("second").map(([key]) => key)).toEqual(["P-2", "P-4"]);
    expect(because("second")).toEqual([[["refused before"], ["refused before"]]]);
    await accepted("second");
    await exported("third", SINCE);
    expect(rowsIn("third")).toEqual([]);
  });

  it("marks what changed by the day of the limits alone, and by the mapping alone", async () => {
    await exported("first");
    await accepted("first");
    writeFileSync(here("mapping.yaml"), `${MAPPING}      - { heading: Tag, field: assetTag, type: code }\n`);
    const run = await exported("second", SINCE, "survey.csv", "--as-of", "2026-11-26");
    expect(because("second")).toEqual([Array(4).fill(["mapping"])]);
    expect(run.out.replace(/\s+/g, " ")).toContain(
      'points: new in the mapping: "Tag"; rows in which nothing else changed',
    );
    expect(receiptIn("second").targets[0]).toMatchObject({ addedColumns: ["Tag"], droppedColumns: [] });
  });

  it("sends no row for a new version of the rulebook, unless the version is mapped", async () => {
    cpSync(projectPath("rules"), here("rules"), { recursive: true });
    const manifest = readFileSync(here("rules/rulebook.yaml"), "utf8");
    await exported("first");
    await accepted("first");
    writeFileSync(here("rules/rulebook.yaml"), manifest.replace(/^version: .*$/m, 'version: "99.0.0"'));
    const later = ["survey.csv", "--rules", here("rules")];
    await exported("second", SINCE, ...later);
    expect(receiptIn("second").source.rulebook.version).toBe("99.0.0");
    expect(because("second")).toEqual([[]]);
    writeFileSync(here("mapping.yaml"), `${MAPPING}      - { heading: Book, field: rulebookVersion }\n`);
    rmSync(here("state.json"));
    await exported("third");
    await accepted("third");
    await exported("fourth", SINCE, ...later);
    expect(because("fourth")).toEqual([Array(4).fill(["rulebook"])]);
  });

  it("refuses to pass over rows that are gone, a state that is none, and to write over the state", async () => {
    const missing = await exported("first", SINCE);
    expect(missing).toMatchObject({ code: 2 });
    expect(missing.err).toContain("state.json: there is no such file or folder");
    await exported("first");
    await accepted("first");
    writeFileSync(here("mapping.yaml"), MAPPING.replace(/ +withdrawn:.*\n/, ""));
    survey(ROWS.slice(1));
    const silent = await exported("second", SINCE);
    expect(silent).toMatchObject({ code: 2, out: "" });
    expect(silent.err).toContain("points: a row is gone since the last accepted export (");
    expect(() => readdirSync(here("second"))).toThrow("no such file");
    const dry = await exported("second", SINCE, "survey.csv", "--dry-run");
    expect(dry).toMatchObject({ code: 2 });
  });

  it("refuses to write the last values of a row that is gone in an encoding that lacks them", async () => {
    survey([...ROWS, ["Π-9", "M-1", 1480, "cast iron", 40]]);
    await exported("first");
    await accepted("first");
    survey(ROWS);
    writeFileSync(here("mapping.yaml"), MAPPING.replace("targets:", "form: { encoding: windows-1252 }\ntargets:"));
    const run = await exported("second", SINCE);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain('points: a row that is gone holds "Π", which windows-1252 does not have; write utf-8');
  });

  it("is held to its receipt by check-export, before and after it is accepted", async () => {
    const over = ["survey.csv", "--over", SITE_BOOK];
    await exported("first", [], ...over);
    await accepted("first");
    survey(ROWS.slice(1));
    await exported("second", SINCE, ...over);
    const check = (): Promise<CommandRun> => runCommand("check-export", here("second/export-receipt.json"));
    expect(await check()).toMatchObject({ code: 0 });
    expect(receiptIn("second").source.rulebook.over).toEqual([SITE_BOOK]);
    await accepted("second");
    const after = await check();
    expect(after).toMatchObject({ code: 0, err: "" });
    expect(after.out).toContain("  points: 0 new, 0 changed, 1 withdrawn; 3 not sent\n");
    expect(after.out).toContain("All as the receipt says: 2 files written, 3 inputs\n");
    writeFileSync(here("second/01-points.csv"), "");
    survey(ROWS);
    const wrong = await check();
    expect(wrong).toMatchObject({ code: 1 });
    expect(wrong.out).toMatch(
      / {2}01-points\.csv: it is not as it was written; .*\n {2}survey .*: it is not the one that went in/,
    );
  });

  it("gives the same by calls of the library", async () => {
    await exported("first");
    await accepted("first");
    survey(ROWS.slice(1));
    await exported("second", SINCE);
    const options = { siteName: "North", asOf: "2026-11-25", set: "core", since: here("state.json") };
    const made = await exportFiles([here("survey.csv")], here("mapping.yaml"), options);
    if (!made.ok) throw new Error(JSON.stringify(made));
    const digests: { file: string; digest: string }[] = [];
    for await (const { name, bytes } of made.files()) digests.push({ file: name, digest: sha256OfBytes(bytes) });
    expect(made.receipt(digests)).toEqual(receiptIn("second"));
    expect(made.difference?.targets[0]?.rows).toMatchObject([{ change: "withdrawn" }]);
    const absent = await exportFiles([here("survey.csv")], here("mapping.yaml"), {
      ...options,
      since: here("no.json"),
    });
    expect(absent).toMatchObject({ ok: false, unreadable: [{ file: here("no.json") }] });
  });
});
