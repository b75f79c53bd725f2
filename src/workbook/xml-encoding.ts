import type { Part } from "./package.js";
import { quoted, refuse } from "./unreadable.js";

const DECLARED = /^<\?xml[^>]{0,100}?encoding\s*=\s*["']([A-Za-z0-9._:-]{1,40})["']/;
/** An encoding that is declared stands in the first of the bytes. */
const TELLING_BYTES = 200;

/** Decodes a part piece by piece; null where the bytes are not text in the encoding of the part. */
export type PartDecoder = (piece: Uint8Array, last: boolean) => string | null;

/**
 * The decoder for a part: by byte order mark, else by the pattern of its first bytes, else as declared.
 *
 * @throws Unreadable if the declared encoding is none that is known
 */
export function partDecoder(part: Part): PartDecoder {
  const decoder = strictDecoder(part.name, part.bytes);
  return (piece, last) => decoded(decoder, piece, last);
}

/** Turns a part that comes in pieces into UTF-8, whatever it is written in. */
export class Utf8Pieces {
  readonly #part: string;
  #first: Uint8Array | null = new Uint8Array(0);
  /** Null where the part is in UTF-8 already. */
  #decoder: InstanceType<typeof TextDecoder> | null = null;

  /** @param part - name of the part, for messages */
  constructor(part: string) {
    this.#part = part;
  }

  /**
   * The next bytes in UTF-8; none while too few are there to tell the encoding. What is in UTF-8 is passed on as it is,
   * unchecked.
   *
   * @param last - whether nothing follows
   * @returns null where the bytes are not text in the encoding of the part
   * @throws Unreadable if the declared encoding is none that is known
   */
  next(piece: Uint8Array, last: boolean): Uint8Array | null {
    const first = this.#first;
    if (first === null) return this.#converted(piece, last);
    const known = new Uint8Array(first.length + piece.length);
    known.set(first);
    known.set(piece, first.length);
    this.#first = known;
    if (known.length < TELLING_BYTES && !last) return new Uint8Array(0);
    this.#first = null;
    const decoder = strictDecoder(this.#part, known);
    if (decoder.encoding !== "utf-8") this.#decoder = decoder;
    return this.#converted(known, last);
  }

  #converted(piece: Uint8Array, last: boolean): Uint8Array | null {
    if (this.#decoder === null) return piece;
    const text = decoded(this.#decoder, piece, last);
    return text === null ? null : new TextEncoder().encode(text);
  }
}

function decoded(decoder: InstanceType<typeof TextDecoder>, piece: Uint8Array, last: boolean): string | null {
  try {
    return decoder.decode(piece, { stream: !last });
  } catch {
    return null;
  }
}

function strictDecoder(part: string, bytes: Uint8Array): InstanceType<typeof TextDecoder> {
  const label = encodingOf(bytes);
  try {
    return new TextDecoder(label, { fatal: true });
  } catch {
    return refuse(
      "unknown-part-encoding",
      `the part ${quoted(part)} is written in the encoding ${quoted(label)}, which is not known here; open the workbook in a spreadsheet program and save it again`,
    );
  }
}

/** Whether a part that begins with these bytes is written in UTF-8, as far as they tell; plain ASCII is UTF-8 too. */
export function isUtf8(head: Uint8Array): boolean {
  return ["utf-8", "utf8", "us-ascii", "ascii"].includes(encodingOf(head));
}

function encodingOf(bytes: Uint8Array): string {
  const [a = 0, b = 0] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0x3c && b === 0)) return "utf-16le";
  if ((a === 0xfe && b === 0xff) || (a === 0 && b === 0x3c)) return "utf-16be";
  const declared =
    DECLARED.exec(String.fromCharCode(...bytes.subarray(0, TELLING_BYTES)))?.[1]?.toLowerCase() ?? "utf-8";
  // A part that says UTF-16 in single bytes cannot be that; it was converted and the line forgotten.
  return declared.startsWith("utf-16") ? "utf-8" : declared;
}
