import {
  AMPERSAND,
  BAD,
  CARRIAGE_RETURN,
  CLASS_OF_BYTE,
  COLON,
  characterEnd,
  DOUBLE_QUOTE,
  EQUALS,
  GREATER,
  INCOMPLETE,
  LESS,
  LINE_FEED,
  SINGLE_QUOTE,
  SLASH,
  SPACE,
  STOPS_VALUE,
  TAB,
} from "./xml-bytes.js";
import { entityEnd } from "./xml-entities.js";
import { nameEnd } from "./xml-names.js";
import { attributeValue, decodeUtf8, sameBytes } from "./xml-text.js";

/** Up to so many attributes are compared one with another to find two of a name. */
const FEW_ATTRIBUTES = 16;
/** Numbers kept for each attribute: start and end of its name, start and end of its value. */
const FIELDS = 4;

/** One start tag with its attributes, as places in the bytes it was read from; valid until the next is read. */
export class StartTag {
  bytes: Uint8Array = new Uint8Array(0);
  /** The name without its prefix, whatever prefix the writing program chose. */
  nameFrom = 0;
  /** The name with its prefix begins here. */
  fullNameFrom = 0;
  nameTo = 0;
  isSelfClosing = false;
  attributeCount = 0;
  /** Line ends passed so far, also where the tag turned out to be bad or incomplete. */
  lines = 0;
  #places = new Int32Array(FIELDS * FEW_ATTRIBUTES);
  #isPlain = new Uint8Array(FEW_ATTRIBUTES);

  /**
   * Reads the tag.
   *
   * @param from - first byte of its name
   * @returns where the tag ends, INCOMPLETE or BAD
   */
  read(bytes: Uint8Array, from: number, to: number): number {
    this.bytes = bytes;
    this.lines = 0;
    this.attributeCount = 0;
    const end = nameEnd(bytes, from, to);
    if (end < 0) return end;
    this.fullNameFrom = from;
    this.nameTo = end;
    let colon = from;
    while (colon < end && bytes[colon] !== COLON) colon += 1;
    this.nameFrom = colon === end ? from : colon + 1;
    let at = end;
    while (at < to) {
      const byte = bytes[at] ?? 0;
      if (byte === GREATER || byte === SLASH) return this.#readEnd(byte, at, to);
      const next = this.#spaceEnd(at, to);
      if (next === at) return BAD;
      if (next >= to) return INCOMPLETE;
      at = next;
      const first = bytes[at] ?? 0;
      if (first !== GREATER && first !== SLASH) at = this.#readAttribute(at, to);
      if (at < 0) return at;
    }
    return INCOMPLETE;
  }

