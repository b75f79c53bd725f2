import { didYouMean, showText, unitSpelled, withArticle } from "../../base/index.js";
import {
  accuracyOfWay,
  type FactDefinition,
  type MeasuringWays,
  type StatedAccuracy,
  statedAccuracy,
} from "../../facts/index.js";
import { kindInWords, measureInWords } from "../text/kind-words.js";
import type { Worded } from "../text/schema-words.js";
import { unitOfColumn } from "./column-meaning.js";

const ACCURACY = /^(?:±\s*)?(\d{1,9}(?:\.\d{1,12})?)\s*([^\s\d.,].*)?$/;

/**
 * Reads the accuracy that a column file or an option states for a column: "0.5 mm", "2 %".
 *
 * @param unit - id of the unit of a bare number; null where it must say its own
 */
export function readAccuracy(
  written: string | number,
  definition: FactDefinition,
  unit: string | null,
): StatedAccuracy | Worded {
  const notMeasured = refuseUnmeasured(definition);
  if (notMeasured) return notMeasured;
  const shown = showText(String(written));
  const such = `such as 0.5 ${definition.unit}${takesPercent(definition) ? " or 2 %" : ""}`;
  const parts = ACCURACY.exec(String(written).trim());
  if (!parts) return { code: "bad-accuracy", text: `"${shown}" is no accuracy; write a number with its unit, ${such}` };
  const number = Number(parts[1]);
  const spelled = parts[2] ?? unit;
  if (spelled === null) return { code: "no-unit", text: `"${shown}" has no unit; write it with one, ${such}` };
  if (spelled === "%" && definition.dimension !== "ratio") {
    if (takesPercent(definition)) return statedAccuracy(number, null, definition);
    return {
      code: "bad-accuracy",
      text: `a temperature has no percent; write the accuracy of "${definition.id}" in K`,
    };
  }
  const found = unitOfColumn(spelled, definition);
  if (typeof found !== "string") return found;
  if (definition.dimension && unitSpelled(found, definition.dimension)?.leads) {
    return { code: "bad-accuracy", text: `${found} has no even steps; write the accuracy in ${definition.unit}` };
  }
  return statedAccuracy(number, found, definition);
}

/** The accuracy of a way of measuring that a file names for a fact, or what is wrong with that. */
export function readWayNamed(id: string, definition: FactDefinition, ways: MeasuringWays): StatedAccuracy | Worded {
  const notMeasured = refuseUnmeasured(definition);
  if (notMeasured) return notMeasured;
  const way = ways.get(id);
  if (!way) {
    const near = didYouMean(id, ways.keys()) || `; the rulebook has ${[...ways.keys()].join(", ") || "none"}`;
    return { code: "unknown-way", text: `"${showText(id)}" is no way of measuring of the rulebook${near}` };
  }
  const accuracy = accuracyOfWay(way, definition);
  if (accuracy === "cannot-measure") {
    const fit = [...ways.values()].filter((one) => typeof accuracyOfWay(one, definition) === "object");
    const others = fit.length === 0 ? "leave it out" : `name one that does: ${fit.map((one) => one.id).join(", ")}`;
    const text = `${withArticle(way.title)} does not measure "${definition.id}", ${measureInWords(definition)}; ${others}`;
    return { code: "way-does-not-fit", text };
  }
  if (accuracy === "not-in-force") {
    const text = `no accuracy of ${withArticle(way.title)} for "${definition.id}" is in force on the day of the run`;
    return { code: "not-in-force", text };
  }
  return accuracy;
}

function takesPercent({ dimension }: FactDefinition): boolean {
  return dimension !== "temperature";
}

function refuseUnmeasured(definition: FactDefinition): Worded | null {
  if (definition.kind === "quantity") return null;
  const text = `"${definition.id}" is ${kindInWords(definition)} and is not measured; leave it out`;
  return { code: "not-measured", text };
}
