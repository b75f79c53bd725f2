import { foldText } from "../../base/index.js";

/** Longest text that is looked into for words; longer cells hold no choice. */
export const LONGEST_PHRASE = 300;

/**
 * The words of a phrase, folded: split at everything but letters and digits, save a point or comma
 * between digits (1.4301). Both the word lists and the cells go through here, so they meet.
 */
export function wordsOf(text: string): readonly string[] {
  // "un-painted" is one word, and the opposite of its second half.
  const folded = foldText(text.slice(0, LONGEST_PHRASE)).replace(/\bun-\s*(?=\p{L})/gu, "un");
  return folded.match(/\p{L}+(?:\d+(?:[.,]\d+)*)?|\d+(?:[.,]\d+)*\p{L}*/gu) ?? [];
}

/**
 * A word without the endings of gender, case and number that German, French, Spanish and English put
 * behind adjectives and nouns (lackierte and lackiert, pintada and pintado), at least four letters long.
 */
export function stemOf(word: string): string {
  if (/\d/u.test(word)) return word;
  let stem = word;
  for (let shorter = shortened(stem); shorter !== stem; shorter = shortened(stem)) stem = shorter;
  return stem;
}

const ENDINGS = ["en", "er", "es", "em", "as", "os", "e", "a", "o", "n", "s"];

function shortened(word: string): string {
  const ending = ENDINGS.find((e) => word.endsWith(e) && word.length - e.length >= 4);
  return ending === undefined ? word : word.slice(0, -ending.length);
}

const UMLAUTS: Readonly<Record<string, string>> = { ä: "ae", ö: "oe", ü: "ue", Ä: "Ae", Ö: "Oe", Ü: "Ue" };

/** The ways in which a listed word is spelled: as listed, and without umlauts as German keyboards elsewhere force it. */
export function spellingsOf(listed: string): readonly string[] {
  const plain = listed.normalize("NFC").replace(/[äöüÄÖÜ]/g, (letter) => UMLAUTS[letter] ?? letter);
  return plain === listed ? [listed] : [listed, plain];
}
