import { convert, unitSpelled } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { CellValue } from "../../workbook/index.js";
import type { Grid } from "../cells/grid.js";
import { type NumberStyle, readDigits, UNSETTLED } from "../cells/number-style.js";
import { codeWidth } from "./code-width.js";
import type { ColumnPlan } from "./columns.js";
import type { Table } from "./tables.js";
import { otherUnitInCells } from "./units-in-cells.js";
import { USUAL_VALUES, type UsualValues } from "./usual-values.js";

/** Fewer bare values say nothing of a column as a whole. */
const FEWEST_VALUES = 3;
/** The only speed of a survey may be meant to have three decimals. */
const FEWEST_SPEEDS = 2;
const THREE_BEHIND_SIGN = /^[^\d]*([1-9]\d{0,2}[.,]\d{3})(?![\d.,])\s*(.*?)\s*$/;
/** Share of the values that another unit must make usual. */
const MOST = 0.75;

/**
 * Withdraws the unit that would be assumed for a column where the values as a whole speak for another one (a hole depth
 * of 0.5 to 0.8 is no depth in millimetres), and the decimal sign where speeds would have three decimals (1,485).
 * Notes how many digits codes have, so that lost zeros are seen.
 *
 * @param plan - the columns of a table, after all that states a unit was looked at
 */
export function withDoubts(plan: readonly ColumnPlan[], grid: Grid, table: Table): readonly ColumnPlan[] {
  return plan.map((column) => {
    if (column.field?.kind === "identifier") {
      const width = codeWidth(grid, table.rows, column.column);
      return width === null ? column : { ...column, codeWidth: width };
    }
    const hasUnit = column.unit !== null || column.unsettledUnit || column.field === null;
    const others = hasUnit || !column.field ? null : otherUnitInCells(column, column.field, grid, table.rows);
    if (others !== null) return { ...column, unsettledUnit: true, unitDoubt: others, why: `${column.why}; ${others}` };
    const usual = column.field === null ? undefined : USUAL_VALUES.get(column.field.id);
    if (!column.field || !usual) return column;
    const cells = { grid, rows: table.rows, column: column.column };
    const styled = column.field.dimension === "rotational-speed" ? withoutThreeDecimals(column, usual, cells) : column;
    if (styled.unit !== null || styled.unsettledUnit) return styled;
    return withoutUnit(styled, column.field, usual, cells);
  });
}

interface ColumnCells {
  readonly grid: Grid;
  readonly rows: readonly number[];
  readonly column: number;
}

/** Speeds such as 1,485 and 2.970 r/min are 1485 and 2970 to whoever wrote them; where the sign says else, ask. */
function withoutThreeDecimals(
  column: ColumnPlan,
  usual: UsualValues,
  { grid, rows, column: at }: ColumnCells,
): ColumnPlan {
  if (column.style.told || (column.unit !== null && column.unit.id !== "r/min")) return column;
  let open = 0;
  let others = 0;
  for (const row of rows) {
    const value = grid.own(row, at);
    if (value === undefined) continue;
    const [, digits, behind = ""] = (value.kind === "text" && THREE_BEHIND_SIGN.exec(value.text)) || [];
    // 24.750 Hz is written with care; only turns per minute have no thousandths.
    if (digits === undefined || (behind !== "" && unitSpelled(behind, "rotational-speed")?.id !== "r/min")) {
      others += 1;
      continue;
    }
    const read = readDigits(digits, column.style.style);
    if (typeof read !== "number" || isUsual(read, usual)) return column;
    if (!isUsual(Number(digits.replace(/[.,]/, "")), usual)) return column;
    open += 1;
  }
  if (open === 0 || open + others < FEWEST_SPEEDS) return column;
  return { ...column, style: { style: UNSETTLED, why: `${column.style.why}, but speeds would have three decimals` } };
}

function withoutUnit(column: ColumnPlan, field: FactDefinition, usual: UsualValues, cells: ColumnCells): ColumnPlan {
  const values = bareValues(column, usual, cells);
  const other = values === null || values.length < FEWEST_VALUES ? null : otherUnit(field, usual, values);
  if (values === null || other === null) return column;
  const [lowest, highest] = values.reduce(([low, high], v) => [Math.min(low, v), Math.max(high, v)], [Infinity, 0]);
  const unitDoubt =
    `no unit is stated, and the values of the column (${lowest} to ${highest}) may be ${field.unit} or ${other}; ` +
    "write the unit into the heading";
  return { ...column, unsettledUnit: true, unitDoubt, why: `${column.why}; ${unitDoubt}` };
}

function otherUnit(field: FactDefinition, usual: UsualValues, values: readonly number[]): string | null {
  const { dimension, unit } = field;
  if (dimension === undefined || unit === undefined) return null;
  const fitting = (other: string): number =>
    values.filter((value) => isUsual(convert(value, other, unit, dimension), usual)).length;
  return usual.others.find((other) => fitting(other) >= values.length * MOST) ?? null;
}

/** The numbers that stand alone in the cells of a column; null as soon as one of them is usual, so mostly at once. */
function bareValues(column: ColumnPlan, usual: UsualValues, { grid, rows, column: at }: ColumnCells): number[] | null {
  const found: number[] = [];
  for (const row of rows) {
    const value = bareValue(grid.own(row, at), column.style.style);
    if (value === null || value <= 0) continue;
    if (isUsual(value, usual)) return null;
    found.push(value);
  }
  return found;
}

function bareValue(value: CellValue | undefined, style: NumberStyle): number | null {
  if (value?.kind === "number") return value.format === "general" ? value.number : null;
  if (value?.kind !== "text" || !/^\s*\d[\d.,]{0,12}\s*$/.test(value.text)) return null;
  const read = readDigits(value.text.trim(), style);
  return typeof read === "number" ? read : null;
}

function isUsual(value: number, { lowest, highest }: UsualValues): boolean {
  return value >= lowest && value <= highest;
}
