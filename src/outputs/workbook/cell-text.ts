import { showControls } from "../csv/safe-text.js";

const MOST_CHARACTERS = 32_767;

/** Text as a workbook can hold it: control characters as code points, cut at the length that a cell can have. */
export function cellText(text: string): string {
  const shown = showControls(text);
  if (shown.length <= MOST_CHARACTERS) return shown;
  const cut = shown.slice(0, MOST_CHARACTERS - 1);
  // Half a character at the cut could not be written.
  return `${/[\ud800-\udbff]$/.test(cut) ? cut.slice(0, -1) : cut}…`;
}

/**
 * Text as the parts of a workbook spell it. A carriage return would become a line feed on reading, and a text such
 * as "_x0041_" would be read as the letter that it encodes, so that both are escaped in the format's own way.
 */
export function spelledForParts(text: string): string {
  return cellText(text)
    .replace(/_(?=x[0-9a-f]{4}_)/gi, "_x005F_")
    .replace(/\r/g, "_x000D_");
}
