import type { PlainDay } from "../../base/index.js";
import { inForce, modelFactsOn, type Rulebook } from "../../rulebook/index.js";

/** What a fact that is a limit can be, and what says so ("baseline", "table adhesives"). */
export interface BoundValue {
  readonly by: string;
  readonly lowest: number;
  readonly highest: number;
}

/** Values of the facts that limits name, as far as the rulebook has them. */
export type BoundValues = (fact: string) => BoundValue | null;

/** What the baseline model states and the tables hold on a day. */
export function boundValuesOn({ models, baselineModel, tables }: Rulebook, day: PlainDay): BoundValues {
  const model = models.get(baselineModel);
  const facts = model === undefined ? new Map() : modelFactsOn(model, day);
  const ofTables = new Map([...tables.values()].flatMap((table) => table.gives.map((fact) => [fact, table] as const)));
  return (fact) => {
    const state = facts.get(fact);
    if (state?.known && typeof state.value === "object") return { by: baselineModel, ...state.value };
    const table = ofTables.get(fact);
    const rows = table?.entries.find((entry) => inForce(entry, day))?.rows ?? [];
    const values = rows
      .map(({ values: own }) => own.get(fact))
      .filter((value) => typeof value === "object" && value !== null);
    if (table === undefined || values.length === 0) return null;
    const lowest = Math.min(...values.map((value) => value.lowest));
    const highest = Math.max(...values.map((value) => value.highest));
    return { by: `table ${table.id}`, lowest, highest };
  };
}
