import { didYouMean, dimensionInWords, dimensionsSpelled, showText, unitSpelled } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import { kindInWords, measureInWords } from "../text/kind-words.js";
import type { Worded } from "../text/schema-words.js";

/** The id of the unit that a column is said to have, or what is wrong with it. */
export function unitOfColumn(written: string, definition: FactDefinition): string | Worded {
  const { dimension } = definition;
  if (dimension === undefined) {
    return { code: "no-unit", text: `"${definition.id}" is ${kindInWords(definition)} and has no unit; leave it out` };
  }
  const unit = unitSpelled(written, dimension);
  if (unit) return unit.id;
  const others = dimensionsSpelled(written);
  const shown = showText(written);
  if (others.length === 0) {
    const text = `"${shown}" is no unit of ${dimensionInWords(dimension)}; write one such as ${definition.unit}`;
    return { code: "unknown-unit", text };
  }
  const text = `"${shown}" is a unit of ${others.map(dimensionInWords).join(" or ")}, "${definition.id}" is ${measureInWords(definition)}; write one such as ${definition.unit}`;
  return { code: "wrong-dimension", text };
}

/** What a word of a column's own stands for, or what is wrong with it. */
export function valueOfColumn(
  written: string | boolean,
  definition: FactDefinition,
): { value: string | boolean } | Worded {
  const { id, kind, choices = [] } = definition;
  if (kind === "yes-no") {
    if (typeof written === "boolean") return { value: written };
    const text = `found "${showText(written)}"; "${id}" is true or false, without quotes`;
    return { code: "wrong-kind", text };
  }
  if (kind !== "choice") {
    const text = `"${id}" is ${kindInWords(definition)} and takes no words; only choices and true or false do`;
    return { code: "no-choices", text };
  }
  if (typeof written === "string" && choices.includes(written)) return { value: written };
  const near = didYouMean(String(written), choices) || `; its choices are ${choices.join(", ")}`;
  return { code: "unknown-choice", text: `"${showText(String(written))}" is no choice of "${id}"${near}` };
}
