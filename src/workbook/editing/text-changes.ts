import type { PartText, XmlPlace } from "./xml-places.js";

interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Changes at places of a part; everything between them stays as it is, byte for byte. */
export class TextChanges {
  readonly #part: PartText;
  readonly #changes: Change[] = [];

  constructor(part: PartText) {
    this.#part = part;
  }

  /** Puts text in place of what stands there; changes must not overlap. */
  replace(from: number, to: number, text: string): void {
    this.#changes.push({ from, to, text });
  }

  /** Adds text as the last content of an element. */
  append(place: XmlPlace, text: string): void {
    if (place.selfClosed) this.replace(place.end - "/>".length, place.end, `>${text}</${place.name}>`);
    else this.replace(place.closeStart, place.closeStart, text);
  }

  /** The part with all changes made; two at one place come in the order in which they were asked for. */
  result(): string {
    const { text } = this.#part;
    const pieces: string[] = [];
    let at = 0;
    const inOrder = [...this.#changes].sort((a, b) => a.from - b.from || a.to - b.to);
    for (const change of inOrder) {
      if (change.from < at) throw new RangeError(`changes overlap in ${this.#part.name}`);
      pieces.push(text.slice(at, change.from), change.text);
      at = change.to;
    }
    return pieces.join("") + text.slice(at);
  }
}
