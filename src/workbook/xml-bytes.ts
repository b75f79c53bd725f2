/** What a byte-wise look at XML gives where the bytes end too early to tell. */
export const INCOMPLETE = -1;
/** What it gives for bytes that no XML holds. */
export const BAD = -2;

/** Bits of a byte's class: where it interrupts a plain run of bytes, and what it may be part of. */
export const STOPS_TEXT = 1;
export const STOPS_VALUE = 2;
/** Stops the inside of comments, CDATA sections and processing instructions. */
export const STOPS_BODY = 4;
export const NAME_START = 8;
export const NAME_PART = 16;
export const SPACE = 32;

export const TAB = 9;
export const LINE_FEED = 10;
export const CARRIAGE_RETURN = 13;
export const BANG = 33;
export const DOUBLE_QUOTE = 34;
export const AMPERSAND = 38;
export const SINGLE_QUOTE = 39;
export const MINUS = 45;
export const SLASH = 47;
export const COLON = 58;
export const SEMICOLON = 59;
export const LESS = 60;
export const EQUALS = 61;
export const GREATER = 62;
export const QUESTION = 63;
export const CLOSING_BRACKET = 93;

/** The class of every byte. Bytes of characters outside ASCII stop every run, so that they are looked at. */
export const CLASS_OF_BYTE: Uint8Array = makeClasses();

function makeClasses(): Uint8Array {
  const classes = new Uint8Array(256);
  const everywhere = STOPS_TEXT | STOPS_VALUE | STOPS_BODY;
  const mark = (bytes: Iterable<number>, bits: number): void => {
    for (const byte of bytes) classes[byte] = (classes[byte] ?? 0) | bits;
  };
  const codes = (characters: string): number[] => [...characters].map((character) => character.charCodeAt(0));
  // Line ends stop every run because lines are counted and written in one way.
  for (let byte = 0; byte < 32; byte++) if (byte !== TAB) mark([byte], everywhere);
  for (let byte = 128; byte < 256; byte++) mark([byte], everywhere);
  mark(codes("<&>"), STOPS_TEXT);
  mark(codes("<&\"'\t"), STOPS_VALUE);
  mark(codes("->"), STOPS_BODY);
  mark(codes(":_ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"), NAME_START | NAME_PART);
  mark(codes("-.0123456789"), NAME_PART);
  mark([TAB, LINE_FEED, CARRIAGE_RETURN, 32], SPACE);
  return classes;
}

/**
 * Looks at a character outside ASCII.
 *
 * @param at - its first byte
 * @returns where the next character begins, INCOMPLETE, or BAD where it is not UTF-8 or no character of XML
 * (Unicode, table 3-7 "Well-Formed UTF-8 Byte Sequences"; XML 1.0, production 2)
 */
export function characterEnd(bytes: Uint8Array, at: number, to: number): number {
  const lead = bytes[at] ?? 0;
  const length = characterLength(lead);
  if (length === 0) return BAD;
  if (at + 1 >= to) return INCOMPLETE;
  const second = bytes[at + 1] ?? 0;
  if (!maySecond(lead, second)) return BAD;
  for (let i = at + 2; i < at + length; i++) {
    if (i >= to) return INCOMPLETE;
    if (((bytes[i] ?? 0) & 0xc0) !== 0x80) return BAD;
  }
  // U+FFFE and U+FFFF are no characters.
  if (lead === 0xef && second === 0xbf && (bytes[at + 2] ?? 0) > 0xbd) return BAD;
  return at + length;
}

/** Bytes of the character that begins with this one; 0 if none does. */
function characterLength(lead: number): number {
  if (lead < 0xc2 || lead > 0xf4) return 0;
  if (lead < 0xe0) return 2;
  return lead < 0xf0 ? 3 : 4;
}

/** Keeps out characters written longer than need be, halves of pairs and what lies beyond the last character. */
function maySecond(lead: number, second: number): boolean {
  if (second < 0x80 || second > 0xbf) return false;
  if (lead === 0xe0) return second >= 0xa0;
  if (lead === 0xed) return second <= 0x9f;
  if (lead === 0xf0) return second >= 0x90;
  return lead !== 0xf4 || second <= 0x8f;
}

/** The code point of a character outside ASCII that `characterEnd` found to be one. */
export function codePointAt(bytes: Uint8Array, at: number): number {
  const lead = bytes[at] ?? 0;
  const follower = (i: number): number => (bytes[at + i] ?? 0) & 0x3f;
  if (lead < 0xe0) return ((lead & 0x1f) << 6) | follower(1);
  if (lead < 0xf0) return ((lead & 0x0f) << 12) | (follower(1) << 6) | follower(2);
  return ((lead & 0x07) << 18) | (follower(1) << 12) | (follower(2) << 6) | follower(3);
}
