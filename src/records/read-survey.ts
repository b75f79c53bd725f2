import { columnLetters } from "../base/index.js";
import type { ColumnGuide, SiteStatements, WordLists } from "../facts/index.js";
import type { RawWorkbook } from "../workbook/index.js";
import { type GuidedSheet, guideOfSheet, type NotInSurvey, notInSurvey } from "./headings/guide.js";
import { type PlannedSheet, planSheet } from "./headings/plan-sheet.js";
import { ProblemLog } from "./rows/problem-log.js";
import { readSheet, type SheetRead } from "./rows/read-sheet.js";
import { understandSheet } from "./understand.js";
import type { SurveyReading, SurveyUnderstood } from "./understanding.js";
import { type Vocabulary, vocabularyOf } from "./words/vocabulary.js";

/** Word lists made ready; several readers may share them. */
const vocabularies = new WeakMap<WordLists, Vocabulary>();

/** What a survey is read with; made once per run. */
export interface SurveyReader {
  /**
   * Reads the cells of one file as points.
   *
   * @param file - path as the user gave it, with `/`
   * @param digest - SHA-256 of the file's bytes
   */
  read(workbook: RawWorkbook, file: string, digest: string): SurveyReading;
  /** Reads it too, and says how it was understood, also where it could not be read. */
  understand(workbook: RawWorkbook, file: string, digest: string): SurveyUnderstood;
}

/**
 * Makes a reader of surveys.
 *
 * @param words - headings and words of the rulebook
 * @param site - what the site file states, or null
 * @param guide - what a person has settled about the reading, or null
 */
export function surveyReader(
  words: WordLists,
  site: SiteStatements | null,
  guide: ColumnGuide | null = null,
): SurveyReader {
  const vocabulary = vocabularies.get(words) ?? vocabularyOf(words);
  vocabularies.set(words, vocabulary);
  const plan = (workbook: RawWorkbook): readonly PlannedSheet[] =>
    workbook.sheets.map((sheet) => planSheet(sheet, vocabulary, guideOfSheet(guide, sheet.name)));
  const read = (workbook: RawWorkbook, planned: readonly PlannedSheet[], file: string, digest: string): SurveyReading =>
    readSurvey(workbook, planned, { file, digest }, vocabulary, site, guide);
  return {
    read: (workbook, file, digest) => read(workbook, plan(workbook), file, digest),
    understand: (workbook, file, digest) => {
      const planned = plan(workbook);
      const reading = read(workbook, planned, file, digest);
      return {
        file,
        sheets: planned.map((sheet) => understandSheet(sheet, arePointsNamed(planned), reading, vocabulary)),
        reading,
      };
    },
  };
}

function readSurvey(
  workbook: RawWorkbook,
  planned: readonly PlannedSheet[],
  { file, digest }: { readonly file: string; readonly digest: string },
  vocabulary: Vocabulary,
  site: SiteStatements | null,
  guide: ColumnGuide | null,
): SurveyReading {
  const log = new ProblemLog();
  for (const text of workbook.remarks) {
    log.add({ code: "file-remark", file, sheet: null, cell: null, heading: null, fact: null, found: null, text });
  }
  const missed = guide === null ? [] : notInSurvey(guide, planned.map(guidedSheet));
  for (const { sheet, text } of missed) {
    log.add({ code: "not-in-survey", file, sheet, cell: null, heading: null, fact: null, found: null, text });
  }
  const pointsNamed = arePointsNamed(planned);
  const context = { file, dateSystem: workbook.dateSystem, vocabulary, site, log, pointsNamed };
  const sheets = planned.map((sheet) => readSheet(sheet, context));
  if (!sheets.some(({ sheet }) => sheet.used)) return { ok: false, text: noHeadings(sheets, missed) };
  return {
    ok: true,
    survey: {
      file,
      digest,
      sheets: sheets.map(({ sheet }) => sheet),
      columns: sheets.flatMap(({ columns }) => columns),
      records: sheets.flatMap(({ records }) => records),
      problems: log.all(),
      factsAsked: factsAsked(sheets, site),
    },
  };
}

function arePointsNamed(planned: readonly PlannedSheet[]): boolean {
  return planned.some(({ tables }) => tables.some((table) => table.namesPoints));
}

function guidedSheet({ raw, grid, guide, tables }: PlannedSheet): GuidedSheet {
  const filled = new Set(grid.rows.map(({ row }) => row));
  return {
    name: raw.name,
    guide,
    columns: tables.flatMap(({ plan }) =>
      plan.map(({ column, heading, names }) => ({ letters: columnLetters(column), heading, names })),
    ),
    rowsMissed: guide.leftOut === null ? (guide.headingRows?.value ?? []).filter((row) => !filled.has(row)) : [],
  };
}

function noHeadings(sheets: readonly SheetRead[], missed: readonly NotInSurvey[]): string {
  const names = sheets
    .map(({ sheet }) => (sheet.sheet === null ? "" : `"${sheet.sheet}"`))
    .filter((name) => name !== "");
  const where = names.length === 0 ? "" : ` in ${names.slice(0, 5).join(", ")}${names.length > 5 ? " and others" : ""}`;
  return (
    `no heading row and no usable column was found${where}; ` +
    "a survey has one row of headings such as point ID, machine, speed, mounting method, and one row per point below it" +
    missed
      .slice(0, 2)
      .map(({ text }) => `; ${text}`)
      .join("")
  );
}

/** Facts that some column is read for (a range of speeds gives the lowest and the highest), or that the site states. */
function factsAsked(sheets: readonly SheetRead[], site: SiteStatements | null): ReadonlySet<string> {
  const asked = new Set(sheets.flatMap(({ columns }) => columns.flatMap((column) => column.facts)));
  if (!site) return asked;
  const stated = [site.wholeSite, ...site.byMachineType.values(), ...site.byMachine.values()];
  for (const facts of stated) for (const fact of facts.keys()) asked.add(fact);
  return asked;
}
