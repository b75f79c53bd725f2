const SHOWN_CHARACTERS = 80;

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that must not reach a terminal
const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b-\u200f\u2028-\u202f\u2060-\u206f\ufeff]|\p{Surrogate}/gu;

/**
 * Text of a user as it may stand in a message: one line, at most 80 characters, characters that
 * cannot be seen or that steer a terminal shown as their code point.
 */
export function showText(text: string, limit: number = SHOWN_CHARACTERS): string {
  const start = text.slice(0, limit * 2).replace(/\r\n|\r|\n/g, "⏎");
  const visible = start.replace(
    UNSEEN,
    (c) => `<U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}>`,
  );
  const characters = [...visible];
  const shown = characters.slice(0, limit).join("");
  return characters.length > limit || text.length > limit * 2 ? `${shown}…` : shown;
}

/** ASCII with single blanks between its words. */
const PLAIN = /^(?:[!-~]+(?: [!-~]+)*)?$/;

/**
 * The form in which headings and words are compared: NFKC, no accents, lower case by the
 * language-neutral mapping (never the machine's), invisible characters gone, blanks to one.
 * German sharp s becomes ss.
 */
export function foldText(text: string): string {
  // Plain text, most of what a survey holds, has nothing to take apart.
  if (PLAIN.test(text)) return text.toLowerCase();
  return text
    .normalize("NFKD")
    .replace(/[\p{Mn}\u00ad\u200b-\u200f\u2060\ufeff]/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/[\s\u00a0\u202f\u2007]+/gu, " ")
    .trim();
}

/** Trimmed, inner blanks (line breaks, no-break blanks) to one; case and accents stay. */
export function tidyText(text: string): string {
  return text
    .replace(/[\u200b\u200e\u200f\ufeff\u00ad]/gu, "")
    .replace(/[\s\u00a0\u202f\u2007]+/gu, " ")
    .trim();
}
