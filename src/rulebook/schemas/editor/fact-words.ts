import { type FactDefinition, type FactSource, isNumeric, plainWords } from "../../../facts/index.js";

const SOURCES: Readonly<Partial<Record<FactSource, string>>> = {
  model: "stated by the sensor model",
  table: "looked up in a table of the rulebook",
  group: "taken from all rows of a group",
};

/** What a fact is, in one line for an editor: plain name, unit or choices, what can be meant, where it comes from. */
export function factInWords(definition: FactDefinition): string {
  const { name, source, formula } = definition;
  const from = formula === undefined ? SOURCES[source] : `computed: ${formula}`;
  return [name, valuesInWords(definition), ...(from === undefined ? [] : [from])].join("; ");
}

function valuesInWords(definition: FactDefinition): string {
  const { kind, unit, choices = [], plausible } = definition;
  if (kind === "yes-no") return "true or false";
  if (kind === "choice") return `one of ${choices.join(", ")}`;
  if (kind === "date") return "a day, YYYY-MM-DD";
  if (!isNumeric(definition)) return plainWords(kind);
  const range = plausible ? `, ${plausible.lowest} to ${plausible.highest} can be meant` : "";
  return kind === "count" ? `a bare number of ${unit ?? "things"}${range}` : `a number with its unit (${unit})${range}`;
}
