import { Deflate } from "fflate";

/** The packer is always fed blocks of this size, so that the same content packs to the same bytes. */
const BLOCK_BYTES = 65_536;
/** The fastest level: a long sheet is packed about twice as fast as on the usual one, and a sixth larger. */
const LEVEL = 1;

/**
 * Takes the content of one part, bytes and text in any portions, and packs it. What is packed so far is taken out
 * with `packed`; nothing else is kept.
 */
export class PartSink {
  readonly #packer: Deflate;
  readonly #crc32: (data: Uint8Array, before: number) => number;
  readonly #encoder = new TextEncoder();
  readonly #block = new Uint8Array(BLOCK_BYTES);
  #filled = 0;
  #ready: Uint8Array[] = [];
  #crc = 0;
  #bytes = 0;
  #packedBytes = 0;

  /** @param crc32 - CRC-32 of data that follow others, whose CRC-32 is the second argument */
  constructor(crc32: (data: Uint8Array, before: number) => number) {
    this.#crc32 = crc32;
    this.#packer = new Deflate({ level: LEVEL }, (piece) => {
      this.#ready.push(piece);
      this.#packedBytes += piece.length;
    });
  }

  bytes(data: Uint8Array): void {
    for (let from = 0; from < data.length; ) {
      const to = Math.min(data.length, from + BLOCK_BYTES - this.#filled);
      this.#block.set(data.subarray(from, to), this.#filled);
      this.#filled += to - from;
      from = to;
      if (this.#filled === BLOCK_BYTES) this.#flush(false);
    }
  }

  /** Adds text as UTF-8. */
  text(text: string): void {
    let rest = text;
    for (;;) {
      const { read, written } = this.#encoder.encodeInto(rest, this.#block.subarray(this.#filled));
      this.#filled += written;
      if (read === rest.length) return;
      rest = rest.slice(read);
      this.#flush(false);
    }
  }

  /** Ends the part. */
  end(): void {
    this.#flush(true);
  }

  /** What has been packed since the last call. */
  packed(): readonly Uint8Array[] {
    const ready = this.#ready;
    this.#ready = [];
    return ready;
  }

  /** CRC-32 and sizes; right once the part has ended. */
  get tally(): { readonly crc: number; readonly bytes: number; readonly packedBytes: number } {
    return { crc: this.#crc, bytes: this.#bytes, packedBytes: this.#packedBytes };
  }

  #flush(last: boolean): void {
    const block = this.#block.subarray(0, this.#filled);
    this.#crc = this.#crc32(block, this.#crc) >>> 0;
    this.#bytes += block.length;
    this.#packer.push(block, last);
    this.#filled = 0;
  }
}
