import { AMPERSAND, CARRIAGE_RETURN, LINE_FEED, SEMICOLON, TAB } from "./xml-bytes.js";
import { entityCode } from "./xml-entities.js";

const FIRST_BYTES = 1_024;
/** Texts up to this length are put together here, which is faster than calling the decoder for each. */
const SHORT = 12;

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** Text of bytes that are known to be UTF-8. */
export function decodeUtf8(bytes: Uint8Array, from: number, to: number): string {
  if (to - from > SHORT) return decoder.decode(bytes.subarray(from, to));
  const codes: number[] = [];
  for (let at = from; at < to; at++) {
    const byte = bytes[at] ?? 0;
    if (byte >= 128) return decoder.decode(bytes.subarray(from, to));
    codes.push(byte);
  }
  return String.fromCharCode(...codes);
}

/** Whether the bytes from a place on are those of the name. */
export function sameBytes(bytes: Uint8Array, from: number, name: Uint8Array): boolean {
  for (let i = 0; i < name.length; i++) if (bytes[from + i] !== name[i]) return false;
  return true;
}

/** The value of an attribute that holds references or white space other than blanks (XML 1.0, section 3.3.3). */
export function attributeValue(bytes: Uint8Array, from: number, to: number): string {
  const gathered = new GatheredText();
  let start = from;
  const flush = (end: number, next: number): void => {
    gathered.addBytes(bytes, start, end);
    start = next;
  };
  for (let at = from; at < to; at++) {
    const byte = bytes[at] ?? 0;
    if (byte === AMPERSAND) {
      const end = bytes.indexOf(SEMICOLON, at) + 1;
      flush(at, end);
      gathered.addCharacter(entityCode(bytes, at));
      at = end - 1;
    } else if (byte === TAB || byte === LINE_FEED || byte === CARRIAGE_RETURN) {
      flush(at, at + 1);
      // A carriage return with its line feed is one blank.
      if (byte !== CARRIAGE_RETURN || bytes[at + 1] !== LINE_FEED) gathered.addCharacter(32);
    }
  }
  flush(to, to);
  return gathered.text;
}

/** UTF-8 that is put together from pieces. */
export class GatheredText {
  bytes: Uint8Array = new Uint8Array(FIRST_BYTES);
  length = 0;

  clear(): void {
    this.length = 0;
    // One long text must not keep its memory for all that follow.
    if (this.bytes.length > 64 * FIRST_BYTES) this.bytes = new Uint8Array(FIRST_BYTES);
  }

  addBytes(bytes: Uint8Array, from: number, to: number): void {
    if (to <= from) return;
    this.#makeRoom(to - from);
    this.bytes.set(bytes.subarray(from, to), this.length);
    this.length += to - from;
  }

  /** @param code - code point of a character */
  addCharacter(code: number): void {
    this.#makeRoom(4);
    if (code < 0x80) this.#add(code);
    else if (code < 0x800) this.#add(0xc0 | (code >> 6), code);
    else if (code < 0x10000) this.#add(0xe0 | (code >> 12), code >> 6, code);
    else this.#add(0xf0 | (code >> 18), code >> 12, code >> 6, code);
  }

  get text(): string {
    return decodeUtf8(this.bytes, 0, this.length);
  }

  #add(lead: number, ...followers: readonly number[]): void {
    this.bytes[this.length++] = lead;
    for (const bits of followers) this.bytes[this.length++] = 0x80 | (bits & 0x3f);
  }

  #makeRoom(more: number): void {
    if (this.length + more <= this.bytes.length) return;
    const wider = new Uint8Array(Math.max(2 * this.bytes.length, this.length + more));
    wider.set(this.bytes.subarray(0, this.length));
    this.bytes = wider;
  }
}
