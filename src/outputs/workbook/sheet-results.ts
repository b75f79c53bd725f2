import type { PointRecord, Survey } from "../../records/index.js";
import type { PointResult, ResultHead, Summary } from "../../screening/index.js";
import type { RawWorkbook } from "../../workbook/index.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { type CellMark, gravity, marksOf } from "./offending.js";
import type { ResultRow } from "./result-columns.js";
import type { OwnVerdicts } from "./summary-rows.js";

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
  /** What is to be remarked on the workbook itself. */
  readonly remarks?: readonly string[];
  /** Ending of the file that is written; ".xlsx" if left out. */
  readonly ending?: ".xlsx" | ".xlsm";
}

/** Results and marks of one sheet. */
export interface SheetResults {
  readonly rows: Map<number, ResultRow>;
  readonly marks: Map<string, CellMark>;
}

/** Key of a sheet in what `gatherResults` gives. */
export function sheetKey(file: string, sheet: string | null): string {
  return JSON.stringify([file, sheet]);
}

/** Sorts points and their marks by sheet; a finding can rest on a cell of another sheet of its file. */
export function gatherResults(
  input: Pick<ScreenedInput, "points" | "surveys">,
  rules: RuleIndex,
): ReadonlyMap<string, SheetResults> {
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
      const known = marks.get(mark.cell);
      // A cell shared by many rows keeps the first of the gravest words on it.
      if (!known || gravity(mark.outcome) < gravity(known.outcome)) marks.set(mark.cell, mark);
    }
  }
  return sheets;
}

/** Verdicts of the points in a workbook that is not of the whole run; null where it is. */
export function ownVerdicts(
  head: ResultHead,
  surveys: readonly ScreenedSurvey[],
  results: ReadonlyMap<string, SheetResults>,
): OwnVerdicts | null {
  if (surveys.length === head.surveys.length) return null;
  const counts = { pass: 0, warn: 0, fail: 0 };
  for (const { rows } of results.values()) for (const { point } of rows.values()) counts[point.verdict] += 1;
  return counts;
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
