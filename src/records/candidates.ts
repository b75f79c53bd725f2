import { nearestWords } from "../base/index.js";
import { matchHeading } from "./headings/heading.js";
import type { Candidate } from "./understanding.js";
import { wordsOf } from "./words/tokens.js";
import { headingKey, type Vocabulary } from "./words/vocabulary.js";

const MOST_CANDIDATES = 3;
/** Shorter headings are near to too many others. */
const FEWEST_LETTERS = 5;
const LETTERS_AWAY = 1 / 4;
/** Shorter words stand in too many headings. */
const TELLING_LETTERS = 4;
/** Words that stand in the headings of so many facts tell nothing. */
const MOST_FACTS_OF_WORD = 6;

/**
 * The facts that a heading nobody knows might mean: those that its words may name, those of listed headings that are
 * spelled alike, those that share a telling word with it. For a person to choose from; nothing is read by them.
 */
export function candidatesOf(heading: string, vocabulary: Vocabulary): readonly Candidate[] {
  const found = new Map<string, Candidate>();
  const add = (fact: string, listed: string | null): void => {
    if (!found.has(fact) && found.size < MOST_CANDIDATES) found.set(fact, { fact, heading: listed });
  };
  for (const { field } of matchHeading(heading, vocabulary)) add(field.id, null);
  const key = headingKey(heading);
  const spelledAlike =
    key.length < FEWEST_LETTERS ? [] : nearestWords(key, vocabulary.headings.keys(), MOST_CANDIDATES, LETTERS_AWAY);
  for (const near of spelledAlike) {
    for (const { fact } of vocabulary.headings.get(near) ?? []) add(fact, near);
  }
  for (const [fact, listed] of factsSharingWords(key, vocabulary)) add(fact, listed);
  return [...found.values()];
}

/** Facts by the number of telling words that one of their listed headings shares with the heading, most first. */
function factsSharingWords(key: string, vocabulary: Vocabulary): readonly (readonly [fact: string, listed: string])[] {
  const telling = wordsOf(key).filter((word) => word.length >= TELLING_LETTERS && isTelling(word, vocabulary));
  const shared = new Map<string, { count: number; listed: string }>();
  for (const [listed, meanings] of telling.length === 0 ? [] : vocabulary.headings) {
    const words = new Set(listed.split(" "));
    const count = telling.filter((word) => words.has(word)).length;
    for (const { fact } of count === 0 ? [] : meanings) {
      if (count > (shared.get(fact)?.count ?? 0)) shared.set(fact, { count, listed });
    }
  }
  return [...shared].sort(([, a], [, b]) => b.count - a.count).map(([fact, { listed }]) => [fact, listed]);
}

function isTelling(word: string, vocabulary: Vocabulary): boolean {
  let facts = 0;
  for (const words of vocabulary.headingWords.values()) if (words.has(word)) facts += 1;
  return facts > 0 && facts <= MOST_FACTS_OF_WORD;
}
