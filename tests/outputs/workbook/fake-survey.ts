import type { ScreenedInput, ScreenedSurvey } from "../../../src/outputs/index.js";
import type { PointRecord, Survey } from "../../../src/records/index.js";
import type { PointResult } from "../../../src/screening/index.js";
import type { CellValue, RawRow, RawSheet, RawWorkbook } from "../../../src/workbook/index.js";
import { POINTS } from "../fake-findings.js";
import { digestOf, HEAD } from "../fake-head.js";
import { SUMMARY } from "../fake-screening.js";

export function text(content: string): CellValue {
  return { kind: "text", text: content };
}

export function number(value: number, format: "general" | "date" | "time" | "percent" = "general"): CellValue {
  return { kind: "number", number: value, format };
}

/** A row of cells from column A on; null leaves a cell empty. */
export function rowOf(row: number, cells: readonly (CellValue | null)[], hidden: boolean = false): RawRow {
  return {
    row,
    hidden,
    cells: cells.flatMap((value, index) => (value === null ? [] : [{ row, column: index + 1, value }])),
    at: (column) => cells[column - 1] ?? undefined,
    textAt: (column) => {
      const value = cells[column - 1];
      return value?.kind === "text" ? value.text : undefined;
    },
  };
}

export function sheetOf(name: string | null, rows: readonly RawRow[], parts: Partial<RawSheet> = {}): RawSheet {
  return { name, visibility: "visible", rows, merges: [], hiddenColumns: new Set(), ...parts };
}

export function workbookOf(sheets: readonly RawSheet[], parts: Partial<RawWorkbook> = {}): RawWorkbook {
  return { kind: "xlsx", sheets, dateSystem: 1900, remarks: [], ...parts };
}

const HEADINGS = ["Point", "Machine", "Position", "Speed", "Thread", "Seat", "Remark", "Seen on", "Load", "OK?"];

/** The survey that the points of the fake screening stand in, with every kind of cell. */
const PUMPS = sheetOf(
  "Pumps",
  [
    rowOf(1, [text("Survey of the cooling water pumps, harbour mill, spring round")]),
    rowOf(3, HEADINGS.map(text)),
    rowOf(4, [
      text("P-4"),
      text("cooling water pump 3"),
      text("DE"),
      number(1480),
      number(12.5),
      text("cast iron, bare"),
    ]),
    rowOf(5, [text("P-5"), null, text("NDE"), number(1480), number(7.5), text("painted"), text("=1+1")]),
    rowOf(6, [text("P-6"), null, text("DE"), number(2975), number(9.1), text("painted"), text(" +cmd|x")], true),
    rowOf(7, [
      text("00123"),
      text("-5"),
      text("@home"),
      number(-5),
      number(0.1),
      text("line one\r\nline two\u0007 _x0041_"),
      { kind: "error", text: "#N/A" },
      number(45_000.5, "date"),
      number(0.25, "percent"),
      { kind: "boolean", boolean: true },
    ]),
    rowOf(8, [
      { kind: "no-result" },
      { kind: "unusable", why: "longer than a cell can be" },
      { kind: "date", iso: "2026-02-28" },
      number(45_000, "date"),
      text("deep enough"),
      number(0.123, "percent"),
      number(0.5, "time"),
    ]),
    rowOf(10, [text("* position as seen from the coupling, which is on the side of the stairs")]),
  ],
  {
    merges: [
      { top: 1, left: 1, bottom: 1, right: 40 },
      { top: 4, left: 2, bottom: 6, right: 2 },
      { top: 5, left: 2, bottom: 7, right: 2 },
    ],
  },
);

const LEGEND = sheetOf("Legend", [rowOf(1, [text("DE"), text("drive end")]), rowOf(2, [text("=2*2")])], {
  visibility: "hidden",
});

function surveyOf(file: string, records: readonly PointRecord[]): Survey {
  const shown = HEAD.surveys.find((one) => one.file === file) ?? {
    file,
    digest: digestOf("e"),
    sheets: [{ ...FIRST_SHEET, sheet: null, headingRows: [1], pointRows: 1 }],
    columns: [],
    problems: [],
  };
  return { ...shown, records, factsAsked: new Set() };
}

const FIRST_SHEET = {
  used: true,
  why: "headings are known",
  hidden: false,
  language: "en",
  languageWhy: "headings are English",
} as const;

const SECOND = sheetOf(null, [
  rowOf(1, [text("Machine"), text("Torque")]),
  rowOf(8, [text("=HYPERLINK(1)"), text("hand tight")]),
]);

const UNREADABLE: PointRecord = {
  file: "second.csv",
  sheet: null,
  row: 8,
  facts: new Map([
    [
      "target_torque",
      { known: false, reason: "unreadable", origin: { kind: "cells", cells: [{ sheet: null, cell: "B8" }] } },
    ],
  ]),
};

export const SURVEYS: readonly ScreenedSurvey[] = [
  { file: "survey.xlsx", workbook: workbookOf([PUMPS, LEGEND]), survey: surveyOf("survey.xlsx", []) },
  { file: "second.csv", workbook: workbookOf([SECOND], { kind: "csv" }), survey: surveyOf("second.csv", [UNREADABLE]) },
];

export function screenedInput(
  surveys: readonly ScreenedSurvey[] = SURVEYS,
  points: readonly PointResult[] = POINTS,
): ScreenedInput {
  return { head: HEAD, points, summary: SUMMARY, surveys };
}
