import { showText } from "../base/index.js";
import { grouped, refuse } from "./unreadable.js";

const PIECE_BYTES = 65_536;
/** Enough of a file to tell which bytes of a pair are zero. */
const HEAD_BYTES = 1_000;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/**
 * Says where the bytes stop being text in the encoding.
 *
 * @param chosen - the encoding where the file or the user named it; without one, another is offered
 * @throws Unreadable always
 */
export function refuseUndecoded(bytes: Uint8Array, label: string, chosen: string | undefined): never {
  const wide = chosen === undefined && looksWide(bytes);
  if (wide !== false) refuseWide(wide);
  const where = label === "utf-8" ? placeOfBadUtf8(bytes) : "";
  if (chosen !== undefined) {
    return refuse(
      "wrong-encoding",
      `the text is not valid ${showText(label)}${where}; save the survey as CSV in UTF-8, or name the encoding that it has with --encoding`,
    );
  }
  return refuse(
    "not-utf-8",
    `the text is not UTF-8${where}; save the survey as CSV in UTF-8, or name its encoding, for example --encoding windows-1252`,
  );
}

function placeOfBadUtf8(bytes: Uint8Array): string {
  const bad = firstBadUtf8(bytes);
  let lines = 1;
  let lineStart = 0;
  for (let i = 0; i < bad; i++) {
    if (bytes[i] !== LINE_FEED && (bytes[i] !== CARRIAGE_RETURN || bytes[i + 1] === LINE_FEED)) continue;
    lines += 1;
    lineStart = i + 1;
  }
  // Counted in characters, as an editor does.
  const column = [...new TextDecoder("utf-8").decode(bytes.subarray(lineStart, bad))].length + 1;
  return ` (first at line ${grouped(lines)}, column ${grouped(column)})`;
}

/** Index of the first byte of the first character that is not UTF-8. */
function firstBadUtf8(bytes: Uint8Array): number {
  const from = goodPieces(bytes);
  const piece = bytes.subarray(from, from + 2 * PIECE_BYTES);
  // By halving: a start of the piece is good or it is not.
  let good = 0;
  let bad = piece.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (isGoodStart(piece.subarray(0, middle), true)) good = middle;
    else bad = middle;
  }
  // A character cut short shows only at the byte behind it; the place to name is where it begins.
  while (good > 0 && !isGoodStart(piece.subarray(0, good), false)) good -= 1;
  return from + good;
}

/** End of the pieces that are good, moved back to the beginning of a character. */
function goodPieces(bytes: Uint8Array): number {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let from = 0;
  try {
    for (; from < bytes.length; from += PIECE_BYTES) {
      decoder.decode(bytes.subarray(from, from + PIECE_BYTES), { stream: true });
    }
  } catch {
    // The piece that begins here holds the fault, or the end of a character whose beginning is before it.
  }
  let start = Math.max(0, Math.min(from, bytes.length) - 4);
  while (start > 0 && ((bytes[start] ?? 0) & 0xc0) === 0x80) start -= 1;
  return start;
}

function isGoodStart(bytes: Uint8Array, mayBeCut: boolean): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: mayBeCut });
    return true;
  } catch {
    return false;
  }
}

/**
 * Says in which line the first NUL stands, or that the text is UTF-16 without its mark.
 *
 * @param nul - index of the first NUL in the text
 * @throws Unreadable always
 */
export function refuseNul(bytes: Uint8Array, text: string, nul: number, encoding: string | undefined): never {
  const line = (text.slice(0, nul).match(/\r\n|\r|\n/g)?.length ?? 0) + 1;
  const wide = encoding === undefined && looksWide(bytes);
  if (wide !== false) refuseWide(wide);
  return refuse(
    "nul-character",
    `the text holds a NUL character in line ${grouped(line)}, so it is no text or was damaged; save the survey as CSV in UTF-8 again`,
  );
}

function refuseWide(label: string): never {
  return refuse(
    "utf-16-unmarked",
    `the file looks like text in UTF-16 without its mark; save the survey as CSV in UTF-8, or read it with --encoding ${label}`,
  );
}

/**
 * Refuses bytes that were said to be UTF-16 and cannot be, before they turn into other letters in silence: any table
 * in UTF-16 has zeros, since separators, digits and line ends do, and they show in which order its bytes are.
 *
 * @throws Unreadable if the order is another one or there are no zeros
 */
export function refuseOtherThanWide(bytes: Uint8Array, label: string): void {
  const found = looksWide(bytes);
  if (found !== false && found !== label) {
    refuse("wrong-encoding", `the text is not ${label}, its bytes are in the other order; use --encoding ${found}`);
  }
  if (!bytes.subarray(0, HEAD_BYTES).includes(0)) {
    refuse(
      "wrong-encoding",
      `the text is not ${label}, it has one byte for each character; leave --encoding out, or name the encoding that it has`,
    );
  }
}

/** UTF-16 that its every other byte gives away, or false. */
function looksWide(bytes: Uint8Array): "utf-16le" | "utf-16be" | false {
  const head = bytes.subarray(0, HEAD_BYTES);
  const zeros = [0, 0];
  for (const [i, byte] of head.entries()) if (byte === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (odd > head.length / 4 && even < odd / 10) return "utf-16le";
  return even > head.length / 4 && odd < even / 10 ? "utf-16be" : false;
}
