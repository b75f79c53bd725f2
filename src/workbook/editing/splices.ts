const FIRST_ROOM = 1_024;

/**
 * What is done at a place of a sheet part, and the two numbers that go with it. `open` puts ">" in place of the "/>"
 * of an element that closes itself; `frame` gives a cell another format, `frame-plain` one that states none.
 */
const KINDS = [
  "open",
  "close-row",
  "close-sheet-data",
  /** Number of the row. */
  "new-row",
  /** Number of the row. */
  "cells",
  /** Place in the list of frames, format that the cell would have had. */
  "new-framed",
  /** Place in the list of frames, format so far. */
  "frame",
  "frame-plain",
  /** First and last column that a row of ours spans without our cells. */
  "spans",
  /** The same of any other row. */
  "spans-as-told",
  /** An empty cell gives way to one of ours. */
  "drop",
] as const;

export type SpliceKind = (typeof KINDS)[number];

/** One change: at a byte, so many bytes go, and what comes is made from the kind and its numbers. */
export interface Splice {
  readonly at: number;
  readonly removed: number;
  readonly kind: SpliceKind;
  readonly a: number;
  readonly b: number;
}

/** The changes to a sheet part in the order of its bytes, packed: a long sheet needs some for each of its rows. */
export class SpliceList {
  length = 0;
  #places = new Float64Array(FIRST_ROOM);
  #numbers = new Uint32Array(3 * FIRST_ROOM);
  #kinds = new Uint8Array(FIRST_ROOM);

  add(kind: SpliceKind, at: number, removed: number = 0, a: number = 0, b: number = 0): void {
    const i = this.length;
    if (i === this.#places.length) this.#grow();
    this.#places[i] = at;
    this.#kinds[i] = KINDS.indexOf(kind);
    this.#numbers.set([removed, a, b], 3 * i);
    this.length += 1;
  }

  at(i: number): Splice {
    const [removed = 0, a = 0, b = 0] = this.#numbers.subarray(3 * i, 3 * i + 3);
    return { at: this.#places[i] ?? 0, removed, kind: KINDS[this.#kinds[i] ?? 0] ?? "drop", a, b };
  }

  #grow(): void {
    this.#places = grown(this.#places, new Float64Array(2 * this.#places.length));
    this.#numbers = grown(this.#numbers, new Uint32Array(2 * this.#numbers.length));
    this.#kinds = grown(this.#kinds, new Uint8Array(2 * this.#kinds.length));
  }
}

function grown<T extends Float64Array | Uint32Array | Uint8Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
