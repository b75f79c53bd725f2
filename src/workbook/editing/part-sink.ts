import type { Inflating, Packing } from "../cells.js";
import { portablePacking } from "./portable-packing.js";

/** The packer is always fed blocks of this size, so that the same content packs to the same bytes. */
const BLOCK_BYTES = 262_144;

/**
 * Takes the content of one part, bytes and text in any portions, and packs it. What is packed so far is taken out
 * with `packed`; nothing else is kept.
 */
export class PartSink {
  readonly #packing: Packing;
  readonly #machine: Pick<Inflating, "crc32">;
  readonly #encoder = new TextEncoder();
  readonly #block = new Uint8Array(BLOCK_BYTES);
  #filled = 0;
  #crc = 0;
  #bytes = 0;
  #packedBytes = 0;

  /** @param machine - takes checksums, and packs if it can */
  constructor(machine: Pick<Inflating, "crc32" | "packing">) {
    this.#machine = machine;
    this.#packing = machine.packing?.() ?? portablePacking();
  }

  bytes(data: Uint8Array): void {
    for (let from = 0; from < data.length; ) {
      const to = Math.min(data.length, from + BLOCK_BYTES - this.#filled);
      this.#block.set(data.subarray(from, to), this.#filled);
      this.#filled += to - from;
      from = to;
      if (this.#filled === BLOCK_BYTES) this.#flush();
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
      this.#flush();
    }
  }

  /** Ends the part. */
  end(): void {
    this.#flush();
    this.#packing.end();
  }

  /** What has been packed since the last call; waits for the packer where that is behind. */
  async packed(): Promise<readonly Uint8Array[]> {
    const pieces = await this.#packing.packed();
    for (const piece of pieces) this.#packedBytes += piece.length;
    return pieces;
  }

  /** CRC-32 and sizes; right once the part has ended and all that is packed was taken. */
  get tally(): { readonly crc: number; readonly bytes: number; readonly packedBytes: number } {
    return { crc: this.#crc, bytes: this.#bytes, packedBytes: this.#packedBytes };
  }

  #flush(): void {
    const block = this.#block.subarray(0, this.#filled);
    this.#crc = this.#machine.crc32(block, this.#crc) >>> 0;
    this.#bytes += block.length;
    this.#packing.push(block);
    this.#filled = 0;
  }
}
