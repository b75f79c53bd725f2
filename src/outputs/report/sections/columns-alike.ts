import { group } from "d3-array";
import type { SurveyShown } from "../../../screening/index.js";

type Column = SurveyShown["columns"][number];

/** Columns that several sheets have in the same place and understood in the same way. */
export interface ColumnsAlike {
  /** Their names; empty of a text table. */
  readonly sheets: readonly string[];
  /** Each once, in the order of the first sheet. */
  readonly columns: readonly Column[];
}

/** Columns sheet by sheet; what sheets made alike have in common is said once for all of them. */
export function columnsAlike(columns: readonly Column[]): readonly ColumnsAlike[] {
  const same = group(columns, ({ sheet: _, ...column }) => JSON.stringify(column));
  const ofSheets = group(same.values(), (alike) => JSON.stringify(alike.map(({ sheet }) => sheet)));
  return [...ofSheets.values()].map((kinds) => ({
    sheets: (kinds[0] ?? []).flatMap(({ sheet }) => (sheet === null ? [] : [sheet])),
    columns: kinds.flatMap(([first]) => first ?? []),
  }));
}
