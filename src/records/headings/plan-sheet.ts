import { columnNumber, type Unit } from "../../base/index.js";
import type { RawSheet } from "../../workbook/index.js";
import { Grid } from "../cells/grid.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { withColumnAccuracy } from "./column-accuracy.js";
import { withDoubts } from "./column-doubt.js";
import { type ColumnPlan, nameColumns, planColumns } from "./columns.js";
import { givenHeadings, NO_GUIDE, type SheetGuide } from "./guide.js";
import { type SheetLanguage, sheetLanguage } from "./languages.js";
import { NAMING_FIELDS } from "./naming-fields.js";
import { findTables, type Table } from "./tables.js";
import { unitOfLengths } from "./title-unit.js";

/** A table of a sheet with what each of its columns is read for. */
export interface PlannedTable {
  readonly table: Table;
  readonly plan: readonly ColumnPlan[];
  /** Some column names the point or its machine, or enough is told of it; legends and lists of other things do neither. */
  readonly namesPoints: boolean;
}

/** A sheet understood, before its rows are read. */
export interface PlannedSheet {
  readonly raw: RawSheet;
  readonly grid: Grid;
  readonly hidden: boolean;
  /** Empty if no row of headings was found. */
  readonly tables: readonly PlannedTable[];
  readonly language: SheetLanguage;
  /** What a person has settled for it. */
  readonly guide: SheetGuide;
}

/** A table that tells so many different things is a table of points even if nobody knows the heading of their names. */
const TELLING_FIELDS = 5;

/** Finds the tables of a sheet, its language, and what the columns are read for. */
export function planSheet(raw: RawSheet, vocabulary: Vocabulary, guide: SheetGuide = NO_GUIDE): PlannedSheet {
  const hidden = raw.visibility !== "visible";
  const grid = new Grid(guide.leftOut === null ? raw : { ...raw, rows: [], merges: [] });
  const hints = { rows: guide.headingRows?.value ?? [], named: givenHeadings(guide) };
  const found = findTables(grid, vocabulary, hints).map((table) => withLetteredColumns(table, grid, guide));
  const lengths = unitOfLengths(grid, found);
  const named = found.map((table) => ({ table, columns: nameColumns(table, vocabulary) }));
  const language = guide.language
    ? { language: guide.language.value, why: guide.language.by }
    : sheetLanguage(
        grid,
        named.flatMap(({ columns }) => columns.map((column) => column.candidates[0]?.languages ?? [])),
        vocabulary,
      );
  const tables = named.map(({ table, columns }) => {
    const named = withTitleUnit(planColumns(grid, table, columns, language, vocabulary, guide), lengths);
    const plan = withColumnAccuracy(withDoubts(named, grid, table), table, vocabulary);
    const fields = new Set(plan.flatMap(({ field }) => (field ? [field.id] : [])));
    return {
      table,
      plan,
      namesPoints: fields.size >= TELLING_FIELDS || [...fields].some((id) => NAMING_FIELDS.has(id)),
    };
  });
  return { raw, grid, hidden, tables, language, guide };
}

/** A column that a person names by its letters is looked at even if nothing stands over it. */
function withLetteredColumns(table: Table, grid: Grid, guide: SheetGuide): Table {
  const bare = { own: "", above: "", unitBelow: "", unitOpen: false, divided: false };
  const lettered = guide.columns.flat().filter(({ letters, heading }) => letters !== null && heading === null);
  const added = lettered
    .map(({ letters }) => columnNumber(letters ?? ""))
    .filter((column) => !table.headings.has(column) && table.rows.some((row) => grid.own(row, column) !== undefined));
  if (added.length === 0) return table;
  const headings = [...table.headings, ...added.map((column) => [column, bare] as const)].sort(([a], [b]) => a - b);
  return { ...table, headings: new Map(headings) };
}

/** Where neither heading nor row of units states one, millimetres are assumed unless the title block says otherwise. */
function withTitleUnit(plan: readonly ColumnPlan[], lengths: Unit | null): readonly ColumnPlan[] {
  if (lengths === null) return plan;
  return plan.map((column) =>
    column.field?.dimension === "length" && column.field.unit === "mm" && column.unit === null && !column.unsettledUnit
      ? { ...column, unit: lengths, why: `${column.why}; unit from the title above the table` }
      : column,
  );
}
