import { foldText } from "../../base/index.js";
import { stemOf, wordsOf } from "./tokens.js";

/** Shortest listed word that is looked for inside a longer one (German compounds: Pumpengehäuse). */
const COMPOUND_LETTERS = 5;
/** What must be left of the longer word, so that a prefix such as un- is not taken for the first half of a compound. */
const COMPOUND_REST = 4;
/** Compounds that say the opposite of their first half, or withstand it (umrichterlos, gummifrei, korrosionsfest). */
const OPPOSITE_COMPOUND =
  /^nicht|(?:frei|los|fest|bestandig|geschutzt|resistent|(?:korrosions|rost)schutz)(?:e[mnrs]?)?$/;
/** Words of so few letters are also articles and prepositions (de, a, la). */
const SHORT_LETTERS = 2;

interface ListedPhrase<T> {
  readonly meaning: T;
  readonly stems: readonly string[];
  readonly letters: number;
}

/** A listed phrase found in a text: what it means and which of the text's words it took. */
export interface PhraseHit<T> {
  readonly meaning: T;
  readonly from: number;
  readonly to: number;
  /** Of one or two letters: not to be trusted beside words that nobody knows. */
  readonly short: boolean;
}

/** Finds listed phrases in texts, the longest first, each word of the text being taken once. */
export class PhraseMatcher<T> {
  readonly #whole = new Map<string, T>();
  readonly #byFirst = new Map<string, ListedPhrase<T>[]>();
  readonly #compounds: { readonly part: string; readonly meaning: T }[] = [];

  /** @param listed - phrases as people write them, with what each means; of equal phrases the first counts */
  constructor(listed: Iterable<readonly [phrase: string, meaning: T]>) {
    for (const [phrase, meaning] of listed) {
      const folded = foldText(phrase);
      if (!this.#whole.has(folded)) this.#whole.set(folded, meaning);
      const words = wordsOf(phrase);
      const [first] = words;
      if (first === undefined) continue;
      const stems = words.map(stemOf);
      const key = stemOf(first);
      const letters = words.join("").length;
      this.#byFirst.set(key, [...(this.#byFirst.get(key) ?? []), { meaning, stems, letters }]);
      if (words.length === 1 && first.length >= COMPOUND_LETTERS && !/\d/u.test(first)) {
        this.#compounds.push({ part: stemOf(first), meaning });
      }
    }
    for (const phrases of this.#byFirst.values()) phrases.sort((a, b) => b.letters - a.letters);
    this.#compounds.sort((a, b) => b.part.length - a.part.length);
  }

  /** What the whole text means, folded, or undefined; signs such as "=" or "✓" are found here only. */
  whole(text: string): T | undefined {
    return this.#whole.get(foldText(text));
  }

  /** All listed phrases in the words of a text, in their order; `words` come from `wordsOf`. */
  find(words: readonly string[]): readonly PhraseHit<T>[] {
    const stems = words.map(stemOf);
    const taken = words.map(() => false);
    const hits: PhraseHit<T>[] = [];
    const spans = stems.flatMap((stem, from) =>
      (this.#byFirst.get(stem) ?? [])
        .filter((phrase) => phrase.stems.every((part, i) => stems[from + i] === part))
        // What counts is how much of the text a phrase takes, endings included.
        .map((phrase) => ({ phrase, from, taken: words.slice(from, from + phrase.stems.length).join("").length })),
    );
    spans.sort((a, b) => b.taken - a.taken || b.phrase.letters - a.phrase.letters || a.from - b.from);
    for (const { phrase, from } of spans) {
      const to = from + phrase.stems.length;
      if (taken.slice(from, to).includes(true)) continue;
      taken.fill(true, from, to);
      hits.push({ meaning: phrase.meaning, from, to, short: phrase.letters <= SHORT_LETTERS });
    }
    stems.forEach((stem, i) => {
      if (taken[i]) return;
      if (OPPOSITE_COMPOUND.test(words[i] ?? "")) return;
      for (const meaning of this.#inCompound(stem)) hits.push({ meaning, from: i, to: i + 1, short: false });
    });
    return hits.sort((a, b) => a.from - b.from);
  }

  #inCompound(stem: string): readonly T[] {
    if (stem.length < COMPOUND_LETTERS + COMPOUND_REST) return [];
    const last = this.#compounds.find((c) => stem.endsWith(c.part) && stem.length - c.part.length >= COMPOUND_REST);
    const first = this.#compounds.find((c) => stem.startsWith(c.part) && stem.length - c.part.length >= COMPOUND_REST);
    return [...new Set([first, last].filter((c) => c !== undefined).map((c) => c.meaning))];
  }
}
