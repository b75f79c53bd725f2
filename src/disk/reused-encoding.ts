/** Bytes that a character of a text takes at most in UTF-8. */
const MOST_BYTES = 3;

/**
 * Encodes texts into the same memory again and again. Hundreds of megabytes of JSON in buffers of their own would
 * let the memory of the process grow by far more than is in use at any time.
 */
export class ReusedEncoding {
  #memory = new Uint8Array(0);
  #users = 0;
  readonly #encoder = new TextEncoder();

  /** The bytes of a text, in UTF-8; good until `release`. */
  encode(text: string): Uint8Array {
    this.#users += 1;
    // Somebody did not wait: what is still on its way must not be written over.
    if (this.#users > 1) return this.#encoder.encode(text);
    const most = text.length * MOST_BYTES;
    if (this.#memory.length < most) this.#memory = new Uint8Array(most);
    return this.#memory.subarray(0, this.#encoder.encodeInto(text, this.#memory).written);
  }

  /** Says that the bytes of one text are no longer needed. */
  release(): void {
    this.#users -= 1;
  }
}
