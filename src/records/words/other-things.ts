import { foldText } from "../../base/index.js";
import type { FieldWords } from "../../facts/index.js";

/** Words of so many letters and fewer count only as whole words (oil), of one more at the start of a word (belt). */
const WHOLE_WORD_LETTERS = 3;

/** What a form asks for beside the name of the column (min. 15 mm, ≥ 15, "(M6 x 9)"); the cells hold what is there. */
const STATED_LIMIT = /[([{][^()[\]{}]*\d[^()[\]{}]*[)\]}]|(?:[<>≤≥=]|\b(?:min|max|mind|mini|maxi)\b\.?)\s*\d.*$/gu;

/**
 * Tells whether a heading is about another thing than the field that it names: the voltage of the motor is not that
 * of the sensor, and the depth that is required is not the depth that is there. Asked only of headings that are not
 * listed whole.
 *
 * @param words - the field's own words; without a list of other things nothing is told apart
 */
export function otherThingsOf(words: FieldWords): (heading: string) => boolean {
  const other = patternOf(words.otherThings ?? []);
  const own = patternOf(words.itsOwn ?? []);
  const isNotMeant = notMeantOf(words);
  return (heading) => {
    const folded = foldText(heading);
    if (isNotMeant(folded.replace(STATED_LIMIT, " "))) return true;
    return (other?.test(folded) ?? false) && !(own?.test(folded) ?? false);
  };
}

/** Tells whether words beside a name or a number say that it is not what the field asks for. */
export function notMeantOf(words: FieldWords): (text: string) => boolean {
  const pattern = patternOf(words.notMeant ?? []);
  return (text) => pattern?.test(foldText(text)) ?? false;
}

function patternOf(words: readonly string[]): RegExp | null {
  if (words.length === 0) return null;
  const parts = words.map((word) => {
    const folded = foldText(word).replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
    if (folded.length <= WHOLE_WORD_LETTERS) return `(?<!\\p{L})${folded}(?!\\p{L})`;
    return folded.length === WHOLE_WORD_LETTERS + 1 ? `(?<!\\p{L})${folded}` : folded;
  });
  return new RegExp(parts.join("|"), "u");
}
