import { DEPTH_LIMIT } from "./limits.js";

/** The elements that are open, by their full names in bytes; as deep as the depth limit and no deeper. */
export class OpenElements {
  depth = 0;
  #names: Uint8Array = new Uint8Array(256);
  /** Where the name at each depth begins in `#names`; the one behind the last says where that ends. */
  readonly #starts = new Int32Array(DEPTH_LIMIT + 2);
  readonly #elements = new Uint16Array(DEPTH_LIMIT + 2);

  /** @param element - number under which the name is known, 0 if under none */
  push(bytes: Uint8Array, from: number, to: number, element: number): void {
    const start = this.#starts[this.depth] ?? 0;
    const end = start + to - from;
    if (end > this.#names.length) {
      const wider = new Uint8Array(2 * end);
      wider.set(this.#names);
      this.#names = wider;
    }
    for (let i = from; i < to; i++) this.#names[start + i - from] = bytes[i] ?? 0;
    this.#elements[this.depth] = element;
    this.depth += 1;
    this.#starts[this.depth] = end;
  }

  pop(): void {
    this.depth -= 1;
  }

  /** Number under which the innermost element is known. */
  get element(): number {
    return this.#elements[this.depth - 1] ?? 0;
  }

  /** Bytes of the name of the innermost element. */
  get nameLength(): number {
    return (this.#starts[this.depth] ?? 0) - (this.#starts[this.depth - 1] ?? 0);
  }

  /** Whether the bytes from a place on are the name of the innermost element. */
  isNamedAt(bytes: Uint8Array, from: number): boolean {
    const start = this.#starts[this.depth - 1] ?? 0;
    const end = this.#starts[this.depth] ?? 0;
    for (let i = start; i < end; i++) if (this.#names[i] !== bytes[from + i - start]) return false;
    return true;
  }
}
