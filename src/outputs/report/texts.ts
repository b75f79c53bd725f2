import { shownText } from "../html/shown-text.js";

/** Texts of a page, each once, told by their place; the first is the empty one. */
export class Texts {
  readonly #places = new Map<string, number>([["", 0]]);
  readonly all: string[] = [""];

  /** The place of a text, as a page can show it. */
  place(text: string): number {
    const known = this.#places.get(text);
    if (known !== undefined) return known;
    const place = this.all.length;
    this.all.push(shownText(text));
    this.#places.set(text, place);
    return place;
  }
}
