import { LONGEST_PHRASE, wordsOf } from "./tokens.js";
import type { Vocabulary } from "./vocabulary.js";

/** The words of a phrase, and for each the number of the clause in which it stands. */
export interface Phrase {
  readonly words: readonly string[];
  readonly clauses: readonly number[];
}

/** Some words of a phrase, by place. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Behind a word these say that it is not so, or that the thing withstands it (paint free, rust proof). */
const DENIES_BEFORE = /^(?:free|frei|libre|proof|resistant|resistent|resistente|bestandig)$/;

/** Divides a phrase into words and clauses; commas, brackets, "&" and "+" part clauses. */
export function phraseOf(text: string): Phrase {
  const words: string[] = [];
  const clauses: number[] = [];
  text
    .slice(0, LONGEST_PHRASE)
    .replace(/\bun-\s+/giu, "un-")
    .split(/[;()[\]{}&+\r\n；，（）]|,(?!\d)/u)
    .forEach((clause, number) => {
      for (const word of wordsOf(clause)) {
        words.push(word);
        clauses.push(number);
      }
    });
  return { words, clauses };
}

/**
 * Whether a phrase denies some of its words: a "not" in front of them, "free" behind them, or a "not" that belongs to
 * no listed phrase anywhere in their clause (paint: none; gluing not possible). A clause of nothing but "not" speaks of
 * the clauses beside it.
 *
 * @param taken - for each word, whether a listed phrase took it
 */
export function isDenied(span: Span, phrase: Phrase, taken: readonly boolean[], vocabulary: Vocabulary): boolean {
  const { words, clauses } = phrase;
  const before = words[span.from - 1];
  const behind = words[span.to];
  if (before !== undefined && vocabulary.isNot(before)) return true;
  if (before !== undefined && vocabulary.isNot(`${words[span.from - 2] ?? ""} ${before}`)) return true;
  if (behind !== undefined && DENIES_BEFORE.test(behind)) return true;
  const first = clauses[span.from] ?? 0;
  const last = clauses[span.to - 1] ?? 0;
  const denying = denyingWords(words, vocabulary);
  const denies = (i: number): boolean => taken[i] !== true && denying[i] === true;
  if (clauses.some((c, i) => c >= first && c <= last && denies(i))) return true;
  const next = clauses.find((c) => c > last);
  const previous = clauses.findLast((c) => c < first);
  return [previous, next].some((one) => one !== undefined && clauses.every((c, i) => c !== one || denies(i)));
}

/** Most words of a listed "not" (not possible). */
const LONGEST_NOT = 3;

/** For each word, whether it belongs to a "not". */
function denyingWords(words: readonly string[], vocabulary: Vocabulary): readonly boolean[] {
  const denying = words.map((word, i) => isDenier(word, words[i + 1], vocabulary) || isContracted(words, i));
  words.forEach((_, from) => {
    for (let length = 2; length <= LONGEST_NOT && from + length <= words.length; length++) {
      if (vocabulary.isNot(words.slice(from, from + length).join(" "))) denying.fill(true, from, from + length);
    }
  });
  return denying;
}

/** "No. 3" counts, it does not deny; the signs for no ("0", "n") count only as the whole answer. */
function isDenier(word: string, next: string | undefined, vocabulary: Vocabulary): boolean {
  if (word === "no" && next !== undefined && /^\d/.test(next)) return false;
  return vocabulary.isNot(word) || (/^\p{L}{2,}$/u.test(word) && vocabulary.isNo(word));
}

/** The end of can't and isn't, which the apostrophe parts from its word. */
function isContracted(words: readonly string[], i: number): boolean {
  return words[i] === "t" && (words[i - 1]?.endsWith("n") ?? false);
}
