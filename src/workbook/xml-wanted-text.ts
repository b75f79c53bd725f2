import { TEXT_BYTES } from "./limits.js";
import { decodeUtf8, GatheredText } from "./xml-text.js";

/**
 * The text inside an element, as UTF-8 with references and line ends resolved. While it is one stretch of the bytes
 * in hand, as nearly always, it is not copied.
 */
export class WantedText {
  /** Where the text stands once its element closes. */
  bytes: Uint8Array = new Uint8Array(0);
  from = 0;
  to = 0;
  /** Whether the element that closes is the one whose text was wanted; only then the rest says anything. */
  isHere = false;
  /** Longer than any text that is kept; what is here is its beginning. */
  isTooLong = false;
  readonly #gathered = new GatheredText();

  /** The text as a string; "" where it was not wanted. */
  get string(): string {
    return this.isHere ? decodeUtf8(this.bytes, this.from, this.to) : "";
  }

  /** Adds a stretch of bytes that stay in place until `settle` is called. */
  add(bytes: Uint8Array, from: number, to: number): void {
    if (to <= from) return;
    if (this.to === this.from && this.#gathered.length === 0) {
      this.bytes = bytes;
      this.from = from;
      this.to = to;
      return;
    }
    this.settle();
    this.isTooLong ||= this.#gathered.length > TEXT_BYTES;
    if (!this.isTooLong) this.#gathered.addBytes(bytes, from, to);
  }

  /** @param code - code point */
  addCharacter(code: number): void {
    this.settle();
    this.isTooLong ||= this.#gathered.length > TEXT_BYTES;
    if (!this.isTooLong) this.#gathered.addCharacter(code);
  }

  /** Copies what stands in bytes that are about to move. */
  settle(): void {
    if (this.to === this.from) return;
    this.#gathered.addBytes(this.bytes, this.from, this.to);
    this.from = 0;
    this.to = 0;
  }

  /** No more will come. */
  finish(): void {
    this.isHere = true;
    if (this.#gathered.length === 0) return;
    this.settle();
    this.bytes = this.#gathered.bytes;
    this.from = 0;
    this.to = this.#gathered.length;
  }

  /** Forgets the text. */
  drop(): void {
    this.isHere = false;
    this.from = 0;
    this.to = 0;
    this.isTooLong = false;
    if (this.#gathered.length > 0) this.#gathered.clear();
  }
}
