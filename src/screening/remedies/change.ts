import { type FactState, type Facts, type FactValue, MISSING } from "../../facts/index.js";
import { supposed } from "../changed-record.js";
import { DERIVED } from "../derive.js";
import type { ModelChoice } from "../models.js";
import type { PointFacts } from "../point-facts.js";
import { surveyFactsUnder } from "../survey-facts-under.js";

/** One fact made another: what a person would do to a point. */
export interface Change {
  readonly fact: string;
  /** A number in the unit of the fact, or a word. */
  readonly to: number | string;
  readonly changes: ReadonlyMap<string, FactState>;
  /** The model that would be chosen; null where the model stays. */
  readonly model: ModelChoice | null;
}

/** All facts of a point after a change. */
export function afterChange(point: PointFacts, change: Change): PointFacts {
  return point.changed(change.changes, change.model ?? point.model);
}

/**
 * The facts of a point with one number of it supposed: what does not rest on the number is taken from the point as it
 * is, so that asking about many numbers costs little. For rules only.
 */
export class SupposedNumber implements Facts {
  readonly #facts: PointFacts;
  readonly #fact: string;
  readonly #state: FactState;
  readonly #derived = new Map<string, FactState>();

  constructor(facts: PointFacts, fact: string, lowest: number, highest: number) {
    this.#facts = facts;
    this.#fact = fact;
    this.#state = supposed({ lowest, highest });
  }

  get(id: string): FactState | undefined {
    if (id === this.#fact) return this.#state;
    const { tables } = this.#facts;
    const derive = DERIVED.get(id);
    const follows = derive !== undefined || tables.facts.has(id);
    if (!follows || !surveyFactsUnder(id).includes(this.#fact)) return this.#facts.get(id);
    const known = this.#derived.get(id) ?? (derive ? derive(this) : tables.get(id, this));
    if (known) this.#derived.set(id, known);
    return known;
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    for (const [id] of this.#facts) yield [id, this.get(id) ?? MISSING];
  }
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
