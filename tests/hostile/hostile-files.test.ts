import { existsSync, readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  type CommandRun,
  isOneSentence,
  type ResultDocument,
  resultOf,
  runCommand,
  steersTerminal,
} from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";
import { HOSTILE, HOSTILE_FILES, isSurvey, ROWS, SAYS } from "./expected.js";

const WORKBOOKS = projectPath("../shared/workbooks");

const codes = (result: ResultDocument, code: string): readonly (string | null)[] =>
  result.surveys.flatMap(({ problems }) => problems.filter((p) => p.code === code).map(({ cell }) => cell));
const columnsRead = (result: ResultDocument): readonly string[] =>
  result.surveys.flatMap(({ columns }) => columns.filter(({ facts }) => facts.length > 0).map(({ column }) => column));
const missingIn = (result: ResultDocument, row: number): readonly string[] =>
  result.points
    .filter((point) => point.row === row)
    .flatMap(({ findings }) => findings.flatMap(({ missing }) => missing.map((m) => `${m.fact} ${m.reason}`)));

/** What else the results of single files must show. */
const SHOWS: Readonly<Record<string, (result: ResultDocument) => void>> = {
  "heading-proto.xlsx": (result) =>
    expect(codes(result, "unknown-heading")).toEqual(["I1", "J1", "K1", "L1", "M1", "N1"]),
  "heading-duplicate.xlsx": (result) => {
    expect(codes(result, "conflicting")).toEqual(["E2", "E3", "E4"]);
    expect(missingIn(result, 2)).toContain("nominal_speed conflicting");
  },
  "heading-synonym-clash.xlsx": (result) => {
    expect(codes(result, "conflicting")).toEqual(["E2", "E3", "E4"]);
    expect(missingIn(result, 4)).toContain("nominal_speed conflicting");
  },
  "heading-invisible.xlsx": (result) => expect(columnsRead(result)).toEqual([..."ABCDEFGH"]),
  "heading-30k-chars.xlsx": (result) => {
    const headings = result.surveys.flatMap(({ columns }) => columns.map(({ heading }) => heading));
    expect(Math.max(...headings.map((heading) => heading.length))).toBeLessThan(220);
  },
  "formula-real-cells.xlsx": (result) => {
    expect(codes(result, "spreadsheet-error")).toEqual(["F2", "G2", "E3"]);
    expect(missingIn(result, 2)).not.toContain("nominal_speed unreadable");
  },
  "cell-number-bait.xlsx": (result) => {
    for (let row = 2; row <= 10; row++) expect(missingIn(result, row)).toContain("nominal_speed unreadable");
  },
  "csv-utf8-bom.csv": (result) =>
    expect(result.surveys[0]?.columns[0]).toMatchObject({ heading: "Asset tag", facts: ["asset_tag"] }),
  "csv-ragged.csv": (result) => {
    expect(missingIn(result, 2)).toContain("nominal_speed missing");
    expect(codes(result, "unknown-heading")).toEqual(["D3", "E3"]);
    expect(result.points[2]).toMatchObject({ row: 6, machine: 'a "quoted" pump' });
    expect(missingIn(result, 6)).not.toContain("nominal_speed missing");
  },
};

async function screened(path: string): Promise<CommandRun> {
  const prototype = Object.getOwnPropertyNames(Object.prototype).join();
  const run = await runCommand("screen", path, "--json");
  expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(prototype);
  expect(steersTerminal(run.err)).toBe(false);
  // JSON escapes what steers a terminal; nothing may come through raw.
  expect(steersTerminal(run.out)).toBe(false);
  expect(run.err).not.toMatch(/^\s+at /m);
  return run;
}

function expectRefused(run: CommandRun): void {
  expect(run.code).toBe(2);
  expect(run.out).toBe("");
  expect(run.err).toSatisfy(isOneSentence);
}

describe.skipIf(HOSTILE_FILES.length === 0)("hostile files through the whole command", () => {
  it.each(HOSTILE_FILES)("$file", async ({ file, expect: wanted, either_outcome_ok, max_seconds }) => {
    const run = await screened(`${HOSTILE}/${file}`);
    expect(run.seconds).toBeLessThan(max_seconds);
    if (!either_outcome_ok) expect(run.code).toBe(wanted === "clear-error" ? 2 : 0);
    if (run.code === 2) {
      expectRefused(run);
      expect(run.err).toMatch(SAYS[file] ?? /./);
      return;
    }
    expect(run.code).toBe(0);
    const result = resultOf(run);
    if (ROWS[file] !== undefined) expect(result.points).toHaveLength(ROWS[file]);
    expect(run.out).not.toContain("\uFFFD");
    SHOWS[file]?.(result);
  });

  it("shows a person no raw control character either", async () => {
    const run = await runCommand("screen", `${HOSTILE}/cell-controls-and-surrogates.xlsx`);
    expect(steersTerminal(run.out + run.err)).toBe(false);
  });
});

const workbooks = existsSync(WORKBOOKS) ? readdirSync(WORKBOOKS).filter(isSurvey).sort() : [];

describe.skipIf(workbooks.length === 0)("files of many producers through the whole command", () => {
  it.each(workbooks)("%s", async (file) => {
    const run = await screened(`${WORKBOOKS}/${file}`);
    expect(run.seconds).toBeLessThan(20);
    if (run.code === 2) expectRefused(run);
    else resultOf(run);
  });
});
