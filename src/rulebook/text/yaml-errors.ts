import type { ErrorCode } from "yaml";

const WORDS: Partial<Record<ErrorCode, string>> = {
  BAD_INDENT: "the indentation does not fit; lines of one mapping or list begin in the same column",
  BAD_DQ_ESCAPE: "an unknown escape in a text in double quotes; use single quotes or double the backslash",
  BAD_SCALAR_START: "a value cannot begin with this character; put the text in quotes",
  BLOCK_AS_IMPLICIT_KEY: "a mapping begins where it cannot; put text with a colon in quotes",
  MISSING_CHAR: "a bracket, quote or comma is missing; close what is open",
  MULTILINE_IMPLICIT_KEY: "a key must stand on one line, with a colon behind it",
  TAB_AS_INDENT: "a tab stands where blanks must indent; use blanks",
  UNEXPECTED_TOKEN: "something stands here that does not belong; check brackets, quotes and colons",
  KEY_OVER_1024_CHARS: "a key is longer than 1024 characters; check the quotes",
};

/** What is wrong with the YAML, in words of the project and never those of the library. */
export function wordYamlError(code: ErrorCode): string {
  return WORDS[code] ?? "the file cannot be read as YAML from here; check brackets, quotes, colons and indentation";
}
