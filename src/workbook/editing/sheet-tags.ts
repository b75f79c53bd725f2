import { readAddress } from "../cell-address.js";
import type { XmlScanner } from "../xml-scan.js";

/** A stretch of a part, bytes from its beginning. */
export interface Located {
  readonly from: number;
  readonly to: number;
}

const names = new Map<string, Uint8Array>();
const UPPER_A = 65;
const UPPER_Z = 90;
const DIGIT_0 = 48;
const DIGIT_9 = 57;

function bytesOf(name: string): Uint8Array {
  const known = names.get(name);
  if (known) return known;
  const bytes = new TextEncoder().encode(name);
  names.set(name, bytes);
  return bytes;
}

/** Value of an attribute of the tag that opens, or null. */
export function attribute({ tag }: XmlScanner, name: string): string | null {
  const index = tag.find(bytesOf(name));
  return index < 0 ? null : tag.value(index);
}

/** Where the value of an attribute stands, between its quotes; null if there is none. */
export function valuePlace({ tag, tagFrom }: XmlScanner, name: string): Located | null {
  const index = tag.find(bytesOf(name));
  if (index < 0) return null;
  // The tag knows places in the bytes it was read from, where it begins with "<" in front of its name.
  const before = tagFrom - (tag.fullNameFrom - 1);
  return { from: before + tag.valueFrom(index), to: before + tag.valueTo(index) };
}

/** The start tag as written. */
export function tagText({ tag, tagFrom, tagTo }: XmlScanner): string {
  const from = tag.fullNameFrom - 1;
  return new TextDecoder().decode(tag.bytes.subarray(from, from + tagTo - tagFrom));
}

/** Whether an attribute says yes. */
export function isTrue(value: string | null): boolean {
  return value !== null && /^\s*(?:1|true|on)\s*$/i.test(value);
}

/** A whole number as attributes write it; NaN for anything else. */
export function numberIn(text: string): number {
  return /^\s*\d{1,9}\s*$/.test(text) ? Number(text) : Number.NaN;
}

/**
 * Column of the cell that opens, by its address or else behind the one before.
 *
 * @returns 0 if the address cannot be read or names another row
 */
export function addressAt(xml: XmlScanner, row: number, columnBefore: number): number {
  const { tag } = xml;
  const index = tag.find(bytesOf("r"));
  if (index < 0) return columnBefore + 1;
  const { bytes } = tag;
  const to = tag.valueTo(index);
  let at = tag.valueFrom(index);
  let column = 0;
  for (; at < to; at++) {
    const byte = bytes[at] ?? 0;
    if (byte < UPPER_A || byte > UPPER_Z) break;
    column = column * 26 + byte - UPPER_A + 1;
  }
  let number = 0;
  for (; at < to; at++) {
    const byte = bytes[at] ?? 0;
    if (byte < DIGIT_0 || byte > DIGIT_9) break;
    number = number * 10 + byte - DIGIT_0;
  }
  if (at === to && number === row && column > 0) return column;
  // The rare spellings: dollar signs, small letters.
  const address = readAddress(tag.value(index));
  return address?.row === row ? address.column : 0;
}
