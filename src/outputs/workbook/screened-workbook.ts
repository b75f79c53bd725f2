import type { Workbook } from "exceljs";
import type { PointRecord, Survey } from "../../records/index.js";
import type { PointResult, ResultHead, Summary } from "../../screening/index.js";
import type { RawWorkbook } from "../../workbook/index.js";
import { indexRules, type RuleIndex } from "../findings/rule-index.js";
import { fixedPackage } from "./fixed-package.js";
import { type CellMark, marksOf } from "./offending.js";
import { freezeRows, layOutPages, repeatRows } from "./pages.js";
import type { ResultRow } from "./result-columns.js";
import { nameOfFile, sheetNamer } from "./sheet-names.js";
import { styleBook } from "./styles.js";
import { REMARKS_WIDTHS, RULES_WIDTHS, remarksRows, rulesRows, SUMMARY_WIDTHS, summaryRows } from "./summary-rows.js";
import { type SheetSource, writeSurveySheet } from "./survey-sheet.js";
import { type TextRow, writeTextSheet } from "./text-sheet.js";

/** A survey file in both forms: as cells, and as read. */
export interface ScreenedSurvey {
  readonly file: string;
  readonly workbook: RawWorkbook;
  readonly survey: Survey;
}

/** What a screened workbook is made from. */
export interface ScreenedInput {
  readonly head: ResultHead;
  /** Iterated once. */
  readonly points: Iterable<PointResult>;
  readonly summary: Summary;
  readonly surveys: readonly ScreenedSurvey[];
}

/** More comments than this make a workbook slow to open. */
const MOST_COMMENTS = 5_000;

/** Results and marks of one sheet. */
interface SheetResults {
  readonly rows: Map<number, ResultRow>;
  readonly marks: Map<string, CellMark>;
}

/**
 * The surveys with the results beside them, as a new workbook: every sheet at its own addresses, our columns to the
 * right, offending cells framed and explained, then the sheets "Summary", "Rules applied" and "Remarks". No formula
 * is ever written, outcomes are told by shape and word, and the same input gives the same bytes.
 *
 * @returns the bytes of an .xlsx file
 */
export async function screenedWorkbook(input: ScreenedInput): Promise<Uint8Array> {
  const { head } = input;
  // Loaded on demand: the library is large, and most runs write no workbook.
  const { default: library } = await import("exceljs");
  const workbook = new library.Workbook();
  const program = `${head.program.name} ${head.program.version}`;
  const day = new Date(`${head.asOf}T00:00:00Z`);
  Object.assign(workbook, { creator: program, lastModifiedBy: program, created: day, modified: day });
  const dateSystem = input.surveys.every((one) => one.workbook.dateSystem === 1904) ? 1904 : 1900;
  workbook.properties.date1904 = input.surveys.length > 0 && dateSystem === 1904;
  fillWorkbook(workbook, input, workbook.properties.date1904 ? 1904 : 1900);
  // Stored, not deflated: the parts are packed anew at once.
  const written = await workbook.xlsx.writeBuffer({ zip: { compression: "STORE" } });
  return fixedPackage(new Uint8Array(written), program);
}

function fillWorkbook(workbook: Workbook, input: ScreenedInput, dateSystem: 1900 | 1904): void {
  const { head } = input;
  const rules = indexRules(head);
  const styles = styleBook();
  const nameSheet = sheetNamer();
  const results = gatherResults(input, rules);
  const remarks: string[] = [];
  let comments = 0;
  for (const { file, workbook: raw, survey } of input.surveys) {
    for (const sheet of raw.sheets) {
      const reading = survey.sheets.find((one) => one.sheet === sheet.name);
      const found = results.get(sheetKey(file, sheet.name));
      const source: SheetSource = {
        raw: sheet,
        dateSystem: raw.dateSystem,
        writtenDateSystem: dateSystem,
        headingRows: reading?.used ? reading.headingRows : [],
        results: found?.rows ?? new Map(),
        marks: found?.marks ?? new Map(),
      };
      const written = workbook.addWorksheet(nameSheet(sheet.name ?? nameOfFile(file)));
      remarks.push(...writeSurveySheet(written, source, rules, styles, () => ++comments <= MOST_COMMENTS));
    }
  }
  if (comments > MOST_COMMENTS) {
    remarks.push(`${comments - MOST_COMMENTS} framed cells have no comment, so that the file opens quickly`);
  }
  const own = (name: string, widths: readonly number[], rows: readonly TextRow[], headed: boolean) => {
    const sheet = workbook.addWorksheet(nameSheet(name));
    writeTextSheet(sheet, widths, rows, styles);
    layOutPages(sheet);
    if (!headed) return;
    freezeRows(sheet, 1);
    repeatRows(sheet, 1, 1);
  };
  own("Summary", SUMMARY_WIDTHS, summaryRows(head, input.summary), false);
  own("Rules applied", RULES_WIDTHS, rulesRows(head), true);
  own("Remarks", REMARKS_WIDTHS, remarksRows(head, remarks), false);
}

function sheetKey(file: string, sheet: string | null): string {
  return JSON.stringify([file, sheet]);
}

/** Sorts points and their marks by sheet; a finding can rest on a cell of another sheet of its file. */
function gatherResults(input: ScreenedInput, rules: RuleIndex): ReadonlyMap<string, SheetResults> {
  const sheets = new Map<string, SheetResults>();
  const of = (file: string, sheet: string | null) => {
    const key = sheetKey(file, sheet);
    const known = sheets.get(key) ?? { rows: new Map(), marks: new Map() };
    sheets.set(key, known);
    return known;
  };
  const records = recordsByRow(input.surveys);
  const hidden = hiddenRows(input.surveys);
  const remarks = remarksByRow(input.surveys);
  for (const point of input.points) {
    const row = rowKey(point.file, point.sheet, point.row);
    const result = { point, hidden: hidden.has(row), remarks: remarks.get(row) ?? 0 };
    of(point.file, point.sheet).rows.set(point.row, result);
    for (const mark of marksOf(point, records.get(row), rules)) {
      const { marks } = of(point.file, mark.sheet);
      // A cell shared by many rows keeps the first word on it.
      if (!marks.has(mark.cell)) marks.set(mark.cell, mark);
    }
  }
  return sheets;
}

function rowKey(file: string, sheet: string | null, row: number): string {
  return JSON.stringify([file, sheet, row]);
}

function recordsByRow(surveys: readonly ScreenedSurvey[]): ReadonlyMap<string, PointRecord> {
  const records = surveys.flatMap(({ survey }) => survey.records);
  return new Map(records.map((record) => [rowKey(record.file, record.sheet, record.row), record]));
}

function hiddenRows(surveys: readonly ScreenedSurvey[]): ReadonlySet<string> {
  const rows = surveys.flatMap(({ file, workbook }) =>
    workbook.sheets.flatMap((sheet) =>
      sheet.rows.filter((row) => row.hidden).map((row) => rowKey(file, sheet.name, row.row)),
    ),
  );
  return new Set(rows);
}

function remarksByRow(surveys: readonly ScreenedSurvey[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { survey } of surveys) {
    for (const problem of survey.problems) {
      if (problem.cell === null) continue;
      const key = rowKey(problem.file, problem.sheet, Number(problem.cell.replace(/^[A-Z]+/, "")));
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  return counts;
}
