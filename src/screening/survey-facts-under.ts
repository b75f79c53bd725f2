import { type FactDefinition, findFact } from "../facts/index.js";

/** The facts of a record that a fact rests on; of one of the model, the fact that names the model. */
export function surveyFactsUnder(id: string): readonly string[] {
  const known = found.get(id);
  if (known) return known;
  const fact = findFact(id);
  const under = rootsOf(fact, id);
  found.set(id, under);
  return under;
}

function rootsOf(fact: FactDefinition | undefined, id: string): readonly string[] {
  if (fact?.source === "model") return ["sensor_model"];
  // What a group comes to rests on other rows, too.
  if (fact?.source === "group") return [id];
  return fact?.needs ? [...new Set(fact.needs.flatMap(surveyFactsUnder))] : [id];
}

const found = new Map<string, readonly string[]>();
