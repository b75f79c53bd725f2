import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it } from "vitest";
import { CLI, PROJECT, run, temporaryFolder } from "./tools.js";

const SURVEYS = [
  "samples/survey.xlsx",
  "tests/data/surveys/quillmoor.xlsx",
  "tests/data/surveys/dunkelforst.xlsx",
  "tests/data/surveys/tallgrass.csv",
] as const;
const OUR_SHEETS = ["Summary", "Rules applied", "Remarks"];
/** A survey that is edited lists its framed cells here; a table of text becomes a new workbook with comments. */
const MARKED = "Marked cells";
/** Comma, quotes, UTF-8, cells as shown, every sheet into a file of its own. */
const TO_CSV = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1";

const folder = temporaryFolder();
const sheets = join(folder, "sheets");
const originals = join(folder, "originals");
const pages = join(folder, "pages");
const hasOffice = run("soffice", ["--version"]).status === 0;
const noOffice = "LibreOffice (soffice) is not installed";

function nameOf(survey: string): string {
  return basename(survey).replace(/\.\w+$/, "");
}

function convert(to: string, into: string, files: readonly string[]): void {
  mkdirSync(into, { recursive: true });
  const profile = `-env:UserInstallation=file://${folder}/profile`;
  const ended = run("soffice", [profile, "--headless", "--convert-to", to, "--outdir", into, ...files]);
  expect(ended.status, ended.err).toBe(0);
}

beforeAll(() => {
  for (const survey of SURVEYS) {
    const site = survey.startsWith("samples/") ? ["--site-file", "samples/site.yaml"] : [];
    const args = ["screen", survey, "--set", "core", "--as-of", "2026-11-25", ...site, "--out", folder];
    const ended = run(process.execPath, [CLI, ...args]);
    expect(ended.status, ended.err).toBe(0);
  }
  if (!hasOffice) return;
  const screened = SURVEYS.map((survey) => join(folder, `${nameOf(survey)}.screened.xlsx`));
  convert(TO_CSV, sheets, screened);
  convert("pdf", pages, screened);
  convert(
    TO_CSV,
    originals,
    SURVEYS.filter((survey) => survey.endsWith(".xlsx")).map((survey) => PROJECT + survey),
  );
});

type Rows = readonly (readonly string[])[];

function rowsOf(path: string): Rows {
  return parse(readFileSync(path, "utf8"), { bom: true, relax_column_count: true }) as string[][];
}

/** The sheets of a survey by name, as the program that opened them shows them. */
function sheetsIn(into: string, prefix: string): ReadonlyMap<string, Rows> {
  const start = `${prefix}-`;
  const files = readdirSync(into).filter((file) => file.startsWith(start));
  return new Map(files.map((file) => [file.slice(start.length, -".csv".length), rowsOf(join(into, file))]));
}

/** A text table has no sheets; its cells are what stands between the separators. */
function sheetsOfSurvey(survey: string): ReadonlyMap<string, Rows> {
  if (survey.endsWith(".csv")) return new Map([[nameOf(survey), rowsOf(PROJECT + survey)]]);
  return sheetsIn(originals, nameOf(survey));
}

/** Days are shown in the format of their cell; here only the day counts. */
function plain(cell: string | undefined): string {
  const day = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(cell ?? "");
  return day ? `${day[3]}-${day[1]?.padStart(2, "0")}-${day[2]?.padStart(2, "0")}` : (cell ?? "");
}

/** Addresses at which the screened workbook shows something else than the survey. */
function changed(survey: Rows, screened: Rows): readonly string[] {
  const all: string[] = [];
  for (const [r, row] of survey.entries()) {
    for (const [c, cell] of row.entries()) {
      const found = screened[r]?.[c];
      if (plain(cell) !== plain(found)) all.push(`row ${r + 1}, column ${c + 1}: "${cell}" became "${found}"`);
    }
  }
  return all;
}

describe.each(SURVEYS)("the screened workbook of %s in LibreOffice", (survey) => {
  const name = nameOf(survey);

  it("opens with every sheet of the survey and ours behind them", ({ skip }) => {
    if (!hasOffice) skip(noOffice);
    const opened = sheetsIn(sheets, `${name}.screened`);
    const ours = survey.endsWith(".csv") ? OUR_SHEETS : [...OUR_SHEETS, MARKED];
    expect([...opened.keys()].sort()).toEqual([...sheetsOfSurvey(survey).keys(), ...ours].sort());
    for (const [sheet, rows] of opened) expect(rows.length, sheet).toBeGreaterThan(1);
  });

  it("shows every value of the survey at its own address", ({ skip }) => {
    if (!hasOffice) skip(noOffice);
    const opened = sheetsIn(sheets, `${name}.screened`);
    for (const [sheet, rows] of sheetsOfSurvey(survey)) {
      expect(rows.flat().filter((cell) => cell !== "").length, sheet).toBeGreaterThan(2);
      expect(changed(rows, opened.get(sheet) ?? []), sheet).toEqual([]);
    }
  });

  it("prints", ({ skip }) => {
    if (!hasOffice) skip(noOffice);
    const file = join(pages, `${name}.screened.pdf`);
    expect(existsSync(file)).toBe(true);
    expect(readFileSync(file).subarray(0, 5).toString("latin1")).toBe("%PDF-");
  });
});
