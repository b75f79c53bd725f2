/** The greatest number of characters that a cell can hold. */
const MOST_CHARACTERS = 32_767;
const ELLIPSIS = "…";

// biome-ignore lint/suspicious/noControlCharactersInRegex: characters that XML cannot hold, which the format escapes
const ESCAPED = /[\u0001-\u0008\u000b\u000c\u000d\u000e-\u001f]/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: for these the format has no escape that readers undo
const UNSPEAKABLE = /[\u0000\ufffe\uffff]|\p{Surrogate}/gu;
const LOOKS_ESCAPED = /_(?=x[0-9a-f]{4}_)/gi;
const MARKUP = /[&<>"]/g;
const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
/** Most texts hold nothing that needs a second look. */
const PLAIN = /^[ !#-%'-;=?-\u007e\u00a0-\u2fff]*$/;

/** Text as XML holds it between tags or between double quotes. */
export function xmlText(text: string): string {
  return text.replace(MARKUP, (sign) => ENTITIES[sign] ?? sign);
}

/**
 * Text of a cell as a part spells it: cut at the length that a cell can hold, control characters escaped in the
 * format's own way (_x0001_), and so is what would be taken for such an escape.
 */
export function spelledText(text: string): string {
  const fit = fitted(text);
  if (PLAIN.test(fit) && !fit.includes("_x")) return fit;
  const escaped = fit
    .replace(LOOKS_ESCAPED, "_x005F_")
    .replace(UNSPEAKABLE, "\ufffd")
    .replace(ESCAPED, (c) => `_x${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`);
  return xmlText(escaped);
}

function fitted(text: string): string {
  if (text.length <= MOST_CHARACTERS) return text;
  const cut = text.slice(0, MOST_CHARACTERS - ELLIPSIS.length);
  // Half a character at the cut could not be written.
  return `${/[\ud800-\udbff]$/.test(cut) ? cut.slice(0, -1) : cut}${ELLIPSIS}`;
}
