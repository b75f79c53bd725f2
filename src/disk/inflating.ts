import { crc32, inflateRaw } from "node:zlib";

/** Deflate can swell data about a thousandfold at most; a stated size beyond that is not worth the memory. */
const MOST_SWELLING = 1_040;

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

  /** CRC-32 as zip files use it, an unsigned number of 32 bits. */
  crc32(data: Uint8Array): number {
    return crc32(data);
  },
};

function isTooLarge(error: NodeJS.ErrnoException): boolean {
  return error.code === "ERR_BUFFER_TOO_LARGE";
}

function tooLarge(mostBytes: number): Error {
  const error = new Error(`more than ${mostBytes} bytes when unpacked`);
  error.name = "TooLarge";
  return error;
}
