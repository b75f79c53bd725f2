import { BAD, CLASS_OF_BYTE, characterEnd, codePointAt, INCOMPLETE, NAME_PART, NAME_START } from "./xml-bytes.js";

/** First and last code points outside ASCII that may begin a name (XML 1.0, fifth edition, production 4). */
const WIDE_STARTS = [
  0xc0, 0xd6, 0xd8, 0xf6, 0xf8, 0x2ff, 0x370, 0x37d, 0x37f, 0x1fff, 0x200c, 0x200d, 0x2070, 0x218f, 0x2c00, 0x2fef,
  0x3001, 0xd7ff, 0xf900, 0xfdcf, 0xfdf0, 0xfffd, 0x10000, 0xeffff,
];
/** Those that may also stand further on (production 4a). */
const WIDE_PARTS = [0xb7, 0xb7, 0x300, 0x36f, 0x203f, 0x2040];

/**
 * Runs over a name.
 *
 * @param from - its first byte
 * @returns where the name ends: the first byte that is not part of it; INCOMPLETE where the bytes end before that;
 * BAD where no name begins
 */
export function nameEnd(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  let wanted = NAME_START;
  while (at < to) {
    const byte = bytes[at] ?? 0;
    if (((CLASS_OF_BYTE[byte] ?? 0) & wanted) !== 0) at += 1;
    else if (byte < 128) return wanted === NAME_START ? BAD : at;
    else {
      const next = characterEnd(bytes, at, to);
      if (next < 0) return next;
      const code = codePointAt(bytes, at);
      const fits = within(WIDE_STARTS, code) || (wanted === NAME_PART && within(WIDE_PARTS, code));
      if (!fits) return wanted === NAME_START ? BAD : at;
      at = next;
    }
    wanted = NAME_PART;
  }
  return INCOMPLETE;
}

function within(ranges: readonly number[], code: number): boolean {
  for (let i = 0; i < ranges.length; i += 2) {
    if (code >= (ranges[i] ?? 0) && code <= (ranges[i + 1] ?? 0)) return true;
  }
  return false;
}
