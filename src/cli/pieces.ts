import type { OutputBatch } from "../disk/index.js";
import type { Terminal } from "./terminal.js";

/** Characters that are written at a time; longer texts would be kept apart by the engine, and freed late. */
const FILE_CHARACTERS = 50_000;
const PRINTED_CHARACTERS = 65_536;

/** Prints a text to standard output as it is made. */
export async function printPieces(pieces: Iterable<string>, terminal: Terminal): Promise<void> {
  let buffer = "";
  for (const piece of pieces) {
    buffer += piece;
    if (buffer.length < PRINTED_CHARACTERS) continue;
    await terminal.out(buffer);
    buffer = "";
  }
  await terminal.out(buffer);
}

/**
 * Writes a text, or its bytes, to one file of a batch as it is made; whether that went well, the batch says in the end.
 *
 * @param pieces - bytes must stay as they are while the next two pieces are made
 */
export async function writePieces(
  batch: OutputBatch,
  file: string,
  pieces: Iterable<string> | Iterable<Uint8Array>,
): Promise<void> {
  let buffer = "";
  // One piece is on its way to the disk while the next is made.
  let onItsWay: Promise<boolean> = Promise.resolve(true);
  for (const piece of pieces) {
    if (typeof piece === "string") {
      buffer += piece;
      if (buffer.length < FILE_CHARACTERS) continue;
    }
    if (!(await onItsWay)) return;
    onItsWay = batch.write(file, typeof piece === "string" ? buffer : piece);
    buffer = "";
  }
  await onItsWay;
  await batch.write(file, buffer);
}
