import type { Phrase, Span } from "../words/denial.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { type CellTrouble, trouble } from "./cell-reading.js";

/** Most words of a listed phrase for doubt or for missing (to be confirmed). */
const LONGEST_DOUBT = 3;

/** A question mark, or a box that is not ticked (or is crossed) beside words: "☐ VFD" says nothing certain. */
export function doubted(text: string): CellTrouble | null {
  if (text.includes("?")) return trouble("doubtful", "the answer is marked as doubtful; settle it");
  return /[☐□▢✗✘✕✖❌☒]|\[\s*\]|\(\s*\)/u.test(text)
    ? trouble("doubtful", "a box stands beside the word; write the answer alone")
    : null;
}

/** Clauses of a phrase that hold a word for doubt or for missing beside the listed words (painted, tbc). */
export function doubtedClauses(
  { words, clauses }: Phrase,
  taken: readonly boolean[],
  vocabulary: Vocabulary,
): ReadonlySet<number> {
  const found = new Set<number>();
  words.forEach((_, from) => {
    for (let length = 1; length <= LONGEST_DOUBT && from + length <= words.length; length++) {
      if (taken[from + length - 1]) break;
      if (vocabulary.isDoubt(words.slice(from, from + length).join(" "))) found.add(clauses[from] ?? 0);
    }
  });
  return found;
}

/**
 * Whether a doubt speaks of a field: it stands in the clause of the field's word, or alone in its clause behind one
 * (painted, tbc), or beside the name of the field (cast iron, finish tbc).
 *
 * @param hits - the words found for the field
 * @param all - the words found for any field
 * @param named - for each word of the phrase, whether it stands in a heading of the field
 */
export function isDoubted(
  doubts: ReadonlySet<number>,
  { clauses }: Phrase,
  hits: readonly Span[],
  all: readonly Span[],
  named: { readonly own: readonly boolean[]; readonly any: readonly boolean[] },
): boolean {
  return [...doubts].some((clause) => {
    const inside = (span: Span): boolean => clauses[span.from] === clause;
    if (hits.some(inside)) return true;
    if (all.some(inside)) return false;
    const names = (marks: readonly boolean[]): boolean => clauses.some((c, i) => c === clause && marks[i] === true);
    return names(named.own) || (hits.length > 0 && !names(named.any));
  });
}

/** The trouble of a field of which its phrase is not certain. */
export function uncertain(): CellTrouble {
  return trouble("doubtful", "the answer is marked as not certain; settle it, or drop the mark");
}
