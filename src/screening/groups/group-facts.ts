import { type FactState, type Facts, type FactValue, MISSING } from "../../facts/index.js";
import type { GroupFactState } from "./group-state.js";

/**
 * The facts by which a group is judged: what its rows come to, its key, and for whoever asks what is missing, the
 * facts that its rows lack.
 */
export class GroupFacts implements Facts {
  readonly #states: ReadonlyMap<string, FactState>;

  /** @param key - values of the key by fact, the site left out */
  constructor(states: ReadonlyMap<string, GroupFactState>, key: ReadonlyMap<string, FactValue>) {
    const all = new Map<string, FactState>(states);
    for (const [id, value] of key) all.set(id, { known: true, value, origin: { kind: "none" } });
    for (const { lacking } of states.values()) {
      for (const { fact, reason } of lacking) {
        if (reason !== "too-close" && !all.has(fact)) all.set(fact, { ...MISSING, reason });
      }
    }
    this.#states = all;
  }

  get(id: string): FactState | undefined {
    return this.#states.get(id);
  }

  has(id: string): boolean {
    return this.#states.has(id);
  }

  [Symbol.iterator](): Iterator<readonly [string, FactState]> {
    return this.#states[Symbol.iterator]();
  }
}