  /** Index of the attribute of exactly this name, or -1. */
  find(name: Uint8Array): number {
    const { bytes } = this;
    for (let i = 0; i < this.attributeCount; i++) {
      const from = this.#place(i, 0);
      if (this.#place(i, 1) - from === name.length && sameBytes(bytes, from, name)) return i;
    }
    return -1;
  }

  /** Where the value of an attribute begins and ends, between its quotes. */
  valueFrom(index: number): number {
    return this.#place(index, 2);
  }

  valueTo(index: number): number {
    return this.#place(index, 3);
  }

  /** Whether the bytes of the value are the value: no references, nothing that counts as a blank. */
  isPlain(index: number): boolean {
    return this.#isPlain[index] === 1;
  }

  /** The value of an attribute as text. */
  value(index: number): string {
    const from = this.#place(index, 2);
    const to = this.#place(index, 3);
    return this.isPlain(index) ? decodeUtf8(this.bytes, from, to) : attributeValue(this.bytes, from, to);
  }

  /** The full name of an attribute as text. */
  attributeName(index: number): string {
    return decodeUtf8(this.bytes, this.#place(index, 0), this.#place(index, 1));
  }

  /** The name of the element without its prefix, as text. */
  get localName(): string {
    return decodeUtf8(this.bytes, this.nameFrom, this.nameTo);
  }

  #place(index: number, field: number): number {
    return this.#places[FIELDS * index + field] ?? 0;
  }

  #readAttribute(from: number, to: number): number {
    const { bytes } = this;
    const end = nameEnd(bytes, from, to);
    if (end < 0) return end;
    const sign = this.#spaceEnd(end, to);
    if (sign >= to) return INCOMPLETE;
    if (bytes[sign] !== EQUALS) return BAD;
    const open = this.#spaceEnd(sign + 1, to);
    if (open >= to) return INCOMPLETE;
    const quote = bytes[open] ?? 0;
    if (quote !== DOUBLE_QUOTE && quote !== SINGLE_QUOTE) return BAD;
    const index = this.attributeCount;
    if (index >= this.#isPlain.length) this.#grow();
    this.#isPlain[index] = 1;
    const close = this.#valueEnd(open + 1, to, quote);
    if (close < 0) return close;
    const place = FIELDS * index;
    this.#places[place] = from;
    this.#places[place + 1] = end;
    this.#places[place + 2] = open + 1;
    this.#places[place + 3] = close;
    if (index < FEW_ATTRIBUTES && this.#isTwin(index)) return BAD;
    this.attributeCount += 1;
    return close + 1;
  }

  #valueEnd(from: number, to: number, quote: number): number {
    const { bytes } = this;
    let at = from;
    while (at < to) {
      const byte = bytes[at] ?? 0;
      if (((CLASS_OF_BYTE[byte] ?? 0) & STOPS_VALUE) === 0) at += 1;
      else if (byte === quote) return at;
      else {
        at = this.#valueOddity(byte, at, to);
        if (at < 0) return at;
      }
    }
    return INCOMPLETE;
  }

  /** Whatever else interrupts a plain value; gives where it goes on. */
  #valueOddity(byte: number, at: number, to: number): number {
    if (byte >= 128) return characterEnd(this.bytes, at, to);
    if (byte === DOUBLE_QUOTE || byte === SINGLE_QUOTE) return at + 1;
    this.#isPlain[this.attributeCount] = 0;
    if (byte === AMPERSAND) return entityEnd(this.bytes, at, to);
    if (byte === TAB) return at + 1;
    if (byte === LESS || (byte !== LINE_FEED && byte !== CARRIAGE_RETURN)) return BAD;
    return this.#spaceEnd(at, at + 1);
  }

  /** Where white space ends, counting its lines; `from` itself where there is none. */
  #spaceEnd(from: number, to: number): number {
    const { bytes } = this;
    let at = from;
    for (; at < to; at++) {
      const byte = bytes[at] ?? 0;
      if (((CLASS_OF_BYTE[byte] ?? 0) & SPACE) === 0) break;
      if (byte === LINE_FEED || (byte === CARRIAGE_RETURN && bytes[at + 1] !== LINE_FEED)) this.lines += 1;
    }
    return at;
  }

  #isTwin(index: number): boolean {
    const from = this.#place(index, 0);
    const length = this.#place(index, 1) - from;
    for (let other = 0; other < index; other++) {
      const start = this.#place(other, 0);
      if (this.#place(other, 1) - start !== length) continue;
      let same = 0;
      while (same < length && this.bytes[start + same] === this.bytes[from + same]) same += 1;
      if (same === length) return true;
    }
    return false;
  }

  #readEnd(byte: number, at: number, to: number): number {
    this.isSelfClosing = byte === SLASH;
    if (this.isSelfClosing && at + 1 >= to) return INCOMPLETE;
    if (this.isSelfClosing && this.bytes[at + 1] !== GREATER) return BAD;
    const end = this.isSelfClosing ? at + 2 : at + 1;
    if (this.attributeCount <= FEW_ATTRIBUTES) return end;
    const names = new Set<string>();
    for (let i = 0; i < this.attributeCount; i++) names.add(this.attributeName(i));
    return names.size === this.attributeCount ? end : BAD;
  }

  #grow(): void {
    const places = new Int32Array(2 * this.#places.length);
    places.set(this.#places);
    this.#places = places;
    const isPlain = new Uint8Array(2 * this.#isPlain.length);
    isPlain.set(this.#isPlain);
    this.#isPlain = isPlain;
  }
}
