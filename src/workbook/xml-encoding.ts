import type { Part } from "./package.js";
import { quoted, refuse } from "./unreadable.js";

const DECLARED = /^<\?xml[^>]{0,100}?encoding\s*=\s*["']([A-Za-z0-9._:-]{1,40})["']/;

/** Decodes a part piece by piece; null where the bytes are not text in the encoding of the part. */
export type PartDecoder = (piece: Uint8Array, last: boolean) => string | null;

/**
 * The decoder for a part: by byte order mark, else by the pattern of its first bytes, else as declared.
 *
 * @throws Unreadable if the declared encoding is none that is known
 */
export function partDecoder(part: Part): PartDecoder {
  const decoder = strictDecoder(part);
  return (piece, last) => {
    try {
      return decoder.decode(piece, { stream: !last });
    } catch {
      return null;
    }
  };
}

function strictDecoder(part: Part): InstanceType<typeof TextDecoder> {
  const label = encodingOf(part.bytes);
  try {
    return new TextDecoder(label, { fatal: true });
  } catch {
    return refuse(
      "unknown-part-encoding",
      `the part ${quoted(part.name)} is written in the encoding ${quoted(label)}, which is not known here; open the workbook in a spreadsheet program and save it again`,
    );
  }
}

function encodingOf(bytes: Uint8Array): string {
  const [a = 0, b = 0] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0x3c && b === 0)) return "utf-16le";
  if ((a === 0xfe && b === 0xff) || (a === 0 && b === 0x3c)) return "utf-16be";
  const declared = DECLARED.exec(String.fromCharCode(...bytes.subarray(0, 200)))?.[1]?.toLowerCase() ?? "utf-8";
  // A part that says UTF-16 in single bytes cannot be that; it was converted and the line forgotten.
  return declared.startsWith("utf-16") ? "utf-8" : declared;
}
