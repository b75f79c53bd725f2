import type { CellAt } from "../cells/grid.js";
import type { RowDraft } from "./row-draft.js";

/** Speeds of one shaft from the slowest up; none may be above any that follows it. */
const SLOWEST_FIRST = ["lowest_speed", "nominal_speed", "highest_speed"] as const;

/** A fact that another one contradicts, with the cells of both. */
export interface OutOfOrder {
  readonly fact: string;
  readonly cells: readonly CellAt[];
}

/** The speeds of a row that cannot all be true (lowest above highest); all of them are in conflict. */
export function speedsOutOfOrder(row: RowDraft): readonly OutOfOrder[] {
  const known = SLOWEST_FIRST.flatMap((fact) => {
    const said = row.get(fact);
    return said?.known && typeof said.value === "object" ? [{ fact, value: said.value }] : [];
  });
  const wrong = new Map<string, Set<string>>();
  known.forEach((slow, i) => {
    for (const fast of known.slice(i + 1)) {
      if (slow.value.lowest <= fast.value.highest) continue;
      for (const { fact } of [slow, fast]) {
        wrong.set(fact, new Set([...(wrong.get(fact) ?? []), slow.fact, fast.fact]));
      }
    }
  });
  return [...wrong].map(([fact, others]) => ({ fact, cells: [...others].flatMap((other) => row.cellsOf(other)) }));
}
