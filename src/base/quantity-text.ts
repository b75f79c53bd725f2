import type { Dimension } from "./unit-table.js";
import { convert, dimensionsSpelled, unitSpelled } from "./units.js";

const QUANTITY = /^([+-]?\d{1,15}(?:\.\d{1,12})?)\s*(\S.*)?$/;

/** Why a quantity written in a rule, model or site file could not be taken. */
export interface QuantityMistake {
  readonly code: "not-a-number" | "no-unit" | "unknown-unit" | "wrong-dimension";
  readonly text: string;
}

/**
 * Reads a number with its unit as rule, model and site files write it ("9 mm", "-10 K", "20.4 V"): decimal
 * point, no grouping, nothing assumed.
 *
 * @param text - the text as written
 * @param dimension - what the fact measures
 * @param unit - id of the unit in which the answer is wanted
 * @returns the number in `unit`, to 12 significant digits, or what is wrong with the text
 */
export function readQuantity(text: string, dimension: Dimension, unit: string): number | QuantityMistake {
  const parts = QUANTITY.exec(text.trim());
  if (!parts) return { code: "not-a-number", text: `"${text}" is not a number with a unit, such as 9 ${unit}` };
  const [, digits = "", spelled] = parts;
  if (spelled === undefined) return { code: "no-unit", text: `"${text}" has no unit; write it as ${digits} ${unit}` };
  const found = unitSpelled(spelled, dimension);
  if (found) return convert(Number(digits), found.id, unit, dimension);
  const others = dimensionsSpelled(spelled);
  if (others.length > 0) {
    return {
      code: "wrong-dimension",
      text: `"${spelled}" is a unit of ${others.map(dimensionInWords).join(" or ")}, ${withArticle(dimensionInWords(dimension))} is wanted`,
    };
  }
  return { code: "unknown-unit", text: `"${spelled}" is no unit of ${dimensionInWords(dimension)}` };
}

/** What a quantity is called by people ("voltage", "rotational speed"). */
export function dimensionInWords(dimension: Dimension): string {
  return dimension === "dc-voltage" ? "voltage" : dimension.replaceAll("-", " ");
}

/** A word with "a" or "an" in front. */
export function withArticle(word: string): string {
  return `${/^[aeiou]/i.test(word) ? "an" : "a"} ${word}`;
}
