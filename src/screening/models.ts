import { foldText, type PlainDay } from "../base/index.js";
import type { FactState, Facts, UnknownReason } from "../facts/index.js";
import { modelFactsOn, type Rulebook, type SensorModel } from "../rulebook/index.js";

/** A model with its facts in force. */
interface KnownModel {
  readonly ok: true;
  readonly model: SensorModel;
  readonly facts: ReadonlyMap<string, FactState>;
}

/** The model a point is judged by, or why there is none. */
export type ModelChoice = KnownModel | { readonly ok: false; readonly reason: UnknownReason };

/** Finds the sensor models of a rulebook by the ways in which surveys write them. */
export class ModelShelf {
  readonly #byName = new Map<string, SensorModel>();
  readonly #facts = new Map<string, ReadonlyMap<string, FactState>>();
  readonly #baseline: ModelChoice;
  readonly #models: readonly SensorModel[];

  constructor(rulebook: Pick<Rulebook, "models" | "baselineModel">, asOf: PlainDay) {
    this.#models = [...rulebook.models.values()];
    for (const model of this.#models) {
      for (const name of [model.id, model.title, ...model.alsoWritten]) this.#byName.set(foldText(name), model);
      this.#facts.set(model.id, modelFactsOn(model, asOf));
    }
    const baseline = rulebook.models.get(rulebook.baselineModel);
    this.#baseline = baseline ? this.#chosen(baseline) : { ok: false, reason: "missing" };
  }

  /**
   * The model of a point.
   *
   * @param asked - the survey has a column for the model, or the site states one somewhere; without either
   *   the baseline holds
   */
  modelOf(facts: Facts, asked: boolean): ModelChoice {
    if (!asked) return this.#baseline;
    const stated = facts.get("sensor_model");
    if (!stated) return { ok: false, reason: "missing" };
    if (!stated.known) return { ok: false, reason: stated.reason };
    const model = typeof stated.value === "string" ? this.#byName.get(foldText(stated.value)) : undefined;
    return model ? this.#chosen(model) : { ok: false, reason: "unreadable" };
  }

  /** Every model but one that can be proposed, in the order of the rulebook; invented ones cannot. */
  othersThan(present: ModelChoice): readonly KnownModel[] {
    return this.#models
      .filter((model) => !model.forExamplesOnly && (!present.ok || model !== present.model))
      .map((model) => this.#chosen(model));
  }

  #chosen(model: SensorModel): KnownModel {
    return { ok: true, model, facts: this.#facts.get(model.id) ?? new Map() };
  }
}
