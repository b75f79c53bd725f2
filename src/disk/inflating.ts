import { once } from "node:events";
import { crc32, createDeflateRaw, createInflateRaw, inflateRaw } from "node:zlib";

/** Deflate can swell data about a thousandfold at most; a stated size beyond that is not worth the memory. */
const MOST_SWELLING = 1_040;
/** Large enough that handing pieces over costs little, small enough to stay in the cache of the processor. */
const PIECE_BYTES = 262_144;

/** Unpacking and checksums by the zlib of Node. */
export const nodeInflating = {
  /**
   * Raw deflate data to bytes.
   *
   * @param mostBytes - bytes at which to stop
   * @throws Error named "TooLarge" past the limit, any other Error for damaged data
   */
  inflateRaw(data: Uint8Array, mostBytes: number): Promise<Uint8Array> {
    // One output buffer, with a byte to spare, so that nothing is copied together at the end.
    const expected = Math.min(mostBytes, data.length * MOST_SWELLING) + 1;
    const options = { maxOutputLength: Math.max(1, mostBytes), chunkSize: Math.max(64, expected) };
    return new Promise((resolve, reject) => {
      inflateRaw(data, options, (error, bytes) => {
        if (error) return reject(isTooLarge(error) ? tooLarge(mostBytes) : error);
        return bytes.length > mostBytes ? reject(tooLarge(mostBytes)) : resolve(bytes);
      });
    });
  },

  /**
   * Raw deflate data to bytes in pieces. The next piece is unpacked on another thread while the last one is used.
   *
   * @param mostBytes - bytes at which to stop
   * @throws Error named "TooLarge" past the limit, any other Error for damaged data, from the iteration
   */
  async *inflateRawPieces(data: Uint8Array, mostBytes: number): AsyncGenerator<Uint8Array, void, undefined> {
    const unpacking = createInflateRaw({ chunkSize: PIECE_BYTES });
    unpacking.end(data);
    let bytes = 0;
    for await (const piece of unpacking as AsyncIterable<Uint8Array>) {
      bytes += piece.length;
      if (bytes > mostBytes) throw tooLarge(mostBytes);
      yield piece;
    }
  },

  /**
   * CRC-32 as zip files use it, an unsigned number of 32 bits.
   *
   * @param before - CRC-32 of the bytes before these
   */
  crc32(data: Uint8Array, before = 0): number {
    return crc32(data, before);
  },

  /** A packer that works on another thread; different versions of Node may pack differently. */
  packing(): NodePacking {
    return new NodePacking();
  },
};

/** The fastest level: a long sheet is packed several times as fast as on the usual one, and a fifth larger. */
const PACKING_LEVEL = 1;
/** Bytes that may wait to be packed. */
const MOST_WAITING = 4 * PIECE_BYTES;

class NodePacking {
  readonly #packer = createDeflateRaw({ level: PACKING_LEVEL, chunkSize: PIECE_BYTES });
  readonly #ended: Promise<unknown>;
  #ready: Uint8Array[] = [];
  #isEnding = false;

  constructor() {
    this.#packer.on("data", (piece: Uint8Array) => this.#ready.push(piece));
    this.#ended = once(this.#packer, "end");
  }

  push(data: Uint8Array): void {
    this.#packer.write(data.slice());
  }

  end(): void {
    this.#isEnding = true;
    this.#packer.end();
  }

  async packed(): Promise<readonly Uint8Array[]> {
    if (this.#isEnding) await this.#ended;
    while (!this.#isEnding && this.#packer.writableLength > MOST_WAITING) await once(this.#packer, "drain");
    const ready = this.#ready;
    this.#ready = [];
    return ready;
  }
}

function isTooLarge(error: NodeJS.ErrnoException): boolean {
  return error.code === "ERR_BUFFER_TOO_LARGE";
}

function tooLarge(mostBytes: number): Error {
  const error = new Error(`more than ${mostBytes} bytes when unpacked`);
  error.name = "TooLarge";
  return error;
}
