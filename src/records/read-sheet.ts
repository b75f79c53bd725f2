import { cellName, columnLetters, showText } from "../base/index.js";
import { type Facts, factOf, type SiteStatements } from "../facts/index.js";
import type { RawRow, RawSheet } from "../workbook/index.js";
import { type CellSaid, dittoOfNothing, readColumnCell } from "./column-cell.js";
import { type ColumnPlan, nameColumns, planColumns } from "./columns.js";
import { placeOf } from "./entries.js";
import { Grid, type SeenCell, shownText } from "./grid.js";
import { type SheetLanguage, sheetLanguage } from "./languages.js";
import type { ProblemLog } from "./problem-log.js";
import type { ImportProblem, ProblemCode } from "./problems.js";
import type { CellContext } from "./read-cell.js";
import { factsOfRow } from "./row-facts.js";
import { rowKind } from "./row-kind.js";
import { withSiteWord } from "./site-word.js";
import type { ColumnReading, PointRecord, SheetReading } from "./survey.js";
import { findTables, type Table } from "./tables.js";
import type { Vocabulary } from "./vocabulary.js";

/** What reading a sheet needs to know beside the sheet. */
export interface SheetContext {
  readonly file: string;
  readonly dateSystem: 1900 | 1904;
  readonly vocabulary: Vocabulary;
  readonly site: SiteStatements | null;
  readonly log: ProblemLog;
}

/** A sheet read: how it was taken, its columns, its points. */
export interface SheetRead {
  readonly sheet: SheetReading;
  readonly columns: readonly ColumnReading[];
  readonly records: readonly PointRecord[];
}

/** Reads one sheet; a sheet without a row of headings gives no points and says so. */
export function readSheet(raw: RawSheet, context: SheetContext): SheetRead {
  const grid = new Grid(raw);
  const hidden = raw.visibility !== "visible";
  const tables = findTables(grid, context.vocabulary);
  if (tables.length === 0) {
    const why = raw.rows.length === 0 ? "the sheet is empty" : "no row of headings was found";
    return { sheet: unusedSheet(raw, hidden, why), columns: [], records: [] };
  }
  const named = tables.map((table) => ({ table, columns: nameColumns(table, context.vocabulary) }));
  const language = sheetLanguage(
    grid,
    named.flatMap(({ columns }) => columns.map((column) => column.candidates[0]?.languages ?? [])),
    context.vocabulary,
  );
  const plans = named.map(({ table, columns }) => ({
    table,
    plan: planColumns(grid, table, columns, language, context.vocabulary),
  }));
  if (hidden) note(context, raw, "hidden-sheet", null, "the sheet is hidden; it is read like the others");
  if (grid.mergesLeftOut) note(context, raw, "file-remark", null, "too many merged cells; their values are not spread");
  const records = plans.flatMap(({ table, plan }) => readTable(raw, grid, table, plan, context));
  return {
    sheet: usedSheet(raw, hidden, tables, records.length, language),
    columns: plans.flatMap(({ table, plan }) => columnReadings(raw, table, plan, context)),
    records,
  };
}

function readTable(
  raw: RawSheet,
  grid: Grid,
  table: Table,
  plan: readonly ColumnPlan[],
  context: SheetContext,
): readonly PointRecord[] {
  const used = plan.filter((column) => column.field !== null);
  const planned = new Set(plan.map((column) => column.column));
  const readColumns = new Set(used.map((column) => column.column));
  const idColumns = new Set(
    used.filter((c) => c.field?.id === "point_id" || c.field?.id === "asset_tag").map((c) => c.column),
  );
  const hiddenRows = new Set(raw.rows.filter((row: RawRow) => row.hidden).map((row) => row.row));
  const headingRow = table.headingRows[table.headingRows.length - 1] ?? 0;
  const contexts = new Map(used.map((column) => [column.column, cellContext(column, context)]));
  const above = new Map<number, SeenCell>();
  const records: PointRecord[] = [];
  for (const row of table.rows) {
    const kind = rowKind(grid, row, readColumns, idColumns, context.vocabulary);
    if (!kind.point) {
      note(context, raw, "row-skipped", cellName(row, 1), kind.why);
      continue;
    }
    if (hiddenRows.has(row))
      note(context, raw, "hidden-row", cellName(row, 1), "the row is hidden; it is read like the others");
    for (const column of grid.filled(row).keys()) {
      if (planned.has(column)) continue;
      const text = `column ${columnLetters(column)} has no heading; its cells are not read`;
      note(context, raw, "unknown-heading", cellName(row, column), text);
    }
    const cells = used.map((column) => {
      const seen = grid.seen(row, column.column, headingRow);
      return readWithDitto(column, seen, row, raw, contexts.get(column.column), above, context);
    });
    records.push({ file: context.file, sheet: raw.name, row, facts: finishRow(cells, row, raw, used, context) });
  }
  return records;
}

