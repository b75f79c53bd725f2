import type { AskedFacts, Said } from "../../facts/index.js";

const BLOCK_BITS = 16;
const BLOCK_NUMBERS = 1 << BLOCK_BITS;
const BLOCK_MASK = BLOCK_NUMBERS - 1;

let stores = 0;

/**
 * What the rows of one table say, kept as numbers of what is said: four bytes a fact and row, since thousands of
 * rows say few different things. Also numbers the facts themselves, and remembers in which column each usually stands.
 */
export class FactStore {
  /** Tells the stores of one program run apart. */
  readonly id: number = ++stores;
  readonly #slots = new Map<string, number>();
  readonly #facts: string[] = [];
  readonly #columns: number[] = [];
  readonly #numbers = new Map<Said, number>();
  readonly #said: Said[] = [];
  readonly #blocks: Uint32Array[] = [];
  #length = 0;

  /** The slot of a fact; a new one gets `column` as its usual column. */
  slotOf(fact: string, column: number): number {
    const known = this.#slots.get(fact);
    if (known !== undefined) {
      // A fact that only the site stated so far has no column yet.
      if (this.#columns[known] === 0) this.#columns[known] = column;
      return known;
    }
    this.#slots.set(fact, this.#facts.length);
    this.#columns.push(column);
    return this.#facts.push(fact) - 1;
  }

  /** The slots of those facts that have one. */
  slotsOf(asked: AskedFacts): Int32Array {
    // A row of the table may have brought another fact since.
    if (asked.keeper !== this || asked.among !== this.#facts.length) {
      asked.keeper = this;
      asked.among = this.#facts.length;
      asked.places = Int32Array.from(asked.ids.flatMap((fact) => this.#slots.get(fact) ?? []));
    }
    return asked.places;
  }

  find(fact: string): number | undefined {
    return this.#slots.get(fact);
  }

  usualColumn(slot: number): number {
    return this.#columns[slot] ?? 0;
  }

  get facts(): readonly string[] {
    return this.#facts;
  }

  /**
   * Keeps what one row says.
   *
   * @param said - by slot
   * @returns where it is kept; as many slots as there are now
   */
  keep(said: readonly (Said | undefined)[]): number {
    const at = this.#length;
    for (let slot = 0; slot < this.#facts.length; slot++) {
      const block = this.#length & BLOCK_MASK;
      if (block === 0) this.#blocks.push(new Uint32Array(BLOCK_NUMBERS));
      const one = said[slot];
      (this.#blocks[this.#length >> BLOCK_BITS] as Uint32Array)[block] = one === undefined ? 0 : this.#numberOf(one);
      this.#length += 1;
    }
    return at;
  }

  /** The number of what is said there, 0 for nothing; the same number means the same is said. */
  number(at: number): number {
    return this.#blocks[at >> BLOCK_BITS]?.[at & BLOCK_MASK] ?? 0;
  }

  /** What is said there. */
  said(at: number): Said | undefined {
    return this.#said[this.number(at) - 1];
  }

  #numberOf(said: Said): number {
    const known = this.#numbers.get(said);
    if (known !== undefined) return known;
    const number = this.#said.push(said);
    this.#numbers.set(said, number);
    return number;
  }
}
