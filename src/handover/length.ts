import { collectGraphemes } from "unicode-segmenter/grapheme";
import type { CountedIn, Length } from "./mapping.js";

/** How long a text is as the other side counts: code points, UTF-16 units, or bytes of UTF-8. */
export function lengthOf(text: string, counted: CountedIn): number {
  if (counted === "utf-16-units") return text.length;
  let length = 0;
  for (const character of text) length += counted === "characters" ? 1 : bytesOf(character.codePointAt(0) ?? 0);
  return length;
}

function bytesOf(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}

/** A text is cut between words where that keeps at least this share of what would fit. */
const WORDS_KEEP = 0.6;

/** What is left out in front of a cut. */
const TRAILING = /^[\s,;:–-]/u;

/**
 * A text cut to a length: between two words where that does not cost much, else between two graphemes, so that no
 * letter loses its accent and no half of a character is left. Graphemes are those of one fixed version of Unicode,
 * the same on every machine; those of the machine change with its version.
 */
export function shorten(text: string, { most, counted, mark }: Pick<Length, "most" | "counted" | "mark">): string {
  const end = lengthOf(mark, counted) < most ? mark : "";
  const room = most - lengthOf(end, counted);
  const graphemes = collectGraphemes(text);
  let taken = 0;
  let used = 0;
  let lastBlank = 0;
  for (const grapheme of graphemes) {
    used += lengthOf(grapheme, counted);
    if (used > room) break;
    if (/^\s/u.test(grapheme)) lastBlank = taken;
    taken += 1;
  }
  const next = graphemes[taken];
  const between = next === undefined || /^\s/u.test(next);
  const kept = !between && lastBlank >= taken * WORDS_KEEP ? lastBlank : taken;
  let last = kept;
  while (last > 0 && TRAILING.test(graphemes[last - 1] ?? "")) last -= 1;
  return graphemes.slice(0, last).join("") + end;
}