function cellContext(column: ColumnPlan, context: SheetContext): CellContext {
  return {
    field: column.field ?? factOf("notes"),
    style: column.style.style,
    locale: column.language,
    headingUnit: column.unit,
    headingSupply: column.supply,
    headingUnsettled: column.unsettledUnit,
    vocabulary: context.vocabulary,
    dateSystem: context.dateSystem,
  };
}

function readWithDitto(
  column: ColumnPlan,
  seen: SeenCell | undefined,
  row: number,
  raw: RawSheet,
  cell: CellContext | undefined,
  above: Map<number, SeenCell>,
  context: SheetContext,
): CellSaid {
  if (!cell) throw new RangeError(`column ${column.column} has no context`);
  let source = seen;
  let said: CellSaid | null = null;
  if (seen?.value.kind === "text" && context.vocabulary.isDitto(seen.value.text)) {
    source = above.get(column.column);
    const place = placeOf(raw.name, seen);
    if (!source) said = dittoOfNothing(cell.field.id, place);
    else
      note(
        context,
        raw,
        "ditto",
        place.cell,
        'a mark for "as above" is read as the value above',
        column.heading,
        cell.field.id,
      );
  }
  if (source) above.set(column.column, source);
  else above.delete(column.column);
  said ??= readColumnCell(column, source, row, raw.name, cell);
  for (const { fact, code, text } of said.remarks) {
    const place = placeOf(raw.name, source ?? { row, column: column.column });
    note(context, raw, code, place.cell, text, column.heading, fact);
  }
  for (const { fact, code, text } of said.troubles) {
    const at = source ?? { row, column: column.column };
    context.log.add({
      ...problemAt(context, raw, code, placeOf(raw.name, at).cell, text),
      heading: column.heading,
      fact,
      found: source ? showText(shownText(source.value)) : null,
    });
  }
  return said;
}

function finishRow(
  cells: readonly CellSaid[],
  row: number,
  raw: RawSheet,
  used: readonly ColumnPlan[],
  context: SheetContext,
): Facts {
  const read = factsOfRow(cells);
  for (const { fact, cells: places, cell } of read.conflicts) {
    const text = `cells ${places.join(" and ")} contradict each other; correct the wrong one`;
    context.log.add({ ...problemAt(context, raw, "conflicting", cell, text), fact });
  }
  const [seat] = used.filter((column) => read.absent.size > 0 && column.field?.choices?.includes("absent"));
  const facts = withSiteWord(read, context.site);
  for (const [fact, state] of read.absent) {
    if (facts.get(fact) !== state || !seat) continue;
    const text = `${factOf(fact).name} is not mentioned; taken as absent`;
    note(context, raw, "assumed", cellName(row, seat.column), text, seat.heading, fact);
  }
  return facts;
}

function note(
  context: SheetContext,
  raw: RawSheet,
  code: ProblemCode,
  cell: string | null,
  text: string,
  heading: string | null = null,
  fact: string | null = null,
): void {
  context.log.tally({ ...problemAt(context, raw, code, cell, text), heading, fact });
}

function problemAt(
  context: SheetContext,
  raw: RawSheet,
  code: ProblemCode,
  cell: string | null,
  text: string,
): ImportProblem {
  return { code, file: context.file, sheet: raw.name, cell, heading: null, fact: null, found: null, text };
}

function columnReadings(
  raw: RawSheet,
  table: Table,
  plan: readonly ColumnPlan[],
  context: SheetContext,
): readonly ColumnReading[] {
  const row = table.headingRows[table.headingRows.length - 1] ?? 1;
  return plan.map((column) => {
    const hidden = raw.hiddenColumns.has(column.column);
    const cell = cellName(row, column.column);
    if (!column.field)
      note(context, raw, "unknown-heading", cell, `${column.why}; the column is not read`, column.heading);
    if (hidden)
      note(context, raw, "hidden-column", cell, "the column is hidden; it is read like the others", column.heading);
    const numbers = column.field?.kind === "quantity" ? `; numbers: ${column.style.why}` : "";
    return {
      sheet: raw.name,
      column: columnLetters(column.column),
      heading: showText(column.heading, 200),
      facts: column.field ? [column.field, ...column.also].map((field) => field.id) : [],
      unit: column.unit?.id ?? column.field?.unit ?? null,
      hidden,
      why: column.why + numbers,
    };
  });
}

function usedSheet(
  raw: RawSheet,
  hidden: boolean,
  tables: readonly Table[],
  pointRows: number,
  language: SheetLanguage,
): SheetReading {
  const headingRows = tables.flatMap((table) => table.headingRows);
  return {
    sheet: raw.name,
    used: true,
    why: `headings found in row ${headingRows.join(", ")}`,
    headingRows,
    pointRows,
    hidden,
    language: language.language,
    languageWhy: language.why,
  };
}

function unusedSheet(raw: RawSheet, hidden: boolean, why: string): SheetReading {
  return {
    sheet: raw.name,
    used: false,
    why,
    headingRows: [],
    pointRows: 0,
    hidden,
    language: null,
    languageWhy: "not looked for",
  };
}
