/** Control characters, and marks that turn the direction of what follows: a page would hide them or be turned by them. */
const UNSEEN =
  /[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/gu;

/**
 * A text as a page can show it: line ends and tabs stay, other control characters become the pictures that Unicode has
 * for them, and what has no picture the replacement character.
 */
export function shownText(text: string): string {
  return text.replace(UNSEEN, (sign) => {
    const code = sign.charCodeAt(0);
    if (sign === "\n" || sign === "\t") return sign;
    if (code < 0x20) return String.fromCharCode(0x2400 + code);
    return code === 0x7f ? "\u2421" : "\ufffd";
  });
}
