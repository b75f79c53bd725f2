import {
  AMPERSAND,
  BAD,
  CARRIAGE_RETURN,
  CLASS_OF_BYTE,
  CLOSING_BRACKET,
  characterEnd,
  GREATER,
  INCOMPLETE,
  LESS,
  LINE_FEED,
  MINUS,
  QUESTION,
  STOPS_BODY,
  STOPS_TEXT,
} from "./xml-bytes.js";
import type { Inside } from "./xml-sections.js";

/**
 * Runs over stretches between tags: text up to the next markup, reference or carriage return, and what is inside
 * comments, CDATA sections and processing instructions. What may be the beginning of an end waits for more bytes.
 */
export class Stretch {
  /** Line feeds in the stretch. */
  lines = 0;
  /** Whether the comment, section or instruction ends with the stretch. */
  isClosed = false;
  /** Where the characters of the stretch end, before what closes it. */
  charactersTo = 0;
  #bytes: Uint8Array = new Uint8Array(0);
  #from = 0;
  #to = 0;

  /** @returns where the stretch of text ends, INCOMPLETE or BAD */
  passText(bytes: Uint8Array, from: number, to: number): number {
    this.#begin(bytes, from, to);
    let at = from;
    while (at < to) {
      const byte = bytes[at] ?? 0;
      if (((CLASS_OF_BYTE[byte] ?? 0) & STOPS_TEXT) === 0) at += 1;
      else if (byte === LESS || byte === AMPERSAND || byte === CARRIAGE_RETURN) return this.#ended(at);
      else if (byte === GREATER) {
        // XML 1.0, production 14: text must not hold "]]>".
        if (this.#closesWith(CLOSING_BRACKET, 2, at)) return BAD;
        at += 1;
      } else {
        const next = this.#oddity(byte, at);
        if (next === BAD) return BAD;
        if (next === INCOMPLETE) return this.#ended(at);
        at = next;
      }
    }
    return this.#ended(this.#held(at, CLOSING_BRACKET));
  }

  /** @returns where the stretch inside a comment, section or instruction ends, INCOMPLETE or BAD */
  passBody(inside: Inside, bytes: Uint8Array, from: number, to: number): number {
    this.#begin(bytes, from, to);
    let at = from;
    while (at < to) {
      const byte = bytes[at] ?? 0;
      if (((CLASS_OF_BYTE[byte] ?? 0) & STOPS_BODY) === 0) at += 1;
      else if (byte === CARRIAGE_RETURN) return this.#ended(at);
      else {
        const next = this.#bodyOddity(inside, byte, at);
        if (next === INCOMPLETE) return this.#ended(at);
        if (next === BAD || this.isClosed) return next;
        at = next;
      }
    }
    if (inside === "comment") return this.#ended(at);
    return this.#ended(this.#held(at, inside === "cdata" ? CLOSING_BRACKET : QUESTION));
  }

  #begin(bytes: Uint8Array, from: number, to: number): void {
    this.lines = 0;
    this.isClosed = false;
    this.#bytes = bytes;
    this.#from = from;
    this.#to = to;
  }

  #ended(at: number): number {
    this.charactersTo = at;
    return at === this.#from ? INCOMPLETE : at;
  }

  #bodyOddity(inside: Inside, byte: number, at: number): number {
    if (byte === MINUS) return inside === "comment" ? this.#commentEnd(at) : at + 1;
    if (byte !== GREATER) return this.#oddity(byte, at);
    const mark = inside === "cdata" ? 2 : 1;
    const closes = inside !== "comment" && this.#closesWith(inside === "cdata" ? CLOSING_BRACKET : QUESTION, mark, at);
    return closes ? this.#closed(at - mark, at + 1) : at + 1;
  }

  #commentEnd(at: number): number {
    if (at + 2 >= this.#to) return INCOMPLETE;
    if (this.#bytes[at + 1] !== MINUS) return at + 1;
    return this.#bytes[at + 2] === GREATER ? this.#closed(at, at + 3) : BAD;
  }

  #closed(charactersTo: number, end: number): number {
    this.isClosed = true;
    this.charactersTo = charactersTo;
    return end;
  }

  /** A line feed, or a character outside ASCII; anything else that comes here is a control character. */
  #oddity(byte: number, at: number): number {
    if (byte >= 128) return characterEnd(this.#bytes, at, this.#to);
    if (byte !== LINE_FEED) return BAD;
    this.lines += 1;
    return at + 1;
  }

  #closesWith(byte: number, count: number, at: number): boolean {
    if (at - count < this.#from) return false;
    for (let i = at - count; i < at; i++) if (this.#bytes[i] !== byte) return false;
    return true;
  }

  /** Leaves up to two closing bytes at the end for the next stretch, since what follows decides what they are. */
  #held(end: number, byte: number): number {
    let at = end;
    while (at > this.#from && at > end - 2 && this.#bytes[at - 1] === byte) at -= 1;
    return at;
  }
}
