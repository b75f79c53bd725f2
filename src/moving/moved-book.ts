import { type PlainDay, single } from "../base/index.js";
import type { FactState } from "../facts/index.js";
import { type ModelValue, modelFactsOn, type Rule, type Rulebook, type SensorModel } from "../rulebook/index.js";
import type { NumberPlace } from "./number-places.js";

/** A number that is moved, with the sensor model where it is a value of one. */
export interface Moved {
  readonly rule: Rule;
  readonly place: NumberPlace;
  readonly model: SensorModel | null;
}

/** The fact of the model that is moved; null where the number stands in the rule. */
export function modelFactMoved({ place, model }: Moved): string | null {
  return model !== null && place.bound.kind === "fact" ? place.bound.fact : null;
}

/** The value of a model in force on a day; null where it has none that is a single number. */
export function modelValueOn(model: SensorModel, fact: string, day: PlainDay): number | null {
  const state = modelFactsOn(model, day).get(fact);
  if (!state?.known || typeof state.value !== "object") return null;
  return state.value.lowest === state.value.highest ? state.value.lowest : null;
}

/**
 * The rulebook with another number in one place. Its digest stays that of the book as it stands, since no file holds
 * the other one.
 *
 * @param day - for which the limits are looked up; values of a model that hold on other days stay
 */
export function movedBook(rulebook: Rulebook, moved: Moved, value: number, day: PlainDay): Rulebook {
  const fact = modelFactMoved(moved);
  if (fact === null || moved.model === null) {
    const other = moved.place.with(value);
    return { ...rulebook, rules: rulebook.rules.map((rule) => (rule.id === other.id ? other : rule)) };
  }
  const { model } = moved;
  const inForce = (one: ModelValue): boolean => one.from <= day && (one.until === null || day < one.until);
  const values = (model.facts.get(fact) ?? []).map((one) =>
    inForce(one) ? { ...one, state: withValue(one.state, value) } : one,
  );
  const other = { ...model, facts: new Map(model.facts).set(fact, values) };
  return { ...rulebook, models: new Map(rulebook.models).set(model.id, other) };
}

function withValue(state: FactState, value: number): FactState {
  return state.known ? { ...state, value: single(value) } : state;
}
