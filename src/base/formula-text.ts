/** What a spreadsheet program may take for the start of a formula, also in full width and after blanks. */
const FORMULA_START = /^[\s\p{Cf}\p{Cc}]*[=+\-@＝＋－＠]/u;

// biome-ignore lint/suspicious/noControlCharactersInRegex: a leading control character counts as a start too
const CONTROL_START = /^[\t\r\n\u0000]/;

/** Whether a text could be taken for a formula when a spreadsheet program opens it. */
export function looksLikeFormula(text: string): boolean {
  return FORMULA_START.test(text) || CONTROL_START.test(text);
}
