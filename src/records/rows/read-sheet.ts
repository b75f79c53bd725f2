import { cellName, columnLetters, showText } from "../../base/index.js";
import { type Facts, factOf } from "../../facts/index.js";
import type { RawRow, RawSheet } from "../../workbook/index.js";
import { type Grid, type SeenCell, shownText } from "../cells/grid.js";
import type { CellContext } from "../cells/read-cell.js";
import type { ColumnPlan } from "../headings/columns.js";
import type { PlannedSheet, PlannedTable } from "../headings/plan-sheet.js";
import { ColumnReader } from "./column-reader.js";
import { FactStore } from "./fact-store.js";
import { RowDraft } from "./row-draft.js";
import { ABSENT, factsOfRow, RowCells, type RowFacts } from "./row-facts.js";
import { rowKinds } from "./row-kind.js";
import { note, problemAt, type SheetContext } from "./sheet-context.js";
import { columnReadings, unusedSheet, usedSheet } from "./sheet-report.js";
import { addSiteWord } from "./site-word.js";
import type { ColumnReading, PointRecord, SheetReading } from "./survey.js";

/** A sheet read: how it was taken, its columns, its points. */
export interface SheetRead {
  readonly sheet: SheetReading;
  readonly columns: readonly ColumnReading[];
  readonly records: readonly PointRecord[];
}

/** Reads the rows of a sheet; a sheet without a row of headings gives no points and says so. */
export function readSheet(planned: PlannedSheet, context: SheetContext): SheetRead {
  const { raw, grid, hidden, tables } = planned;
  if (tables.length === 0) return { sheet: unusedSheet(planned), columns: [], records: [] };
  if (hidden) note(context, raw, "hidden-sheet", null, "the sheet is hidden; it is read like the others");
  if (grid.mergesLeftOut) note(context, raw, "file-remark", null, "too many merged cells; their values are not spread");
  const read = tables.map((table) => table.namesPoints || !context.pointsNamed);
  const records = tables.flatMap((table, i) =>
    read[i] ? readTable(raw, grid, table, context) : skipTable(raw, table, context),
  );
  return {
    sheet: usedSheet(planned, records.length),
    columns: tables.flatMap((table, i) => columnReadings(raw, table, read[i] ?? false, context)),
    records,
  };
}

/** A list of something else (a legend, the supplies, the sensors) beside tables of points. */
function skipTable(raw: RawSheet, { table }: PlannedTable, context: SheetContext): readonly PointRecord[] {
  const row = table.headingRows[0] ?? 1;
  const text = `the table below names no point and no machine; its ${table.rows.length} rows are taken for no points`;
  note(context, raw, "row-skipped", cellName(row, 1), text);
  return [];
}

function readTable(
  raw: RawSheet,
  grid: Grid,
  { table, plan }: PlannedTable,
  context: SheetContext,
): readonly PointRecord[] {
  const used = plan.filter((column) => column.field !== null);
  const planned = new Set(plan.map((column) => column.column));
  const kinds = rowKinds(grid, used, context.vocabulary);
  const hiddenRows = new Set(raw.rows.filter((row: RawRow) => row.hidden).map((row) => row.row));
  const headingRow = table.headingRows[table.headingRows.length - 1] ?? 0;
  const readers = used.map((column) => new ColumnReader(column, cellContext(column, context)));
  const cells = new RowCells();
  const draft = new RowDraft(new FactStore());
  const reading: TableReading = { raw, grid, headingRow, readers, cells, draft, above: [], context };
  const records: PointRecord[] = [];
  for (const row of table.rows) {
    const filled = grid.filledCells(row);
    const kind = kinds(row, filled);
    if (!kind.point) {
      note(context, raw, "row-skipped", cellName(row, 1), kind.why);
      continue;
    }
    if (hiddenRows.has(row))
      note(context, raw, "hidden-row", cellName(row, 1), "the row is hidden; it is read like the others");
    for (const { column } of filled) {
      if (planned.has(column)) continue;
      const text = `column ${columnLetters(column)} has no heading; its cells are not read`;
      note(context, raw, "unknown-heading", cellName(row, column), text);
    }
    records.push({ file: context.file, sheet: raw.name, row, facts: readRow(row, reading) });
  }
  return records;
}

