import { showText } from "../base/index.js";
import type { UnreadableFile } from "./cells.js";

/**
 * Ends the reading of a file from any depth. Never leaves this folder: `readWorkbook` turns it into a value,
 * and any other error that comes by there is a mistake of ours and goes on as one.
 */
export class Unreadable extends Error {
  readonly file: UnreadableFile;

  constructor(file: UnreadableFile) {
    super(file.text);
    this.name = "Unreadable";
    this.file = file;
  }
}

/**
 * Gives up on the file.
 *
 * @param code - kebab-case, for programs
 * @param text - one sentence for people, lower-case start, no full stop: what was found and what to do
 * @throws Unreadable always
 */
export function refuse(code: string, text: string): never {
  throw new Unreadable({ code, text });
}

/** A number as people read it in a message: 1048576 is 1,048,576. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, ",");
}

/** A name from the file, quoted and fit for a message. */
export function quoted(name: string): string {
  return `"${showText(name)}"`;
}
