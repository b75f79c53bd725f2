import { findFact } from "../facts/index.js";

/** The facts of a record that a fact rests on; of one of the model, the fact that names the model. */
export function surveyFactsUnder(id: string): readonly string[] {
  const known = found.get(id);
  if (known) return known;
  const fact = findFact(id);
  const under =
    fact?.source === "model"
      ? ["sensor_model"]
      : fact?.needs
        ? [...new Set(fact.needs.flatMap(surveyFactsUnder))]
        : [id];
  found.set(id, under);
  return under;
}

const found = new Map<string, readonly string[]>();
