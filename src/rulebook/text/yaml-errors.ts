import type { ErrorCode } from "yaml";

const WORDS: Partial<Record<ErrorCode, string>> = {
  BAD_INDENT: "the indentation does not fit; lines of one mapping or list begin in the same column",
  BAD_DQ_ESCAPE: "an unknown escape in a text in double quotes; use single quotes or double the backslash",
  BAD_SCALAR_START: "a value cannot begin with this character; put the text in quotes",
  BLOCK_AS_IMPLICIT_KEY: "a mapping begins where it cannot; put text with a colon in quotes",
  BLOCK_IN_FLOW: "a comma is missing between this and what stands behind it; add it",
  MISSING_CHAR: "a bracket, quote or comma is missing; close what is open",
  MULTILINE_IMPLICIT_KEY: "a key must stand on one line, with a colon and a blank behind it",
  TAB_AS_INDENT: "a tab stands where blanks must indent; use blanks",
  UNEXPECTED_TOKEN: "something stands here that does not belong; check brackets, commas, quotes and colons",
  KEY_OVER_1024_CHARS: "a key is longer than 1024 characters; check the quotes",
};

/** What is wrong with a text as YAML, and where. */
export interface YamlMistake {
  readonly offset: number;
  readonly text: string;
}

/**
 * What is wrong with the YAML, in words of the project and never those of the library, which speaks of what it was in
 * the middle of: a line that is indented wrongly is told by the lines around it.
 *
 * @param offset - where the library noticed it
 */
export function wordYamlError(code: ErrorCode, text: string, offset: number): YamlMistake {
  const [start, end] = lineAround(text, offset);
  const line = text.slice(start, end);
  const strange = NO_BREAK_BLANK.exec(line);
  if (strange) {
    const words = "a no-break blank stands here, as copied from a page or a text processor; write an ordinary blank";
    return { offset: start + strange.index, text: words };
  }
  // A list or mapping that goes on in another column than it began in.
  const begins = /^ *(?:- +)?[\w.-]+:(?: |$)/;
  if (code === "MISSING_CHAR" && text.slice(start, offset).trim() === "" && begins.test(line)) {
    return { offset: start + indentOf(line), text: WORDS.BAD_INDENT ?? "" };
  }
  const [nextStart, nextEnd] = lineAround(text, end + 1);
  const next = text.slice(nextStart, nextEnd);
  if (code === "BLOCK_AS_IMPLICIT_KEY" && !/:(?: |$)/.test(text.slice(offset, end)) && begins.test(next)) {
    return { offset: nextStart + indentOf(next), text: WORDS.BAD_INDENT ?? "" };
  }
  const words =
    WORDS[code] ?? "the file cannot be read as YAML from here; check brackets, quotes, colons and indentation";
  return { offset, text: words };
}

const NO_BREAK_BLANK = /[\u00a0\u2007\u202f]/;

/** The line that an offset lies in, without its line break. */
function lineAround(text: string, offset: number): readonly [start: number, end: number] {
  const start = text.lastIndexOf("\n", offset - 1) + 1;
  const end = text.indexOf("\n", offset);
  return [start, end < 0 ? text.length : end];
}

function indentOf(line: string): number {
  return line.length - line.trimStart().length;
}
