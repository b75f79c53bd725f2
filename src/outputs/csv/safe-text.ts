import { looksLikeFormula } from "../../base/index.js";

// biome-ignore lint/suspicious/noControlCharactersInRegex: characters that no text field should hold
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/gu;

/** Control characters and halves of characters, which text files and XML cannot hold, as their code points. */
export function showControls(text: string): string {
  return text.replace(UNFIT, (c) => `<U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}>`);
}

/** A text field for people: never a formula, no control characters but tab and line breaks. */
export function safeText(text: string): string {
  return (looksLikeFormula(text) ? "'" : "") + showControls(text);
}
