import type { FactState, Facts, FactValue } from "../../facts/index.js";
import { ChangedRecord, supposed } from "../changed-record.js";
import type { ModelChoice } from "../models.js";
import { PointFacts } from "../point-facts.js";

/** One fact made another: what a person would do to a point. */
export interface Change {
  readonly fact: string;
  /** A number in the unit of the fact, or a word. */
  readonly to: number | string;
  readonly changes: ReadonlyMap<string, FactState>;
  /** The model that would be chosen; null where the model stays. */
  readonly model: ModelChoice | null;
}

/** What a change is made on: what the row says, and the model by which it is judged. */
export interface Changed {
  readonly record: Facts;
  readonly model: ModelChoice;
}

/** All facts of a point after a change. */
export function afterChange({ record, model }: Changed, change: Change): PointFacts {
  return new PointFacts(new ChangedRecord(record, change.changes), change.model ?? model);
}

/** All facts of a point if a number of it lay between two ends. */
export function withNumberBetween(
  { record, model }: Changed,
  fact: string,
  lowest: number,
  highest: number,
): PointFacts {
  return new PointFacts(new ChangedRecord(record, new Map([[fact, supposed({ lowest, highest })]])), model);
}

/** Changes, each made once, so that what a rule says of one can be kept under it. */
export class ChangeShelf {
  readonly #made = new Map<string, Change>();

  of(fact: string, to: number | string, model: ModelChoice | null = null): Change {
    const key = `${fact} ${typeof to} ${to}`;
    const known = this.#made.get(key);
    if (known) return known;
    const value: FactValue = typeof to === "number" ? { lowest: to, highest: to } : to;
    const change: Change = { fact, to, changes: new Map([[fact, supposed(value)]]), model };
    this.#made.set(key, change);
    return change;
  }
}