/** What the rows of one table are read with. */
interface TableReading {
  readonly raw: RawSheet;
  readonly grid: Grid;
  readonly headingRow: number;
  readonly readers: readonly ColumnReader[];
  readonly cells: RowCells;
  readonly draft: RowDraft;
  /** By reader, the last filled cell above, for marks that repeat it. */
  readonly above: (SeenCell | undefined)[];
  readonly context: SheetContext;
}

function cellContext(column: ColumnPlan, context: SheetContext): CellContext {
  return {
    field: column.field ?? factOf("notes"),
    style: column.style.style,
    locale: column.language,
    headingUnit: column.unit,
    headingSupply: column.supply,
    headingUnsettled: column.unsettledUnit,
    unitDoubt: column.unitDoubt,
    codeWidth: column.codeWidth,
    vocabulary: context.vocabulary,
    dateSystem: context.dateSystem,
  };
}

function readRow(row: number, reading: TableReading): Facts {
  const { readers, raw, cells, draft, context } = reading;
  readers.forEach((reader, i) => {
    readPlaced(reader, i, row, reading);
  });
  draft.begin(row);
  const read = factsOfRow(cells, draft);
  for (const { fact, cells: places } of read.conflicts) {
    const names = [...new Set(places.map((place) => cellName(place.row, place.column)))];
    const text = `cells ${names.join(" and ")} contradict each other; correct the wrong one`;
    context.log.add({ ...problemAt(context, raw, "conflicting", names[0] ?? null, text), fact });
  }
  addSiteWord(read, context.site);
  noteAbsent(read, row, reading);
  return draft.finish(raw.name);
}

function readPlaced(reader: ColumnReader, i: number, row: number, reading: TableReading): void {
  const { raw, grid, headingRow, cells, above, context } = reading;
  const { column, heading } = reader.plan;
  let source = grid.isMerged(row) ? grid.seen(row, column, headingRow) : grid.alone(row, column);
  let said = source ? reader.read(source.value) : reader.empty;
  if (said === "ditto") {
    const mark = source ?? { row, column };
    source = above[i];
    const repeated = source ? reader.read(source.value) : "ditto";
    said = repeated === "ditto" ? reader.dittoOfNothing : repeated;
    if (source) {
      const text = 'a mark for "as above" is read as the value above';
      note(context, raw, "ditto", cellName(mark.row, mark.column), text, heading, reader.context.field.id);
    }
  }
  above[i] = source;
  const at = source ?? { row, column };
  cells.set(i, said, at.row, at.column);
  if (said.remarks.length === 0 && said.troubles.length === 0) return;
  for (const remark of said.remarks) {
    context.log.tallyOf(remark, () => ({
      ...problemAt(context, raw, remark.code, cellName(at.row, at.column), remark.text),
      heading,
      fact: remark.fact,
    }));
  }
  for (const { fact, code, text } of said.troubles) {
    const found = source ? showText(shownText(source.value)) : null;
    context.log.add({
      ...problemAt(context, raw, code, cellName(at.row, at.column), text),
      heading,
      fact,
      found,
    });
  }
}

function noteAbsent({ draft, absent }: RowFacts, row: number, { readers, raw, context }: TableReading): void {
  if (absent.size === 0) return;
  const seat = readers.find(({ plan }) => plan.field?.choices?.includes("absent"))?.plan;
  for (const fact of absent.keys()) {
    if (draft.get(fact) !== ABSENT || !seat) continue;
    const text = `${factOf(fact).name} is not mentioned; taken as absent`;
    note(context, raw, "assumed", cellName(row, seat.column), text, seat.heading, fact);
  }
}
