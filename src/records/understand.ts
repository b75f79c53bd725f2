import { cellName, columnLetters, tidyText } from "../base/index.js";
import { type DecimalSign, factOf, isNumeric } from "../facts/index.js";
import type { CellValue } from "../workbook/index.js";
import { candidatesOf } from "./candidates.js";
import { type Grid, shownText } from "./cells/grid.js";
import type { NumberStyle } from "./cells/number-style.js";
import type { ColumnPlan } from "./headings/columns.js";
import { namesIn } from "./headings/heading.js";
import { likelyHeadingRow } from "./headings/likely-heading-row.js";
import type { PlannedSheet, PlannedTable } from "./headings/plan-sheet.js";
import { isOnlyAbsent } from "./rows/row-facts.js";
import type { PointRecord, Survey } from "./rows/survey.js";
import type {
  CellCounts,
  Clash,
  ColumnUnderstood,
  SheetUnderstood,
  SurveyReading,
  TableUnderstood,
} from "./understanding.js";
import type { Vocabulary } from "./words/vocabulary.js";

const NO_CELLS: CellCounts = { read: 0, unreadable: 0, missing: 0 };

/** What the columns of a table are looked at with. */
interface Looked {
  readonly grid: Grid;
  readonly table: PlannedTable["table"];
  readonly records: readonly PointRecord[];
  /** The rows of the table are taken for points. */
  readonly read: boolean;
  /** Cells in which something stands that could not be read. */
  readonly troubled: ReadonlySet<string>;
  readonly vocabulary: Vocabulary;
}

/**
 * Says of a sheet how it is understood, by what reading it gave.
 *
 * @param pointsNamed - some table of the file names points; tables that name none are then not read
 */
export function understandSheet(
  planned: PlannedSheet,
  pointsNamed: boolean,
  reading: SurveyReading,
  vocabulary: Vocabulary,
): SheetUnderstood {
  const { raw, grid, guide, hidden, language } = planned;
  const survey = reading.ok ? reading.survey : null;
  const sheet = survey?.sheets.find((one) => one.sheet === raw.name);
  const all = survey?.records.filter((record) => record.sheet === raw.name) ?? [];
  const troubled = troubledCells(survey, raw.name);
  const row = guide.leftOut === null && planned.tables.length === 0 ? likelyHeadingRow(grid) : null;
  return {
    sheet: raw.name,
    hidden,
    why: sheet?.why ?? (guide.leftOut === null ? "no row of headings was found" : `left out by ${guide.leftOut}`),
    leftOut: guide.leftOut !== null,
    language: language.language,
    languageWhy: language.why,
    tables: planned.tables.map(({ table, plan, namesPoints }) => {
      const rows = new Set(table.rows);
      const records = all.filter((record) => rows.has(record.row));
      const read = namesPoints || !pointsNamed;
      return understandTable(plan, { grid, table, records, read, troubled, vocabulary });
    }),
    likely: row === null ? null : { row, columns: likelyColumns(grid, row, vocabulary) },
  };
}

function understandTable(plan: readonly ColumnPlan[], looked: Looked): TableUnderstood {
  const { table, records, read } = looked;
  const columns = plan.map((column) => understandColumn(column, looked));
  return {
    headingRow: table.row,
    headingRows: table.headingRows,
    points: records.length,
    read,
    columns,
    clashes: clashesOf(columns, records),
  };
}

/** A day is kept as a number that says nothing to a person; shown is the day that was read. */
function dayRead(value: CellValue, record: PointRecord | undefined, [fact = ""]: readonly string[]): string | null {
  const said = record?.facts.get(fact);
  const isDay = value.kind === "number" && value.format === "date";
  return isDay && said?.known && typeof said.value === "string" ? said.value : null;
}

