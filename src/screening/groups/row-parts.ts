import type { Truth } from "../../base/index.js";
import { findFact, MISSING, type Said } from "../../facts/index.js";
import type { CompiledGroup, CompiledMember } from "../../rulebook/index.js";
import { FactKey, Remembered } from "../fact-key.js";
import { saidOf } from "../identity.js";
import { missingFacts } from "../missing.js";
import type { PointFacts } from "../point-facts.js";
import type { Lacking } from "./group-state.js";

/** What one row brings to one fact of its group. */
export interface RowPart {
  /** Whether the row is meant. */
  readonly holds: Truth;
  /** What it says of the fact that is taken; null for a count. */
  readonly said: Said | null;
  /** What would settle it, where it is not. */
  readonly lacking: readonly Lacking[];
}

/** What one row brings to each fact of its group, in the order of the members. */
export type RowParts = readonly RowPart[];

const MOST_REMEMBERED = 20_000;

/**
 * What the rows bring to the groups of one kind: each different way once, under a number, since thousands of rows
 * bring few different things.
 */
export class PartsBook {
  readonly #members: readonly CompiledMember[];
  readonly #key: FactKey;
  readonly #remembered = new Remembered<number>(MOST_REMEMBERED);
  readonly #numbers = new Map<string, number>();
  readonly #parts: RowParts[] = [];

  constructor({ members, factsNamed }: CompiledGroup) {
    this.#members = members;
    this.#key = new FactKey(factsNamed);
  }

  /** The number of what a row brings. */
  numberOf(facts: PointFacts): number {
    const key = this.#key.of(facts);
    if (key === null) return this.#numberOf(this.#partsOf(facts));
    const known = this.#remembered.get(facts, key);
    if (known !== undefined) return known;
    const own = key.copy();
    const number = this.#numberOf(this.#partsOf(facts));
    this.#remembered.set(facts, own, number);
    return number;
  }

  /** What is brought under a number. */
  parts(number: number): RowParts {
    return this.#parts[number] ?? [];
  }

  #numberOf(parts: RowParts): number {
    const text = JSON.stringify(parts, plain);
    const known = this.#numbers.get(text);
    if (known !== undefined) return known;
    const number = this.#parts.push(parts) - 1;
    this.#numbers.set(text, number);
    return number;
  }

  #partsOf(facts: PointFacts): RowParts {
    return this.#members.map((member): RowPart => {
      const holds = member.holds(facts);
      if (holds === false) return { holds, said: null, lacking: [] };
      const said = member.fact === null ? null : saidOfFact(member.fact, facts);
      const open = holds === null ? [...member.openIn(facts)] : [];
      if (member.fact !== null && said?.known === false) open.push({ fact: member.fact, reason: said.reason });
      return { holds, said, lacking: missingFacts(open, facts).map(({ fact, reason }) => ({ fact, reason })) };
    });
  }
}

/** Infinite ends have no JSON form of their own. */
function plain(_: string, value: unknown): unknown {
  return typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
}

/** Only what counts: two rows with the same number are not told apart by what was taken for granted in reading it. */
function saidOfFact(id: string, facts: PointFacts): Said {
  const state = (findFact(id)?.source === "survey" ? saidOf(facts, id) : facts.get(id)) ?? MISSING;
  return state.known ? { known: true, value: state.value } : { known: false, reason: state.reason };
}
