import type { Dimension } from "../../base/index.js";
import type { DerivedDefinition } from "../definition.js";

/** From what, how, and by which source a derived fact is computed. */
export type Computed = Pick<DerivedDefinition, "needs" | "formula" | "formulaSource">;

/** How the entries of one part of the catalogue are written. */
export interface DerivedEntries {
  quantity(id: string, name: string, dimension: Dimension, unit: string, computed: Computed): DerivedDefinition;
  /** `unit` says what is counted; the count need not be whole. */
  count(id: string, name: string, unit: string, computed: Computed): DerivedDefinition;
  choice(id: string, name: string, choices: readonly string[], computed: Computed): DerivedDefinition;
  yesNo(id: string, name: string, computed: Computed): DerivedDefinition;
}

/** The entries of one part of the survey to which the derived facts belong. */
export function derivedIn(group: string): DerivedEntries {
  const source = "derived" as const;
  return {
    quantity: (id, name, dimension, unit, computed) => ({
      id,
      name,
      kind: "quantity",
      source,
      group,
      dimension,
      unit,
      ...computed,
    }),
    count: (id, name, unit, computed) => ({ id, name, kind: "count", source, group, unit, ...computed }),
    choice: (id, name, choices, computed) => ({ id, name, kind: "choice", source, group, choices, ...computed }),
    yesNo: (id, name, computed) => ({ id, name, kind: "yes-no", source, group, ...computed }),
  };
}
