import { AMPERSAND, BAD, CARRIAGE_RETURN, INCOMPLETE, LINE_FEED, SEMICOLON, TAB } from "./xml-bytes.js";

const NAMED: ReadonlyMap<string, number> = new Map([
  ["amp", AMPERSAND],
  ["lt", 60],
  ["gt", 62],
  ["quot", 34],
  ["apos", 39],
]);
const BEYOND_UNICODE = 0x110000;
/** Zeros may lead a numbered reference without end; nobody writes them. */
const LONGEST = 1_000;

/**
 * Finds the end of a reference such as `&amp;` or `&#181;` and checks that it stands for a character.
 *
 * @param at - its ampersand
 * @returns where the next character begins, INCOMPLETE, or BAD: entities of a document's own are never looked up
 */
export function entityEnd(bytes: Uint8Array, at: number, to: number): number {
  let end = at + 1;
  while (end < to && isWord(bytes[end] ?? 0)) end += 1;
  if (end - at > LONGEST) return BAD;
  if (end >= to) return INCOMPLETE;
  return bytes[end] === SEMICOLON && entityCode(bytes, at) !== BAD ? end + 1 : BAD;
}

/** The code point that a whole reference stands for; BAD if it stands for none. */
export function entityCode(bytes: Uint8Array, at: number): number {
  return bytes[at + 1] === 35 ? numbered(bytes, at + 2) : named(bytes, at + 1);
}

function named(bytes: Uint8Array, from: number): number {
  let name = "";
  for (let at = from; bytes[at] !== SEMICOLON; at++) {
    name += String.fromCharCode(bytes[at] ?? 0);
    if (name.length > 4) return BAD;
  }
  return NAMED.get(name) ?? BAD;
}

/** A number may begin with any count of zeros, so that it is added up rather than cut out. */
function numbered(bytes: Uint8Array, from: number): number {
  const radix = bytes[from] === 120 ? 16 : 10;
  let at = radix === 16 ? from + 1 : from;
  if (bytes[at] === SEMICOLON) return BAD;
  let code = 0;
  for (; bytes[at] !== SEMICOLON; at++) {
    const digit = digitOf(bytes[at] ?? 0);
    if (digit >= radix) return BAD;
    code = Math.min(BEYOND_UNICODE, code * radix + digit);
  }
  return isCharacter(code) ? code : BAD;
}

function digitOf(byte: number): number {
  if (byte >= 48 && byte <= 57) return byte - 48;
  const letter = byte | 32;
  return letter >= 97 && letter <= 102 ? letter - 87 : BEYOND_UNICODE;
}

/** Letters, digits and the number sign; anything else has no place in a reference that is known here. */
function isWord(byte: number): boolean {
  return (byte >= 48 && byte <= 57) || (byte >= 97 && byte <= 122) || (byte >= 65 && byte <= 90) || byte === 35;
}

/** XML 1.0, production 2. */
function isCharacter(code: number): boolean {
  if (code < 32) return code === TAB || code === LINE_FEED || code === CARRIAGE_RETURN;
  return code < 0xd800 || (code > 0xdfff && code < 0xfffe) || (code > 0xffff && code < BEYOND_UNICODE);
}
