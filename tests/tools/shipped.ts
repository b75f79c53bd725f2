import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { sha256OfBytes, type TextFile } from "../../src/base/index.js";
import { nodeInflating, readTextFolder } from "../../src/disk/index.js";
import type { SiteStatements, WordLists } from "../../src/facts/index.js";
import { type Survey, surveyReader } from "../../src/records/index.js";
import { loadRulebook, type Rulebook, waysOn } from "../../src/rulebook/index.js";
import { readWorkbook } from "../../src/workbook/index.js";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** A path inside the project, as an absolute one. */
export function projectPath(path: string): string {
  return `${ROOT}${path}`;
}

let book: Promise<Rulebook> | null = null;

/** A text file of the project. */
export function projectText(path: string): string {
  return readFileSync(projectPath(path), "utf8");
}

/** The rulebook as shipped; loaded once per test file. */
export function shippedRulebook(): Promise<Rulebook> {
  book ??= loadShipped();
  return book;
}

let allWords: Promise<WordLists> | null = null;

/** The words of the shipped rulebook, with its ways of measuring as they count on the day of the tests. */
export function shippedWords(): Promise<WordLists> {
  allWords ??= shippedRulebook().then(({ words, ways }) => ({ ...words, ways: waysOn(ways, "2026-11-25") }));
  return allWords;
}

/** The files of the shipped rulebook, named from `rules/` on. */
export async function shippedFiles(): Promise<readonly TextFile[]> {
  const folder = await readTextFolder(projectPath("rules"), [".yaml"]);
  return folder.files.map((file) => ({ ...file, path: file.path.slice(ROOT.length) }));
}

async function loadShipped(): Promise<Rulebook> {
  const loading = loadRulebook(await shippedFiles(), { root: "rules" });
  if (!loading.ok) throw new Error(loading.findings.map((f) => `${f.file}:${f.line}:${f.column} ${f.text}`).join("\n"));
  return loading.rulebook;
}

/** A survey file of the test data or the samples, read with the shipped words. */
export async function readTestSurvey(path: string, site: SiteStatements | null = null): Promise<Survey> {
  const bytes = readFileSync(projectPath(path));
  const reading = await readWorkbook(bytes, nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  const survey = surveyReader(await shippedWords(), site).read(reading.workbook, path, sha256OfBytes(bytes));
  if (!survey.ok) throw new Error(survey.text);
  return survey.survey;
}
