import type { TextFile } from "../base/index.js";
import { type DiskProblem, diskProblem, shownPath } from "./disk-problem.js";
import { readSurveyFile } from "./read-bytes.js";

/** A text file, or why it could not be read. */
export type TextReading =
  | { readonly ok: true; readonly file: TextFile }
  | { readonly ok: false; readonly error: DiskProblem };

/** Size above which a file that people write is refused, bytes. */
export const MOST_TEXT_BYTES = 4_194_304;

/**
 * Reads a file that people write (rule, model, site, word list). It must be UTF-8; its byte order mark is dropped.
 *
 * @param path - as the user gave it
 * @returns the text, or the reason as a value
 */
export async function readTextFile(path: string, maxBytes: number = MOST_TEXT_BYTES): Promise<TextReading> {
  const reading = await readSurveyFile(path, maxBytes);
  return reading.ok ? textOfBytes(path, reading.bytes) : reading;
}

/**
 * The text of a file that has been read.
 *
 * @param path - as the user gave it
 */
export function textOfBytes(path: string, bytes: Uint8Array): TextReading {
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) {
    return { ok: false, error: diskProblem(path, "utf-16", "it is text in UTF-16; save it in UTF-8") };
  }
  try {
    return { ok: true, file: { path: shownPath(path), text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) } };
  } catch {
    return { ok: false, error: diskProblem(path, "not-utf-8", "it is not text in UTF-8; save it in UTF-8") };
  }
}
