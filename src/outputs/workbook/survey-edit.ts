import type { PointResult } from "../../screening/index.js";
import type { FramedCell, FrameLine, MergedRange, RawSheet, SheetEdit } from "../../workbook/index.js";
import { cellOf } from "./our-sheet.js";
import { PointRows } from "./point-rows.js";
import type { ResultColumns } from "./result-columns.js";
import type { ScreenedSurvey } from "./sheet-results.js";
import type { SurveyMarks } from "./survey-marks.js";

/** Our columns as an edited survey has them: one line each, so that no row of the survey gets higher. */
const WIDTHS: Readonly<Record<string, number>> = {
  verdict: 10,
  "leading reason": 80,
  "what to do": 80,
  "missing facts": 24,
  "other findings": 80,
  accepted: 60,
  note: 24,
  "another method": 60,
};
/** Room for a verdict that is accepted ("■ fail, accepted"). */
const WIDE_VERDICT = 17;
/** Verdict and leading reason; with all columns the survey itself would be too small to read on paper. */
const PRINTED_COLUMNS = 2;
/** Frames are drawn around merged cells as a whole, unless that would take more cells than this. */
const MOST_MERGED_CELLS = 64;
const LINES: Readonly<Record<string, FrameLine>> = { fail: "thick", warn: "mediumDashed" };

/**
 * What is added to one sheet of a survey: our columns beside its points, and frames.
 *
 * @param points - of the whole run, judged while they are iterated
 */
export function surveyEdit(
  raw: RawSheet,
  survey: ScreenedSurvey,
  marks: SurveyMarks,
  points: () => Iterable<PointResult>,
  { columns, textsOf }: ResultColumns,
): SheetEdit {
  const rows = marks.rowsOf(raw.name);
  const headingRow = rows.size === 0 ? 0 : ourHeadingRow(survey, raw, rows);
  let beside: PointRows | null = null;
  return {
    sheet: raw.name ?? "",
    widths: rows.size === 0 ? [] : widthsOf(columns),
    rows: headingRow === 0 ? rows : new Set([headingRow, ...rows]),
    cellsOf: (row) => {
      if (row === headingRow) return columns.map(({ heading }) => cellOf("our-heading", heading));
      beside ??= new PointRows(pointsOn(points(), survey.file, raw.name), survey, raw.name);
      const result = beside.at(row);
      const texts = result ? textsOf(result) : [];
      return texts.map((text, i) => cellOf(i === 0 ? "verdict" : "one-line", text.replaceAll("\n", "; ")));
    },
    printed: PRINTED_COLUMNS,
    frames: framesOf(raw, marks),
  };
}

function widthsOf(columns: ResultColumns["columns"]): readonly number[] {
  const canBeAccepted = columns.some(({ heading }) => heading === "accepted");
  return columns.map(({ heading, width }) =>
    heading === "verdict" && canBeAccepted ? WIDE_VERDICT : (WIDTHS[heading] ?? width),
  );
}

function* pointsOn(points: Iterable<PointResult>, file: string, sheet: string | null): Iterable<PointResult> {
  for (const point of points) if (point.file === file && point.sheet === sheet) yield point;
}

/** The last row of headings above the first point. */
function ourHeadingRow({ survey }: ScreenedSurvey, raw: RawSheet, rows: ReadonlySet<number>): number {
  const first = [...rows].reduce((least, row) => Math.min(least, row), Number.POSITIVE_INFINITY);
  const reading = survey.sheets.find((one) => one.sheet === raw.name);
  return reading?.headingRows.filter((row) => row < first).at(-1) ?? Math.max(0, first - 1);
}

function framesOf(raw: RawSheet, marks: SurveyMarks): readonly FramedCell[] {
  const merged = new Map(raw.merges.filter(isSmall).map((range) => [`${range.top}/${range.left}`, range]));
  const frames: FramedCell[] = [];
  for (const { row, column, outcome } of marks.cellsOf(raw.name)) {
    const line = LINES[outcome] ?? "dotted";
    const range = merged.size === 0 ? undefined : merged.get(`${row}/${column}`);
    if (range) for (const cell of cellsIn(range)) frames.push({ ...cell, line });
    else frames.push({ row, column, line });
  }
  return frames;
}

function* cellsIn({ top, left, bottom, right }: MergedRange): Iterable<{ row: number; column: number }> {
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) yield { row, column };
}

function isSmall({ top, left, bottom, right }: MergedRange): boolean {
  return (bottom - top + 1) * (right - left + 1) <= MOST_MERGED_CELLS;
}
