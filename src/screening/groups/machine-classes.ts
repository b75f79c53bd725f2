import type { Facts } from "../../facts/index.js";
import { saidOf } from "../identity.js";
import type { ClassCounts } from "../result.js";
import { rowKeyOf } from "./group-key.js";

const TAG = ["asset_tag"];
const CLASSES = ["A", "B", "C", null] as const;

/** One machine: the class its rows state, null for none yet, undefined where they disagree or one is in doubt. */
interface Machine {
  criticality: string | null | undefined;
  points: number;
}

/** Counts machines and points by class while rows pass by. */
export class MachineClasses {
  readonly #machines = new Map<string, Machine>();
  /** Points without an asset tag, by the class of their own row. */
  readonly #alone = new Map<string | null, number>();

  add(facts: Facts, siteName: string | null): void {
    const said = saidOf(facts, "criticality");
    const stated = said?.known ? String(said.value) : undefined;
    const key = rowKeyOf(facts, TAG, siteName)?.folded;
    if (key === undefined) {
      this.#alone.set(stated ?? null, (this.#alone.get(stated ?? null) ?? 0) + 1);
      return;
    }
    const machine = this.#machines.get(key) ?? { criticality: null, points: 0 };
    this.#machines.set(key, machine);
    machine.points += 1;
    // A row that says nothing leaves the word to the others.
    if (said === undefined || (!said.known && said.reason === "missing")) return;
    if (machine.criticality === null) machine.criticality = stated;
    else if (machine.criticality !== stated) machine.criticality = undefined;
  }

  counts(): readonly ClassCounts[] {
    const counts = new Map(CLASSES.map((criticality) => [criticality as string | null, { machines: 0, points: 0 }]));
    for (const { criticality = null, points } of this.#machines.values()) {
      const of = counts.get(criticality);
      if (!of) continue;
      of.machines += 1;
      of.points += points;
    }
    for (const [criticality, points] of this.#alone) {
      const of = counts.get(criticality);
      if (of) of.points += points;
    }
    return [...counts].filter(([, { points }]) => points > 0).map(([criticality, of]) => ({ criticality, ...of }));
  }
}
