import { constants } from "node:fs";
import { type FileHandle, open } from "node:fs/promises";
import { type DiskProblem, diskProblem, problemOf } from "./disk-problem.js";

/** The bytes of a file, or why there are none. */
export type BytesReading =
  | { readonly ok: true; readonly path: string; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly error: DiskProblem };

const PIECE_BYTES = 1_048_576;

/**
 * Reads a survey file once, as a whole, so that what is digested is what is read.
 *
 * @param path - as the user gave it
 * @param maxBytes - size above which the file is refused; counted while reading, never taken on trust
 * @returns the bytes, or the reason as a value
 */
export async function readSurveyFile(path: string, maxBytes: number): Promise<BytesReading> {
  let file: FileHandle | undefined;
  try {
    // Opening a pipe would wait for someone to write into it.
    file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const stats = await file.stat();
    if (stats.isDirectory()) return failed(diskProblem(path, "is-folder", "it is a folder, not a file; name the file"));
    if (!stats.isFile()) return failed(diskProblem(path, "not-a-file", "it is a device or a pipe, not a file"));
    const bytes = await readUpTo(file, stats.size, maxBytes);
    return bytes === null ? failed(tooLarge(path, maxBytes)) : { ok: true, path, bytes };
  } catch (error) {
    return failed(problemOf(path, error));
  } finally {
    await file?.close();
  }
}

/** All bytes of the file, or null as soon as there are more than allowed. */
async function readUpTo(file: FileHandle, statedBytes: number, maxBytes: number): Promise<Uint8Array | null> {
  if (statedBytes > maxBytes) return null;
  let bytes = new Uint8Array(statedBytes + 1);
  let filled = 0;
  for (;;) {
    if (filled > maxBytes) return null;
    if (filled === bytes.length) {
      // The file grew since its size was asked for.
      const longer = new Uint8Array(bytes.length + PIECE_BYTES);
      longer.set(bytes);
      bytes = longer;
    }
    const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, filled);
    if (bytesRead === 0) return bytes.subarray(0, filled);
    filled += bytesRead;
  }
}

function tooLarge(path: string, maxBytes: number): DiskProblem {
  const limit = String(maxBytes).replace(/\B(?=(?:\d{3})+$)/g, ",");
  return diskProblem(
    path,
    "file-too-large",
    `it is larger than the limit of ${limit} bytes; hand in a smaller file, or allow more with --limit file-bytes=NUMBER`,
  );
}

function failed(error: DiskProblem): BytesReading {
  return { ok: false, error };
}
