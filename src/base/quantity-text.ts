import type { Dimension } from "./unit-table.js";
import { convert, dimensionsSpelled, unitSpelled } from "./units.js";

const QUANTITY = /^([+-]?\d{1,15}(?:\.\d{1,12})?)\s*(\S.*)?$/;

const PLAIN_DIGITS = "write it with a decimal point and without grouping, such as 9.5";

/** What keeps texts that look like numbers from being one, and what to do. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/^\s*[\u2010-\u2015\u2212]/, "its minus is another sign; write it as -"],
  [/^\s*[+-]?\d*[.,]\d*[.,'’]/, PLAIN_DIGITS],
  [/^\s*[+-]?[.,]\d/, "write the zero in front of the decimal point"],
  [/^\s*(?:[<>≤≥±~]|about|max|min)/i, "write the number alone; what it means is said by the key"],
];

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
  if (!parts) {
    const why = SIGNS.find(([sign]) => sign.test(text))?.[1] ?? `write one, such as 9 ${unit}`;
    return { code: "not-a-number", text: `"${text}" is not a number with a unit; ${why}` };
  }
  const [, digits = "", spelled] = parts;
  if (spelled !== undefined && /^[,'’]?\d/.test(spelled)) {
    return { code: "not-a-number", text: `"${text}" is not a number with a unit; ${PLAIN_DIGITS}` };
  }
  if (spelled === undefined) return { code: "no-unit", text: `"${text}" has no unit; write it as ${digits} ${unit}` };
  const found = unitSpelled(spelled, dimension);
  if (found) return convert(Number(digits), found.id, unit, dimension);
  const others = dimensionsSpelled(spelled);
  if (others.length > 0) {
    return {
      code: "wrong-dimension",
      text: `"${spelled}" is a unit of ${others.map(dimensionInWords).join(" or ")}, ${withArticle(dimensionInWords(dimension))} is wanted, such as ${unit}`,
    };
  }
  return { code: "unknown-unit", text: `"${spelled}" is no unit of ${dimensionInWords(dimension)}, such as ${unit}` };
}

/** What a quantity is called by people ("voltage", "rotational speed"). */
export function dimensionInWords(dimension: Dimension): string {
  return dimension === "dc-voltage" ? "voltage" : dimension.replaceAll("-", " ");
}

/** A word with "a" or "an" in front. */
export function withArticle(word: string): string {
  return `${/^[aeiou]/i.test(word) ? "an" : "a"} ${word}`;
}
