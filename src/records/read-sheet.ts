import { cellName, columnLetters, showText } from "../base/index.js";
import { type Facts, factOf } from "../facts/index.js";
import type { RawRow, RawSheet } from "../workbook/index.js";
import { type CellSaid, dittoOfNothing, readColumnCell } from "./column-cell.js";
import { newColumnMemory } from "./column-memory.js";
import type { ColumnPlan } from "./columns.js";
import { placeOf } from "./entries.js";
import { type Grid, type SeenCell, shownText } from "./grid.js";
import { NAMING_FIELDS } from "./naming-fields.js";
import type { PlannedSheet, PlannedTable } from "./plan-sheet.js";
import type { CellContext } from "./read-cell.js";
import { factsOfRow } from "./row-facts.js";
import { rowKind } from "./row-kind.js";
import { note, problemAt, type SheetContext } from "./sheet-context.js";
import { columnReadings, unusedSheet, usedSheet } from "./sheet-report.js";
import { withSiteWord } from "./site-word.js";
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
  const readColumns = new Set(used.map((column) => column.column));
  const idColumns = new Set(
    used.filter((c) => c.field?.id === "point_id" || c.field?.id === "asset_tag").map((c) => c.column),
  );
  const nameColumns = new Set(used.filter((c) => NAMING_FIELDS.has(c.field?.id ?? "")).map((c) => c.column));
  const hiddenRows = new Set(raw.rows.filter((row: RawRow) => row.hidden).map((row) => row.row));
  const headingRow = table.headingRows[table.headingRows.length - 1] ?? 0;
  const contexts = new Map(used.map((column) => [column.column, cellContext(column, context)]));
  const above = new Map<number, SeenCell>();
  const records: PointRecord[] = [];
  for (const row of table.rows) {
    const kind = rowKind(grid, row, readColumns, idColumns, nameColumns, context.vocabulary);
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
    memory: newColumnMemory(),
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
