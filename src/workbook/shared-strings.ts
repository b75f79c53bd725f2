import type { PartReceiver } from "./package.js";
import { TextRuns } from "./rich-text.js";
import { SharedTexts } from "./shared-texts.js";
import { CLASS_OF_BYTE, characterEnd, LESS, STOPS_TEXT } from "./xml-bytes.js";
import { XmlFeed } from "./xml-feed.js";
import { type XmlEvents, XmlScanner } from "./xml-scan.js";
import { sameBytes } from "./xml-text.js";

const NAMES = ["t", "si", "r"];
const asciiOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const OPENING = asciiOf("<si><t>");
const PRESERVING = asciiOf(`<si><t xml:space="preserve">`);
const CLOSING = asciiOf("</t></si>");
const LONGEST_OPENING = 32;

/** Gathers the texts that cells refer to by number. The counts that the part states are not believed. */
export class SharedStrings implements PartReceiver, XmlEvents {
  readonly texts: SharedTexts;
  readonly #feed: XmlFeed;
  readonly #runs = new TextRuns();
  #inText = false;

  /** @param part - name of the part, for messages */
  constructor(part: string, mostCharacters: number) {
    this.texts = new SharedTexts(mostCharacters);
    this.#feed = new XmlFeed(part, new XmlScanner(part, NAMES, this));
  }

  /** @throws Unreadable if the part is damaged */
  write(piece: Uint8Array): void {
    this.#feed.write(piece);
  }

  /** @throws Unreadable if the part is damaged */
  end(): void {
    this.#feed.end();
  }

  open({ depth, element }: XmlScanner): boolean {
    const name = NAMES[element - 1] ?? "";
    if (depth === 2) {
      this.#inText = name === "si";
      this.#runs.begin();
      return false;
    }
    return this.#inText && depth > 2 && this.#runs.open(name, depth - 2);
  }

  close({ depth, text }: XmlScanner): void {
    if (!this.#inText || depth < 2) return;
    if (depth === 2) this.texts.finish();
    else if (text.isHere) this.texts.add(text.bytes, text.from, text.to);
  }

  /** Takes texts without runs, references and line ends straight from the bytes. */
  pass({ depth }: XmlScanner, bytes: Uint8Array, from: number, to: number): number {
    if (depth !== 1) return from;
    let at = from;
    for (let next = from; next > 0; next = this.#passOne(bytes, at, to)) at = next;
    return at;
  }

  /** Behind the text, or 0 if it is not plain or not all there. */
  #passOne(bytes: Uint8Array, from: number, to: number): number {
    if (from + LONGEST_OPENING > to) return 0;
    let start = from + OPENING.length;
    if (!sameBytes(bytes, from, OPENING)) {
      if (!sameBytes(bytes, from, PRESERVING)) return 0;
      start = from + PRESERVING.length;
    }
    let at = start;
    while (at < to && bytes[at] !== LESS) {
      const byte = bytes[at] ?? 0;
      if (((CLASS_OF_BYTE[byte] ?? 0) & STOPS_TEXT) === 0) at += 1;
      else if (byte < 128) return 0;
      else {
        at = characterEnd(bytes, at, to);
        if (at < 0) return 0;
      }
    }
    if (at + CLOSING.length > to || !sameBytes(bytes, at, CLOSING)) return 0;
    this.texts.add(bytes, start, at);
    this.texts.finish();
    return at + CLOSING.length;
  }
}
