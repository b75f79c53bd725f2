import { plainWords } from "../../facts/index.js";
import type { Citation } from "../../rulebook/index.js";

/** A source in one line: where it stands, what it says, and how well it is founded. */
export function sourceInWords(citation: Citation): string {
  const clause = citation.clause === undefined ? "" : `, clause ${citation.clause}`;
  const source = citation.source === undefined ? "" : `${citation.source}${clause}: `;
  return `${source}${citation.says} (${plainWords(citation.basis)})`;
}
