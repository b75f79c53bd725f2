import { plainWords } from "../../facts/index.js";
import type { Citation } from "../../rulebook/index.js";
import type { Block } from "./block.js";
import { type Line, list } from "./block.js";

/** Sources as a list, each with its label; more than one are numbered. */
export function sourceList(citations: ReadonlyMap<string, Citation>): readonly Block[] {
  const all = [...citations.values()];
  return list(all.map((citation, index) => sourceLine(citation, all.length > 1 ? index + 1 : null)));
}

function sourceLine({ basis, source, clause, readOn, says }: Citation, number: number | null): Line {
  const label = `${number === null ? "" : `[${number}] `}${plainWords(basis)}`;
  const where = `${source ?? ""}${clause === undefined ? "" : `, clause ${clause}`}`;
  const read = readOn === undefined ? "" : ` (read on ${readOn})`;
  return [{ strong: label }, `${where === "" ? "" : `, ${where}`}${read}: ${says}`];
}

/** Which of several sources are meant ("sources [1] and [2]"); empty where there is only one. */
export function sourcesNamed(cites: readonly string[], citations: ReadonlyMap<string, Citation>): string {
  if (citations.size < 2) return "";
  const ids = [...citations.keys()];
  const numbers = cites.map((id) => `[${ids.indexOf(id) + 1}]`);
  return ` (${numbers.length === 1 ? "source" : "sources"} ${numbers.join(", ")})`;
}
