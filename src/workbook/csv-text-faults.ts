import { showText } from "../base/index.js";
import { grouped, refuse } from "./unreadable.js";

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
  // Lines and columns of the part that is still good, counted in characters as an editor does.
  const good = new TextDecoder("utf-8").decode(bytes.subarray(0, bad));
  const lines = good.split(/\r\n|\r|\n/);
  const column = [...(lines.at(-1) ?? "")].length + 1;
  return ` (first at line ${grouped(lines.length)}, column ${grouped(column)})`;
}

/** Index of the first byte of the first character that is not UTF-8, found by halving: a start is good or it is not. */
function firstBadUtf8(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (isGoodStart(bytes.subarray(0, middle), true)) good = middle;
    else bad = middle;
  }
  // A character cut short shows only at the byte behind it; the place to name is where it begins.
  while (good > 0 && !isGoodStart(bytes.subarray(0, good), false)) good -= 1;
  return good;
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
  const line = text.slice(0, nul).split(/\r\n|\r|\n/).length;
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

/** UTF-16 that its every other byte gives away, or false. */
function looksWide(bytes: Uint8Array): "utf-16le" | "utf-16be" | false {
  const head = bytes.subarray(0, 1_000);
  const zeros = [0, 0];
  for (const [i, byte] of head.entries()) if (byte === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (odd > head.length / 4 && even < odd / 10) return "utf-16le";
  return even > head.length / 4 && odd < even / 10 ? "utf-16be" : false;
}
