import type { Inflating } from "./cells.js";

/** Packed bytes handed over at a time; they may swell a thousandfold. */
const SLICE_BYTES = 4_096;
/** Polynomial of CRC-32 in reversed order of bits, as zip files use it (APPNOTE.TXT 6.3.10, section 4.4.7). */
const POLYNOMIAL = 0xedb88320;

const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let remainder = byte;
  for (let bit = 0; bit < 8; bit++)
    remainder = (remainder & 1) === 1 ? POLYNOMIAL ^ (remainder >>> 1) : remainder >>> 1;
  return remainder;
});

/** Unpacking and checksums without anything of the machine: for browsers and other places where Node's zlib is not. */
export const portableInflating: Inflating = {
  async inflateRaw(data, mostBytes) {
    const pieces: Uint8Array[] = [];
    for await (const piece of unpacked(data, mostBytes)) pieces.push(piece);
    const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
    let at = 0;
    for (const piece of pieces) {
      whole.set(piece, at);
      at += piece.length;
    }
    return whole;
  },

  inflateRawPieces: unpacked,

  crc32(data, before = 0) {
    let crc = ~before;
    for (const byte of data) crc = (REMAINDERS[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
    return ~crc >>> 0;
  },
};

async function* unpacked(data: Uint8Array, mostBytes: number): AsyncGenerator<Uint8Array, void, undefined> {
  // On demand, since Node has no use for it.
  const { Inflate } = await import("fflate");
  if (data.length === 0) throw new Error("no data, where even nothing takes two bytes");
  let ready: Uint8Array[] = [];
  let bytes = 0;
  const inflate = new Inflate((piece) => {
    bytes += piece.length;
    ready.push(piece);
  });
  for (let at = 0; at < data.length; at += SLICE_BYTES) {
    inflate.push(data.subarray(at, at + SLICE_BYTES), at + SLICE_BYTES >= data.length);
    if (bytes > mostBytes) throw tooLarge(mostBytes);
    yield* ready;
    ready = [];
  }
}

function tooLarge(mostBytes: number): Error {
  const error = new Error(`more than ${mostBytes} bytes when unpacked`);
  error.name = "TooLarge";
  return error;
}
