import type { CellValue } from "./cells.js";
import type { PartReceiver } from "./package.js";
import { TextRuns, textValue, undoEscapes } from "./rich-text.js";
import { XmlFeed } from "./xml-feed.js";
import { type XmlEvents, XmlScanner } from "./xml-scan.js";

const NAMES = ["t", "si", "r"];

/**
 * Gathers the texts that cells refer to by number, as values; null for a text of blanks only. The counts that the
 * part states are not believed.
 */
export class SharedStrings implements PartReceiver, XmlEvents {
  readonly values: (CellValue | null)[] = [];
  readonly #mostCharacters: number;
  readonly #feed: XmlFeed;
  readonly #runs = new TextRuns();
  #inText = false;

  /** @param part - name of the part, for messages */
  constructor(part: string, mostCharacters: number) {
    this.#mostCharacters = mostCharacters;
    this.#feed = new XmlFeed(part, new XmlScanner(part, NAMES, this));
  }

  /** @throws Unreadable if the part is damaged */
  write(piece: Uint8Array): void {
    this.#feed.write(piece);
  }

  /** @throws Unreadable if the part is damaged */
  end(): void {
    this.#feed.end();
  }

  open({ depth, element }: XmlScanner): boolean {
    const name = NAMES[element - 1] ?? "";
    if (depth === 2) {
      this.#inText = name === "si";
      this.#runs.begin();
      return false;
    }
    return this.#inText && depth > 2 && this.#runs.open(name, depth - 2);
  }

  close({ depth, text }: XmlScanner): void {
    if (!this.#inText || depth < 2) return;
    if (depth === 2) this.values.push(textValue(undoEscapes(this.#runs.text), this.#mostCharacters));
    else if (text.isHere) this.#runs.close(text.string);
  }
}
