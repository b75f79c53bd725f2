import type { PlainDay } from "../base/index.js";
import type { Target } from "./mapping.js";

const PLACEHOLDERS = ["number", "target", "part", "asOf"];

/** Names that Windows keeps for devices, with any ending. */
const RESERVED = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\.|$)/i;

// biome-ignore lint/suspicious/noControlCharactersInRegex: no file name may hold them
const UNFIT = /[<>:"/\\|?*\u0000-\u001f]/;

/**
 * The name of one part of a target's file.
 *
 * @param part - from 1; a target without a row limit has one part
 */
export function fileNameOf(
  { id, number, file }: Pick<Target, "id" | "number" | "file">,
  part: number,
  asOf: PlainDay,
): string {
  const words: Readonly<Record<string, string>> = {
    number: String(number).padStart(2, "0"),
    target: id,
    part: String(part),
    asOf,
  };
  return file.replace(/\{(\w+)\}/g, (whole, word: string) => words[word] ?? whole);
}

/** What is wrong with a file name as a mapping writes it, on any system; null where nothing is. */
export function fileNameTrouble(file: string, hasParts: boolean): string | null {
  const unknown = [...file.matchAll(/\{([^{}]*)\}/g)]
    .map((match) => match[1] ?? "")
    .find((word) => !PLACEHOLDERS.includes(word));
  if (unknown !== undefined)
    return `{${unknown}} is not known; use ${PLACEHOLDERS.map((word) => `{${word}}`).join(", ")}`;
  const plain = file.replace(/\{\w+\}/g, "1");
  if (UNFIT.test(plain) || /[{}]/.test(plain))
    return 'a file name has no folder in it, and none of < > : " / \\ | ? * { }';
  if (RESERVED.test(plain) || /^[\s.]|[\s.]$/.test(plain))
    return "this name cannot be used on every system; choose another";
  if (plain.length > 120) return "the name is longer than 120 characters; shorten it";
  if (!/.\.(?:csv|xlsx)$/.test(plain)) return "the name must end in .csv or .xlsx, which says what is written";
  if (hasParts && !file.includes("{part}"))
    return "with a row limit there may be several parts; put {part} into the name";
  if (!hasParts && file.includes("{part}"))
    return "without a row limit there is one file; leave {part} out, or add rowLimit";
  return null;
}
