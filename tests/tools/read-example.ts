import type { Locale, WordLists } from "../../src/facts/index.js";
import type { CellReading } from "../../src/records/cell-reading.js";
import { matchHeading } from "../../src/records/heading.js";
import { styleOfLocale } from "../../src/records/number-style.js";
import { readCell } from "../../src/records/read-cell.js";
import { type Vocabulary, vocabularyOf } from "../../src/records/vocabulary.js";
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
  return readCell(cellOf(example.cell), {
    field: match.field,
    style: styleOfLocale(example.locale),
    locale: example.locale,
    headingUnit: match.unit,
    headingSupply: match.supply,
    headingUnsettled: match.unsettledUnit,
    vocabulary,
    dateSystem: 1900,
  });
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
