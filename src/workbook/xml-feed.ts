import { Utf8Pieces } from "./xml-encoding.js";
import { refuseDamagedXml } from "./xml-faults.js";
import type { XmlScanner } from "./xml-scan.js";

/** Hands a part in any encoding to a scanner, piece by piece. */
export class XmlFeed {
  readonly #part: string;
  readonly #scanner: XmlScanner;
  readonly #pieces: Utf8Pieces;

  /** @param part - name of the part, for messages */
  constructor(part: string, scanner: XmlScanner) {
    this.#part = part;
    this.#scanner = scanner;
    this.#pieces = new Utf8Pieces(part);
  }

  /** @throws Unreadable as the scanner does, and for an encoding that is not known */
  write(piece: Uint8Array): void {
    this.#pass(piece, false);
  }

  /** @throws Unreadable if something is missing */
  end(): void {
    this.#pass(new Uint8Array(0), true);
    this.#scanner.end();
  }

  #pass(piece: Uint8Array, last: boolean): void {
    const utf8 = this.#pieces.next(piece, last);
    if (utf8 === null) refuseDamagedXml(this.#part, this.#scanner.line);
    this.#scanner.write(utf8);
  }
}