function understandColumn(column: ColumnPlan, looked: Looked): ColumnUnderstood {
  const { grid, table, records, read, troubled, vocabulary } = looked;
  const letters = columnLetters(column.column);
  const facts = read && column.field ? [column.field, ...column.also].map(({ id }) => id) : [];
  const ways = records.map((record) => wayOf(record, letters, facts, troubled));
  const count = (way: keyof CellCounts): number => ways.filter((one) => one === way).length;
  const counts = { read: count("read"), unreadable: count("unreadable"), missing: count("missing") };
  const firstRead = records[ways.indexOf("read")];
  const row = firstRead?.row ?? table.rows.find((one) => grid.own(one, column.column) !== undefined);
  const value = row === undefined ? undefined : grid.seen(row, column.column, table.row)?.value;
  return {
    letters,
    heading: column.heading,
    names: column.names,
    facts,
    unit: column.unit?.id ?? null,
    language: column.language,
    accuracy: column.accuracy ?? null,
    numbers: facts.some((fact) => isNumeric(factOf(fact)) || fact === "supply_kind"),
    decimalSign: signOf(column.style.style),
    decimalWhy: column.style.why,
    why: column.why,
    ignored: column.word !== null && column.word.fact === null,
    ownWords: column.word?.values ?? new Map(),
    counts: facts.length === 0 ? NO_CELLS : counts,
    example:
      row === undefined || value === undefined
        ? null
        : { cell: cellName(row, column.column), text: dayRead(value, firstRead, facts) ?? shownText(value) },
    candidates: column.field || column.word ? [] : candidatesOf(column.heading, vocabulary),
  };
}

/** The decimal sign of a style that holds for every number; null where one with three digits behind it stays open. */
function signOf({ point, comma }: NumberStyle): DecimalSign | null {
  if (point === "decimal" && comma === "group") return "point";
  return point === "group" && comma === "decimal" ? "comma" : null;
}

function lettersOf(cell: string): string {
  return cell.replace(/\d+$/, "");
}

function wayOf(
  { facts: states, row }: PointRecord,
  letters: string,
  facts: readonly string[],
  troubled: ReadonlySet<string>,
): keyof CellCounts {
  const here = facts.flatMap((fact) => {
    const state = states.get(fact);
    if (state?.origin.kind !== "cells") return [];
    return state.origin.cells.some(({ cell }) => lettersOf(cell) === letters) ? [state] : [];
  });
  if (here.some((state) => (state.known ? !isOnlyAbsent(state) : state.reason === "conflicting"))) return "read";
  if (here.some((state) => !state.known && state.reason !== "missing")) return "unreadable";
  return troubled.has(`${letters}${row}`) ? "unreadable" : "missing";
}

function troubledCells(survey: Survey | null, sheet: string | null): ReadonlySet<string> {
  const problems = survey?.problems.filter((problem) => problem.sheet === sheet && problem.found !== null) ?? [];
  return new Set(problems.flatMap(({ cell }) => (cell === null ? [] : [cell])));
}

function clashesOf(columns: readonly ColumnUnderstood[], records: readonly PointRecord[]): readonly Clash[] {
  const byFact = new Map<string, string[]>();
  for (const {
    facts: [fact],
    letters,
  } of columns) {
    if (fact !== undefined) byFact.set(fact, [...(byFact.get(fact) ?? []), letters]);
  }
  return [...byFact].flatMap(([fact, letters]) => {
    if (letters.length < 2) return [];
    const contradictions = records.filter(({ facts }) => {
      const state = facts.get(fact);
      return state && !state.known && state.reason === "conflicting";
    }).length;
    return [{ fact, letters, contradictions }];
  });
}

function likelyColumns(grid: Grid, row: number, vocabulary: Vocabulary): readonly ColumnUnderstood[] {
  const below = grid.rows.map((one) => one.row).filter((one) => one > row);
  return [...grid.filled(row)].map(([column, value]) => {
    const heading = tidyText(shownText(value));
    const filled = below.find((one) => grid.own(one, column) !== undefined);
    return {
      letters: columnLetters(column),
      heading,
      names: [heading, ...namesIn(heading, vocabulary)],
      facts: [],
      unit: null,
      language: null,
      accuracy: null,
      numbers: false,
      decimalSign: null,
      decimalWhy: "not looked for",
      why: "",
      ignored: false,
      ownWords: new Map(),
      counts: NO_CELLS,
      example:
        filled === undefined ? null : { cell: cellName(filled, column), text: shownText(grid.own(filled, column)) },
      candidates: candidatesOf(heading, vocabulary),
    };
  });
}
