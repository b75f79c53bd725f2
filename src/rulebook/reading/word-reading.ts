import { didYouMean } from "../../base/index.js";
import { type CommonWords, type FieldWords, factOf, type WordLists } from "../../facts/index.js";
import type { PlaceOfWord } from "../book/rulebook.js";
import { kindInWords } from "../text/kind-words.js";
import type { RawWords } from "../text/raw.js";
import { below, type Report } from "../text/source.js";

/** A word file with its report, in the order of paths. */
export interface WordFile {
  readonly raw: RawWords;
  readonly report: Report;
  readonly path: string;
}

/** Of a rulebook that brings no words of its own: nothing is understood but what the fields themselves say. */
const NO_COMMON: CommonWords = {
  yes: [],
  no: [],
  missing: [],
  about: [],
  or: [],
  to: [],
  from: [],
  not: [],
  doubt: [],
  most: [],
  least: [],
  ditto: [],
  total: [],
  marks: { en: [], de: [], es: [], fr: [] },
};

/** The words of a rulebook, and where each of them stands. */
export interface JoinedWords {
  readonly words: WordLists;
  readonly placeOfWord: PlaceOfWord;
}

/** Joins the word files of a rulebook; a field, and the common words, may stand in one file only. */
export function joinWords(files: readonly WordFile[]): JoinedWords {
  let common: { words: CommonWords; path: string } | null = null;
  const fields = new Map<string, FieldWords>();
  const homes = new Map<string, WordFile>();
  for (const file of files) {
    const { raw, report, path } = file;
    if (raw.common) {
      if (common)
        report.atKey("/common", "words-twice", `the common words stand in ${common.path} already; join the two`);
      common ??= { words: raw.common, path };
    }
    for (const [id, words] of Object.entries(raw.fields ?? {})) {
      const home = homes.get(id);
      const pointer = below("/fields", id);
      if (home !== undefined)
        report.atKey(pointer, "words-twice", `the words of "${id}" stand in ${home.path} already; join the two`);
      homes.set(id, home ?? file);
      checkChoices(id, words, below(pointer, "choices"), report);
      const { headings } = words;
      if (headings === undefined) {
        report.atKey(pointer, "missing-key", 'the field has no "headings", and nobody could name its column; add them');
      }
      fields.set(id, { ...words, headings: headings ?? {} });
    }
  }
  return {
    words: { common: common?.words ?? NO_COMMON, fields },
    placeOfWord: (fact, steps) => homes.get(fact)?.report.placeOf(below("/fields", fact, ...steps)) ?? null,
  };
}

/** Reports choices that the field does not have. */
export function checkChoices(id: string, words: Partial<FieldWords>, pointer: string, report: Report): void {
  if (words.choices === undefined) return;
  const definition = factOf(id);
  const { choices = [] } = definition;
  if (definition.kind !== "choice") {
    report.atKey(pointer, "no-choices", `"${id}" is ${kindInWords(definition)} and has no choices; leave them out`);
    return;
  }
  for (const choice of Object.keys(words.choices)) {
    if (choices.includes(choice)) continue;
    const near = didYouMean(choice, choices) || `; its choices are ${choices.join(", ")}`;
    report.atKey(below(pointer, choice), "unknown-choice", `"${choice}" is no choice of "${id}"${near}`);
  }
}
