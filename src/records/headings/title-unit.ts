import { foldText, type Unit, unitSpelled } from "../../base/index.js";
import type { Grid } from "../cells/grid.js";
import type { Table } from "./tables.js";

/** "All dimensions in inches" and the like above the headings, in the four languages. */
const UNIT_OF_LENGTHS =
  /(?:dimension|measurement|length|depth|masse|langen|abmessung|cotas|medidas|dimensione|cotes)s?\b[^.;\d]{0,30}\b(?:in|en|sont en)\s*:?\s*(inch|inches|zoll|pulgadas|pouces|cm|mm)\b/;

/** The unit in which the title block says that lengths are given, or null. */
export function unitOfLengths(grid: Grid, tables: readonly Table[]): Unit | null {
  const first = tables[0]?.headingRows[0] ?? 0;
  const units = new Set<string>();
  for (const { row } of grid.rows) {
    if (row >= first) break;
    for (const value of grid.filled(row).values()) {
      const found =
        value.kind === "text" && value.text.length < 300 ? UNIT_OF_LENGTHS.exec(foldText(value.text)) : null;
      if (found?.[1] !== undefined) units.add(found[1]);
    }
  }
  const [unit] = units;
  return unit !== undefined && units.size === 1 ? unitSpelled(unit, "length") : null;
}
