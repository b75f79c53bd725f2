import { showText } from "../../base/index.js";
import { findFact } from "../../facts/index.js";
import type { Worded } from "./schema-words.js";

const FACTOR = "(\\d+(?:\\.\\d+)?)";
const SCALED = new RegExp(`^${FACTOR} *[*×x] *\\S+$|^\\S+ *[*×x] *${FACTOR}$`);

/**
 * What is wrong where a fact, or a product with one, is written as text in the place of a number ("1.5 * model.torque_max");
 * null where none is named.
 *
 * @param scaled - whether a fact can be scaled there
 */
export function factAsText(written: unknown, scaled: boolean): Worded | null {
  if (typeof written !== "string") return null;
  const [id, ...others] = [...written.matchAll(/[a-z][\w.]*/g)].flatMap(([word]) => (findFact(word) ? [word] : []));
  if (id === undefined || others.length > 0) return null;
  const [, before, behind] = SCALED.exec(written.trim()) ?? [];
  const factor = scaled ? (before ?? behind) : undefined;
  const mapping = `{ fact: ${id}${factor === undefined ? "" : `, times: ${factor}`} }`;
  return { code: "fact-as-text", text: `"${showText(written)}" is text that names a fact; write ${mapping}` };
}
