import type { CellValue } from "./cells.js";
import { TEXT_BYTES } from "./limits.js";
import { textValue, undoEscapes } from "./rich-text.js";
import { decodeUtf8 } from "./xml-text.js";

const UNDERSCORE = 95;
const FIRST_BYTES = 4_096;
const FIRST_TEXTS = 256;

/**
 * The texts that cells refer to by number. They stay bytes until someone asks for one: a survey of a million rows has
 * as many names, and a string with its value takes ten times as much. A text that was asked for stays the same object.
 */
export class SharedTexts {
  readonly #mostCharacters: number;
  readonly #values: (CellValue | null | undefined)[] = [];
  #bytes: Uint8Array = new Uint8Array(FIRST_BYTES);
  /** Where the bytes of each text end; they begin where those of the one before end. */
  #ends = new Uint32Array(FIRST_TEXTS);
  #to = 0;

  constructor(mostCharacters: number) {
    this.#mostCharacters = mostCharacters;
  }

  get length(): number {
    return this.#values.length;
  }

  /** Adds bytes in UTF-8 to the text that `finish` will end. */
  add(bytes: Uint8Array, from: number, to: number): void {
    // What is longer than that is too long for a cell, however much longer.
    if (this.#to - this.#start > TEXT_BYTES) return;
    if (this.#to + to - from > this.#bytes.length) {
      const wider = new Uint8Array(2 * (this.#to + to - from));
      wider.set(this.#bytes.subarray(0, this.#to));
      this.#bytes = wider;
    }
    if (to - from > 32) this.#bytes.set(bytes.subarray(from, to), this.#to);
    else for (let i = from; i < to; i++) this.#bytes[this.#to + i - from] = bytes[i] ?? 0;
    this.#to += to - from;
  }

  /** Ends a text. */
  finish(): void {
    const index = this.#values.length;
    const start = this.#start;
    // A letter or digit says enough; anything else may be a blank, or an escape for one.
    if (this.#holdsSomething(start)) this.#values.push(undefined);
    else {
      this.#values.push(this.#valueOf(start, this.#to));
      this.#to = start;
    }
    if (index === this.#ends.length) {
      const wider = new Uint32Array(2 * index);
      wider.set(this.#ends);
      this.#ends = wider;
    }
    this.#ends[index] = this.#to;
  }

  /** Whether the text is blanks only, which makes a cell empty. */
  isBlank(index: number): boolean {
    return this.#values[index] === null;
  }

  /** A text as a value; null for blanks only, undefined for a number that no text has. */
  at(index: number): CellValue | null | undefined {
    const known = this.#values[index];
    if (known !== undefined || index < 0 || index >= this.#values.length) return known;
    const value = this.#valueOf(index === 0 ? 0 : (this.#ends[index - 1] ?? 0), this.#ends[index] ?? 0);
    this.#values[index] = value;
    return value;
  }

  get #start(): number {
    const { length } = this.#values;
    return length === 0 ? 0 : (this.#ends[length - 1] ?? 0);
  }

  #holdsSomething(start: number): boolean {
    for (let at = start; at < this.#to; at++) {
      const byte = this.#bytes[at] ?? 0;
      if (byte > 32) return byte < 127 && byte !== UNDERSCORE;
    }
    return false;
  }

  #valueOf(from: number, to: number): CellValue | null {
    return textValue(undoEscapes(decodeUtf8(this.#bytes, from, to)), this.#mostCharacters);
  }
}
