/** Why a mapping cannot be filled: where, what was found, the limit, and what to do. */
export interface MappingProblem {
  /** Id of the target. */
  readonly target: string;
  /** Heading of the column; null where the row itself is in question. */
  readonly column: string | null;
  /** The point (with file, sheet and row) or the row, by name. */
  readonly of: string;
  readonly code: string;
  readonly text: string;
}

/** What was done to a value that somebody may want to know: shortened, written empty. */
export interface MappingRemark {
  readonly target: string;
  readonly column: string;
  readonly of: string;
  readonly text: string;
}

/** Problems that are kept with their words; more are counted. */
export const MOST_SHOWN = 200;

/** Gathers up to a number of things, and counts the rest. */
export class Gathered<T> {
  readonly #list: T[] = [];
  #count = 0;

  add(thing: T): void {
    this.#count += 1;
    if (this.#list.length < MOST_SHOWN) this.#list.push(thing);
  }

  get list(): readonly T[] {
    return this.#list;
  }

  /** All of them, those that are not in the list included. */
  get count(): number {
    return this.#count;
  }
}
