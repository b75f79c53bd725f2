import { unitSpelled } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { Grid } from "../cells/grid.js";
import type { ColumnPlan } from "./columns.js";

/** Fewer cells with another unit do not speak for a column, unless the first one does. */
const FEWEST_OTHERS = 2;
/** A number, and what stands behind it as far as it has no digit. */
const NUMBER_AND_UNIT = /^[^\d]*\d[\d.,/\s–-]*([^\d\s.,/–-][^\d]*)$/u;

/**
 * Why a bare number in a column may not be taken in the unit of its field, where no heading states one: the first cell
 * states another (7 ft-lb, and 7 below it), or more cells state others than that of the field. Speeds are left out: turns
 * per second beside turns per minute are told apart by their size.
 *
 * @returns null where nothing speaks against the unit of the field
 */
export function otherUnitInCells(
  column: ColumnPlan,
  field: FactDefinition,
  grid: Grid,
  rows: readonly number[],
): string | null {
  const { dimension, unit } = field;
  if (field.kind !== "quantity" || dimension === undefined || unit === undefined) return null;
  if (dimension === "rotational-speed") return null;
  const others = new Map<string, number>();
  let own = 0;
  let bare = 0;
  let isFirstOther: boolean | null = null;
  for (const row of rows) {
    const value = grid.own(row, column.column);
    if (value === undefined) continue;
    if (value.kind !== "text" || /\d\s*$/.test(value.text)) {
      bare += 1;
      isFirstOther ??= false;
      continue;
    }
    const [, behind = ""] = NUMBER_AND_UNIT.exec(value.text) ?? [];
    const stated = behind === "" ? undefined : unitSpelled(behind.trim(), dimension);
    if (!stated) continue;
    isFirstOther ??= stated.id !== unit;
    if (stated.id === unit) own += 1;
    else others.set(stated.id, (others.get(stated.id) ?? 0) + 1);
  }
  const count = [...others.values()].reduce((sum, one) => sum + one, 0);
  if (bare === 0 || count === 0 || !(isFirstOther || (count > own && count >= FEWEST_OTHERS))) return null;
  const named = [...[...others.keys()].sort(), ...(own > 0 ? [unit] : [])].map((one) => `"${one}"`).join(", ");
  return (
    `no unit is stated here, and other cells of the column state ${named}; ` +
    "write the unit into the cell, or into the heading if it is the same in all"
  );
}
