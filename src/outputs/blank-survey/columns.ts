import { columnLetters, foldText, type Stage } from "../../base/index.js";
import { type FactDefinition, isNumeric, LANGUAGES, type Language } from "../../facts/index.js";
import type { Rulebook } from "../../rulebook/index.js";
import { neededFields } from "./needed-fields.js";
import { type ReadingBack, readingBack } from "./reading-back.js";
import type { BlankTexts } from "./texts/blank-texts.js";

/** One column of a blank survey. */
export interface BlankColumn {
  readonly field: FactDefinition;
  /** "F" */
  readonly letter: string;
  /** With the unit in brackets. */
  readonly heading: string;
  /** As the language spells it; null where there is none. */
  readonly unit: string | null;
  /** Words to choose from, by what they mean; empty where the cell takes something else. */
  readonly words: ReadonlyMap<string, string>;
}

/** The columns of a blank survey, and the fields that no listed heading names alone. */
export interface BlankColumns {
  readonly columns: readonly BlankColumn[];
  readonly leftOut: readonly FactDefinition[];
}

type Book = Pick<Rulebook, "rules" | "conditions" | "models" | "groups" | "baselineModel" | "words">;

/** The columns for every field that is needed at a stage. */
export function blankColumns(book: Book, language: Language, stage: Stage, texts: BlankTexts): BlankColumns {
  return columnsFor(neededFields(book, stage), book, language, texts);
}

/** Finds for every field the heading and the words that the importer reads back as just that. */
export function columnsFor(
  fields: readonly FactDefinition[],
  book: Pick<Book, "words" | "models" | "baselineModel">,
  language: Language,
  texts: BlankTexts,
): BlankColumns {
  const back = readingBack(book.words);
  const named: { readonly field: FactDefinition; readonly heading: string; readonly unit: string | null }[] = [];
  const leftOut: FactDefinition[] = [];
  for (const field of fields) {
    const found = headingOf(field, book, language, texts, back.heading);
    if (found) named.push({ field, ...found });
    else leftOut.push(field);
  }
  const read = back.under({
    headings: named.map(({ heading }) => heading),
    facts: named.map(({ field }) => field.id),
  });
  const columns = named.map((column, i) => ({
    ...column,
    letter: columnLetters(i + 1),
    words: wordsOf(column.field, book, texts, (word, meaning) => read(i, word) === meaning),
  }));
  return { columns, leftOut };
}

function headingOf(
  field: FactDefinition,
  { words }: Pick<Book, "words">,
  language: Language,
  texts: BlankTexts,
  readBack: ReadingBack["heading"],
): Pick<BlankColumn, "heading" | "unit"> | null {
  const listed = words.fields.get(field.id)?.headings ?? {};
  const own = listed[language] ?? [];
  const preferred = own.filter((heading) => heading === texts.headings[field.id]);
  // A heading of another language is better than none.
  const others = LANGUAGES.filter((other) => other !== language).flatMap((other) => listed[other] ?? []);
  for (const name of [...preferred, ...own, ...others]) {
    for (const unit of unitsOf(field, texts)) {
      const heading = unit === null ? name : `${name} (${unit})`;
      const read = unit !== null && name.includes("(") ? null : readBack(heading);
      if (read?.fact === field.id && (unit === null || read.unit === field.unit)) return { heading, unit };
    }
  }
  return null;
}

function unitsOf({ kind, unit }: FactDefinition, texts: BlankTexts): readonly (string | null)[] {
  if (kind !== "quantity" || unit === undefined) return [null];
  const own = texts.units[unit];
  return own === undefined ? [unit] : [own, unit];
}

function wordsOf(
  field: FactDefinition,
  book: Pick<Book, "words" | "models" | "baselineModel">,
  texts: BlankTexts,
  reads: (word: string, meaning: string | boolean) => boolean,
): ReadonlyMap<string, string> {
  if (field.id === "sensor_model") {
    const others = [...book.models.keys()].filter((id) => id !== book.baselineModel);
    return new Map([book.baselineModel, ...others].map((id) => [id, id]));
  }
  if (field.kind === "yes-no") {
    const { yes, no } = texts.yesNo;
    return reads(yes, true) && reads(no, false) ? new Map([yes, no].map((word) => [word, word])) : new Map();
  }
  const found = new Map<string, string>();
  for (const choice of field.choices ?? []) {
    const listed = book.words.fields.get(field.id)?.choices?.[choice] ?? [];
    const wanted = texts.words[field.id]?.[choice];
    const ours = listed.some((word) => wanted !== undefined && foldText(word) === foldText(wanted)) ? wanted : null;
    const word = [...(ours ? [ours] : []), ...listed].find((one) => reads(one, choice));
    if (word !== undefined) found.set(choice, word);
  }
  return found;
}

/** A number as the language writes it. */
export function numberIn(language: Language, value: number): string {
  return language === "en" ? String(value) : String(value).replace(".", ",");
}

/** What stands in the places of the texts on a column. */
export function placesOf(column: BlankColumn, language: Language): Readonly<Record<string, string>> {
  const { field, heading, letter, unit, words } = column;
  const { plausible } = field;
  return {
    heading,
    letter,
    unit: unit ?? "",
    words: [...words.values()].join(", "),
    ...(isNumeric(field) && plausible
      ? { lowest: numberIn(language, plausible.lowest), highest: numberIn(language, plausible.highest) }
      : {}),
  };
}
