import {
  accuracyOfWay,
  type FactDefinition,
  type KnownFact,
  type Locale,
  type StatedAccuracy,
  type WordLists,
  withAccuracy,
} from "../../src/facts/index.js";
import type { CellReading } from "../../src/records/cells/cell-reading.js";
import { styleOfLocale } from "../../src/records/cells/number-style.js";
import { readCell } from "../../src/records/cells/read-cell.js";
import { matchHeading } from "../../src/records/headings/heading.js";
import { accuracyOfHeading, openHeading, wayAlone } from "../../src/records/headings/heading-accuracy.js";
import { type Vocabulary, vocabularyOf } from "../../src/records/words/vocabulary.js";
import type { CellValue } from "../../src/workbook/index.js";

export interface Example {
  readonly heading: string;
  readonly cell: string | number | boolean;
  readonly locale: Locale | null;
  readonly expect: Readonly<Record<string, unknown>>;
}

const vocabularies = new WeakMap<WordLists, Vocabulary>();

/** Reads one cell under one heading as the given field, the way the importer does. */
export function readExample(field: string, example: Example, words: WordLists): CellReading | "heading not matched" {
  const vocabulary = vocabularies.get(words) ?? vocabularyOf(words);
  vocabularies.set(words, vocabulary);
  const match = matchHeading(example.heading, vocabulary).find((one) => one.field.id === field);
  if (!match) return "heading not matched";
  const style = styleOfLocale(example.locale);
  const reading = readCell(cellOf(example.cell), {
    field: match.field,
    style,
    locale: example.locale,
    headingUnit: match.unit,
    headingSupply: match.supply,
    headingUnsettled: match.unsettledUnit,
    vocabulary,
    dateSystem: 1900,
  });
  if (!reading.ok || reading.kind !== "number" || reading.accuracy !== null) return reading;
  const accuracy =
    accuracyInRemarks(reading.remarks, match.field, vocabulary) ??
    accuracyOfHeading(openHeading(example.heading, vocabulary), {
      field: match.field,
      unit: match.unit?.id ?? match.field.unit ?? null,
      style,
      vocabulary,
    })?.stated;
  if (!accuracy) return reading;
  const bare: Omit<KnownFact, "origin"> = { known: true, value: reading.interval };
  const said = withAccuracy(bare, accuracy, match.field);
  return typeof said.value === "object"
    ? { ...reading, interval: said.value, accuracy: said.accuracy ?? null }
    : reading;
}

function accuracyInRemarks(
  remarks: readonly string[],
  field: FactDefinition,
  vocabulary: Vocabulary,
): StatedAccuracy | null {
  const [way] = remarks.flatMap((remark) => wayAlone(remark, vocabulary) ?? []);
  const accuracy = way ? accuracyOfWay(way, field) : null;
  return typeof accuracy === "object" ? accuracy : null;
}

function cellOf(cell: Example["cell"]): CellValue {
  if (typeof cell === "string") return { kind: "text", text: cell };
  return typeof cell === "boolean"
    ? { kind: "boolean", boolean: cell }
    : { kind: "number", number: cell, format: "general" };
}

/** A reading in the form in which the examples state what they expect. */
export function asExpected(reading: CellReading, expect: Example["expect"]): Record<string, unknown> {
  if (!reading.ok) return { error: reading.code };
  if (reading.kind === "word") return { value: reading.value };
  const { lowest, highest } = reading.interval;
  const value = reading.range
    ? { lowest, highest }
    : { value: reading.accuracy === null ? lowest : Number((highest - reading.accuracy).toPrecision(12)) };
  return {
    ...value,
    ...("unit" in expect ? { unit: expect.unit } : {}),
    ...(reading.accuracy === null ? {} : { accuracy: reading.accuracy }),
    ...("kind" in expect ? { kind: reading.supply } : {}),
    ...("remark" in expect ? { remark: reading.remarks[0] } : {}),
  };
}
