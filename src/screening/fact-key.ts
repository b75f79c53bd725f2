import type { PointFacts } from "./point-facts.js";
import { surveyFactsUnder } from "./survey-facts-under.js";

/**
 * What some facts of a point rest on, as one text: equal for two points of which all the same is said. Only to be
 * compared among points of one sensor model.
 */
export class FactKey {
  /** The survey facts that they rest on. */
  readonly roots: readonly string[];

  /** @param except - a fact of the record that is not to count */
  constructor(facts: readonly string[], except: string | null = null) {
    this.roots = [...new Set(facts.flatMap(surveyFactsUnder))].filter((id) => id !== except);
  }

  /** Null where it cannot be told whether two points are equal. */
  of(facts: PointFacts): string | null {
    if (facts.family === undefined) return null;
    let key = String(facts.family);
    for (const id of this.roots) key += `,${facts.sameness(id)}`;
    return key;
  }
}

/** Things remembered by sensor model (or the reason why there is none) and by key; forgets all when it gets too many. */
export class Remembered<Thing> {
  readonly #byModel = new Map<unknown, Map<string, Thing>>();
  readonly #most: number;

  /** @param most - per sensor model; past it everything is forgotten, which costs time and nothing else */
  constructor(most: number) {
    this.#most = most;
  }

  get(facts: PointFacts, key: string): Thing | undefined {
    return this.#byModel.get(modelOf(facts))?.get(key);
  }

  set(facts: PointFacts, key: string, thing: Thing): void {
    const model = modelOf(facts);
    const things = this.#byModel.get(model) ?? new Map<string, Thing>();
    this.#byModel.set(model, things);
    if (things.size >= this.#most) things.clear();
    things.set(key, thing);
  }
}

function modelOf({ model }: PointFacts): unknown {
  return model.ok ? model.model : model.reason;
}
