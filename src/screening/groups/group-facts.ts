import { type FactState, type Facts, type FactValue, MISSING } from "../../facts/index.js";
import type { GroupFactState } from "./group-state.js";

/**
 * The facts by which a group is judged: what its rows come to, its key, and for whoever asks what is missing, the
 * facts that its rows lack.
 */
export class GroupFacts implements Facts {
  readonly #states: ReadonlyMap<string, GroupFactState>;
  readonly #key: ReadonlyMap<string, FactValue>;

  /** @param key - values of the key by fact, the site left out */
  constructor(states: ReadonlyMap<string, GroupFactState>, key: ReadonlyMap<string, FactValue>) {
    this.#states = states;
    this.#key = key;
  }

  get(id: string): FactState | undefined {
    const value = this.#key.get(id);
    if (value !== undefined) return { known: true, value, origin: { kind: "none" } };
    return this.#states.get(id) ?? this.#lacked(id);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    const lacked = [...this.#states.values()].flatMap(({ lacking }) => lacking.map(({ fact }) => fact));
    for (const id of new Set([...this.#states.keys(), ...this.#key.keys(), ...lacked])) {
      const state = this.get(id);
      if (state) yield [id, state];
    }
  }

  #lacked(id: string): FactState | undefined {
    for (const { lacking } of this.#states.values()) {
      const found = lacking.find(({ fact, reason }) => fact === id && reason !== "too-close");
      if (found) return { ...MISSING, reason: found.reason };
    }
    return undefined;
  }
}
