import type { CellValue } from "./cells.js";
import { MOST_CELL_CHARACTERS, orAllowMore, TEXT_BYTES } from "./limits.js";
import { grouped } from "./unreadable.js";

const ESCAPES = /(?:_x[0-9A-Fa-f]{4}_)+/g;

/**
 * Gathers the text of a cell or of a shared string: the plain text or the runs of rich text joined, without the
 * readings (phonetic runs) that Japanese workbooks carry beside it.
 */
export class TextRuns {
  #text = "";
  #inRun = false;

  /** Starts over for the next text. */
  begin(): void {
    this.#text = "";
    this.#inRun = false;
  }

  /** @param level - 1 for an element directly inside the text; returns whether its text is wanted */
  open(name: string, level: number): boolean {
    if (level === 1) this.#inRun = name === "r";
    return name === "t" && (level === 1 || (level === 2 && this.#inRun));
  }

  close(text: string): void {
    // What is longer than that is too long for a cell, however much longer.
    if (this.#text.length <= TEXT_BYTES) this.#text += text;
  }

  get text(): string {
    return this.#text;
  }
}

/**
 * Undoes the escapes that the format uses for characters XML cannot hold (_x000D_). An escape that stands for no
 * character (a lone half of a pair, NUL) stays as written: two names that differ only there must not become one.
 */
export function undoEscapes(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(ESCAPES, (run) => {
    const codes = run.match(/[0-9A-Fa-f]{4}/g) ?? [];
    const characters = codes.map((code) => String.fromCharCode(Number.parseInt(code, 16))).join("");
    return /\p{Surrogate}|[\0\ufffe\uffff]/u.test(characters) ? run : characters;
  });
}

/**
 * A text as the value of a cell.
 *
 * @param mostCharacters - limit of the format; a longer text is unusable, not a reason to refuse the file
 * @returns null for a text of blanks only, which counts as an empty cell
 */
export function textValue(text: string, mostCharacters: number): CellValue | null {
  if (text.length > mostCharacters) {
    return {
      kind: "unusable",
      why: `holds ${countOf(text)} characters, more than the ${grouped(mostCharacters)} that a cell can have; shorten it${orAllowMore("cellCharacters")}`,
    };
  }
  return /\S/.test(text) ? { kind: "text", text } : null;
}

/** How many characters a text has, in words; of one that may have been cut, only what is sure. */
export function countOf(text: string): string {
  const most = MOST_CELL_CHARACTERS;
  return text.length > most ? `more than ${grouped(most)}` : grouped(text.length);
}
