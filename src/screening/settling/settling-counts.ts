import type { SettlingStep } from "../result.js";
import { placeOf } from "./settler.js";

/** Sets looked at as the next step, the smallest first; with few different sets, all of them. */
const MOST_CANDIDATES = 256;
/** Of those, sets that are also looked at in pairs. */
const MOST_PAIRED = 24;

/** Facts that are still to be fetched for some points, and how many points. */
interface OpenSet {
  readonly facts: readonly string[];
  readonly points: number;
}

/** Counts the sets of facts that would settle points, each different set once, and puts them into an order. */
export class SettlingCounts {
  readonly #points = new Map<string, number>();

  /**
   * @param facts - what would settle a point, always in the same order
   * @param points - how many points it would settle
   */
  add(facts: readonly string[], points: number = 1): void {
    const key = facts.join();
    this.#points.set(key, (this.#points.get(key) ?? 0) + points);
  }

  /**
   * What to fetch one after the other: each step has the facts that settle the most further points per fact. The
   * search is greedy, and among very many different sets of facts looks at the smallest ones only.
   */
  steps(): readonly SettlingStep[] {
    let open = [...this.#points].map(([key, points]): OpenSet => ({ facts: key.split(","), points }));
    const steps: SettlingStep[] = [];
    for (let pointsSoFar = 0; open.length > 0; ) {
      const { facts, points } = bestStep(open);
      pointsSoFar += points;
      steps.push({ facts, points, pointsSoFar });
      open = without(facts, open);
    }
    return steps;
  }
}

/** The sets less what is fetched by then; equal ones joined, empty ones left out. */
function without(fetched: readonly string[], open: readonly OpenSet[]): OpenSet[] {
  const known = new Set(fetched);
  const rest = new Map<string, OpenSet>();
  for (const { facts, points } of open) {
    const left = facts.filter((id) => !known.has(id));
    if (left.length === 0) continue;
    const key = left.join();
    rest.set(key, { facts: left, points: points + (rest.get(key)?.points ?? 0) });
  }
  return [...rest.values()];
}

function bestStep(open: readonly OpenSet[]): OpenSet {
  const sets = [...open].sort(
    (a, b) => a.facts.length - b.facts.length || b.points - a.points || compareFacts(a.facts, b.facts),
  );
  const masks = new Masks(sets);
  let best: OpenSet = { facts: [], points: 0 };
  for (const facts of candidatesAmong(sets)) {
    const points = masks.settledBy(facts);
    if (isBetter(facts, points, best)) best = { facts, points };
  }
  return best;
}

function candidatesAmong(sets: readonly OpenSet[]): readonly (readonly string[])[] {
  const single = sets.slice(0, MOST_CANDIDATES).map(({ facts }) => facts);
  const few = single.slice(0, MOST_PAIRED);
  const pairs = few.flatMap((a, i) => few.slice(i + 1).map((b) => inOrder(new Set([...a, ...b]))));
  return [...single, ...pairs];
}

/** More points per fact; else fewer facts; else those that come first in the catalogue. */
function isBetter(facts: readonly string[], points: number, than: OpenSet): boolean {
  const gain = points * than.facts.length - than.points * facts.length;
  if (than.facts.length === 0 || gain !== 0) return than.facts.length === 0 || gain > 0;
  return facts.length === than.facts.length ? compareFacts(facts, than.facts) < 0 : facts.length < than.facts.length;
}

function inOrder(facts: ReadonlySet<string>): readonly string[] {
  return [...facts].sort((a, b) => placeOf(a) - placeOf(b) || (a < b ? -1 : 1));
}

function compareFacts(a: readonly string[], b: readonly string[]): number {
  for (const [i, id] of a.entries()) {
    const other = b[i];
    if (other === undefined) return 1;
    if (id !== other) return placeOf(id) - placeOf(other) || (id < other ? -1 : 1);
  }
  return a.length - b.length;
}

const WORD_BITS = 32;

/** Sets of facts as bits, the smallest sets first, so that "is part of" is asked quickly. */
class Masks {
  readonly #bits = new Map<string, number>();
  readonly #sets: readonly OpenSet[];
  readonly #words: number;
  readonly #masks: Uint32Array;

  constructor(sets: readonly OpenSet[]) {
    for (const { facts } of sets) {
      for (const id of facts) if (!this.#bits.has(id)) this.#bits.set(id, this.#bits.size);
    }
    this.#sets = sets;
    this.#words = Math.ceil(this.#bits.size / WORD_BITS);
    this.#masks = new Uint32Array(sets.length * this.#words);
    for (const [i, { facts }] of sets.entries()) this.#write(facts, this.#masks, i * this.#words);
  }

  /** Points of all sets that are part of this one. */
  settledBy(facts: readonly string[]): number {
    const mask = new Uint32Array(this.#words);
    this.#write(facts, mask, 0);
    let points = 0;
    for (let i = 0; i < this.#sets.length; i++) {
      const set = this.#sets[i];
      if (set === undefined || set.facts.length > facts.length) break;
      if (this.#isPart(i * this.#words, mask)) points += set.points;
    }
    return points;
  }

  #isPart(at: number, mask: Uint32Array): boolean {
    for (let word = 0; word < this.#words; word++) {
      if (((this.#masks[at + word] ?? 0) & ~(mask[word] ?? 0)) !== 0) return false;
    }
    return true;
  }

  #write(facts: readonly string[], into: Uint32Array, at: number): void {
    for (const id of facts) {
      const bit = this.#bits.get(id) ?? 0;
      const word = at + Math.floor(bit / WORD_BITS);
      into[word] = (into[word] ?? 0) | (1 << (bit % WORD_BITS));
    }
  }
}
