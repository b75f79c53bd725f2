import { shownText } from "../html/shown-text.js";

const PIECE_END = /(?<=; |\n)/;

/** Texts of a page, each once, told by their place; the first is the empty one. */
export class Texts {
  readonly #places = new Map<string, number>([["", 0]]);
  readonly all: (string | readonly number[])[] = [""];

  /** The place of a text, as a page can show it. */
  place(text: string): number {
    const known = this.#places.get(text);
    if (known !== undefined) return known;
    const place = this.all.length;
    this.all.push(shownText(text));
    this.#places.set(text, place);
    return place;
  }

  /** The place of a long text that is put together from pieces which others have too: parts of sentences, and lines. */
  placeInPieces(text: string): number {
    const known = this.#places.get(text);
    if (known !== undefined) return known;
    const pieces = text.split(PIECE_END).map((piece) => this.place(piece));
    if (pieces.length === 1) return this.place(text);
    const place = this.all.length;
    this.all.push(pieces);
    this.#places.set(text, place);
    return place;
  }
}
