import { type Dimension, withArticle } from "../base/index.js";
import { accuracyInWords, differenceIn, type StatedAccuracy } from "./accuracy.js";
import type { FactDefinition } from "./definition.js";

/** How accurately a way of measuring measures one quantity. */
export interface WayAccuracy {
  readonly plusMinus: number;
  /** Id of the unit of `plusMinus`, a unit of the quantity. */
  readonly unit: string;
  /** Of the value. */
  readonly percent: number;
}

/** A way of measuring as it counts on one day: handed to the importer as plain data. */
export interface MeasuringWay {
  readonly id: string;
  /** "steel rule" */
  readonly title: string;
  /** What people write for it beside a number or in a heading, in any language. */
  readonly words: readonly string[];
  /** Facts that alone it measures; null where it measures any fact of its quantities. */
  readonly only: readonly string[] | null;
  /** By quantity that it can measure; null where no value is in force. */
  readonly accuracies: ReadonlyMap<Dimension, WayAccuracy | null>;
}

/** Ways of measuring by id. */
export type MeasuringWays = ReadonlyMap<string, MeasuringWay>;

/** The accuracy of a way for a fact: one to count with, or why there is none. */
export type AccuracyOfWay = StatedAccuracy | "cannot-measure" | "not-in-force";

/** How accurately the values of a fact are known that were measured in this way. */
export function accuracyOfWay(way: MeasuringWay, definition: FactDefinition): AccuracyOfWay {
  const { dimension, unit } = definition;
  const isMeant = definition.kind === "quantity" && (way.only?.includes(definition.id) ?? true);
  const own = !isMeant || !dimension ? undefined : way.accuracies.get(dimension);
  if (own === undefined) return "cannot-measure";
  if (own === null) return "not-in-force";
  const accuracy = { plusMinus: differenceIn(own.plusMinus, own.unit, definition), percent: own.percent };
  const words = `${accuracyInWords(accuracy, unit ?? null)} of ${withArticle(way.title)}`;
  return { accuracy, way: way.id, written: way.id, words };
}
