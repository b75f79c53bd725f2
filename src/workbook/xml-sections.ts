import { BAD, CLASS_OF_BYTE, GREATER, INCOMPLETE, LESS, QUESTION, SPACE } from "./xml-bytes.js";
import { nameEnd } from "./xml-names.js";
import { decodeUtf8 } from "./xml-text.js";

/** What a place in XML can be inside of, apart from tags, which are taken whole. */
export type Inside = "text" | "comment" | "cdata" | "instruction";

const SECTIONS = (["<!--", "<![CDATA[", "<!DOCTYPE"] as const).map((opening) => new TextEncoder().encode(opening));
const KINDS = ["comment", "cdata", "document-type"] as const;

const DECLARATION =
  /^<\?xml[ \t\r\n]+version[ \t\r\n]*=[ \t\r\n]*(?:"1\.[0-9]+"|'1\.[0-9]+')(?:[ \t\r\n]+encoding[ \t\r\n]*=[ \t\r\n]*(?:"[A-Za-z][A-Za-z0-9._-]*"|'[A-Za-z][A-Za-z0-9._-]*'))?(?:[ \t\r\n]+standalone[ \t\r\n]*=[ \t\r\n]*(?:"(?:yes|no)"|'(?:yes|no)'))?[ \t\r\n]*\?>$/;

/** A section that opens, and where what it holds begins. */
export interface OpenedSection {
  readonly kind: (typeof KINDS)[number];
  readonly bodyFrom: number;
}

/** What opens with "<!" at the place; null where nothing does that XML knows; INCOMPLETE where it cannot be told yet. */
export function sectionAt(bytes: Uint8Array, at: number, to: number): OpenedSection | typeof INCOMPLETE | null {
  for (const [i, opening] of SECTIONS.entries()) {
    let same = 0;
    while (same < opening.length && at + same < to && bytes[at + same] === opening[same]) same += 1;
    if (same === opening.length) return { kind: KINDS[i] ?? "comment", bodyFrom: at + same };
    if (at + same === to) return INCOMPLETE;
  }
  return null;
}

/**
 * Looks at what opens with "<?".
 *
 * @param isFirst - whether it is the very first in the part, where alone an XML declaration may stand
 * @returns for a declaration where it ends, behind its ">"; for an instruction where its body begins; INCOMPLETE or BAD
 */
export function instructionBody(bytes: Uint8Array, at: number, to: number, isFirst: boolean): number {
  const end = nameEnd(bytes, at + 2, to);
  if (end < 0) return end;
  const next = bytes[end] ?? 0;
  if (next !== QUESTION && ((CLASS_OF_BYTE[next] ?? 0) & SPACE) === 0) return BAD;
  const target = decodeUtf8(bytes, at + 2, end);
  if (target.toLowerCase() !== "xml") return end;
  if (target !== "xml" || !isFirst) return BAD;
  let close = end;
  while (close < to && bytes[close] !== GREATER) {
    if (bytes[close] === LESS) return BAD;
    close += 1;
  }
  if (close >= to) return INCOMPLETE;
  return DECLARATION.test(decodeUtf8(bytes, at, close + 1)) ? close + 1 : BAD;
}
