import { didYouMean, foldText } from "../../base/index.js";
import { CATALOGUE } from "../../facts/index.js";

/**
 * What to write where a word is the id of no fact that can stand there: the nearest id, the id of the fact that people
 * call so, or where all facts are listed.
 *
 * @param allowed - ids of the facts that can stand there
 */
export function factMeant(word: string, allowed: Iterable<string>): string {
  const ids = new Set(allowed);
  const near = didYouMean(word, ids);
  if (near !== "") return near;
  const called = CATALOGUE.find(({ id, name }) => ids.has(id) && foldText(name) === foldText(word));
  if (called) return `; did you mean "${called.id}"?`;
  return "; write-rulebook lists every fact with its id in annex A";
}
