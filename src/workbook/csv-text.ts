import { WINDOWS_1252_UPPER } from "../base/index.js";
import { refuseNul, refuseOtherThanWide, refuseUndecoded } from "./csv-text-faults.js";
import { quoted, refuse } from "./unreadable.js";

/** A text file as text, with the name of the encoding it was read in. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: string;
  /** True where a byte order mark settled it, whatever was asked for. */
  readonly byMark: boolean;
}

/** Names that people and programs use and the standard list of encodings lacks. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ["mac-roman", "macintosh"],
  ["macroman", "macintosh"],
  ["latin-1", "iso-8859-1"],
  ["latin-9", "iso-8859-15"],
  ["ansi", "windows-1252"],
  ["utf-8-sig", "utf-8"],
  ["utf-16-le", "utf-16le"],
  ["utf-16-be", "utf-16be"],
]);

/**
 * Decodes a text file: in the encoding asked for, else by its byte order X and no character is ever replaced.
 *
 * @param encoding - name as the user gave it, if he did
 * @throws Unreadable if the bytes are not text in that encoding; says where
 */
export function decodeText(bytes: Uint8Array, encoding?: string): DecodedText {
  const asked = encoding === undefined ? undefined : knownLabel(encoding);
  // A mark in the file is surer than what its user believes.
  const marked = markedEncoding(bytes);
  const label = marked ?? asked ?? "utf-8";
  if (marked === undefined && label.startsWith("utf-16")) refuseOtherThanWide(bytes, label);
  const text = label === "windows-1252" ? decodeWestern(bytes) : decodeStrictly(bytes, label);
  if (text === null) refuseUndecoded(bytes, label, marked ?? asked);
  const nul = text.indexOf("\0");
  if (nul >= 0) refuseNul(bytes, text, nul, encoding);
  return { text, encoding: label, byMark: marked !== undefined };
}

function markedEncoding(bytes: Uint8Array): string | undefined {
  const [a, b, c, d] = bytes;
  if ((a === 0xff && b === 0xfe && c === 0 && d === 0) || (a === 0 && b === 0 && c === 0xfe && d === 0xff)) {
    refuse(
      "utf-32",
      "the file is text in UTF-32, which is not read; save it as CSV in UTF-8 from the program that wrote it",
    );
  }
  if (a === 0xff && b === 0xfe) return "utf-16le";
  if (a === 0xfe && b === 0xff) return "utf-16be";
  return a === 0xef && b === 0xbb && c === 0xbf ? "utf-8" : undefined;
}

function knownLabel(encoding: string): string {
  const folded = encoding.trim().toLowerCase().replace(/_/g, "-");
  try {
    return new TextDecoder(OTHER_NAMES.get(folded) ?? folded).encoding;
  } catch {
    return refuse(
      "unknown-encoding",
      `${quoted(encoding)} is no encoding that is known; use one such as utf-8, utf-16le, windows-1252, iso-8859-2 or macintosh`,
    );
  }
}

function decodeStrictly(bytes: Uint8Array, label: string): string | null {
  try {
    return new TextDecoder(label, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Own table, because runtimes disagree on this encoding's upper control range. */
function decodeWestern(bytes: Uint8Array): string | null {
  const pieces: string[] = [];
  const codes = new Uint16Array(8_192);
  for (let from = 0; from < bytes.length; from += codes.length) {
    const piece = bytes.subarray(from, from + codes.length);
    for (const [i, byte] of piece.entries()) {
      const code = byte >= 0x80 && byte < 0xa0 ? (WINDOWS_1252_UPPER[byte - 0x80] ?? 0) : byte;
      if (code === 0 && byte !== 0) return null;
      codes[i] = code;
    }
    pieces.push(String.fromCharCode(...codes.subarray(0, piece.length)));
  }
  return pieces.join("");
}
