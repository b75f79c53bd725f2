import { AskedFacts, findFact } from "../facts/index.js";
import type { PointFacts } from "./point-facts.js";
import { surveyFactsUnder } from "./survey-facts-under.js";

/** Numbers that say what some facts of a point rest on; used anew for every point, unless copied. */
export class KeyNumbers {
  readonly numbers: Int32Array;
  length = 0;

  constructor(numbers: Int32Array) {
    this.numbers = numbers;
  }

  copy(): KeyNumbers {
    const copy = new KeyNumbers(this.numbers.slice(0, this.length));
    copy.length = this.length;
    return copy;
  }

  /** As one text, for those who keep few. */
  text(): string {
    return this.numbers.subarray(0, this.length).join();
  }

  /** The same for equal keys, and seldom for others (FNV-1a, by whole numbers in place of bytes). */
  hash(): number {
    let hash = 0x811c9dc5;
    for (let i = 0; i < this.length; i++) hash = Math.imul(hash ^ (this.numbers[i] as number), 0x01000193);
    return hash ^ (hash >>> 15);
  }
}

/**
 * What some facts of a point rest on, as numbers: equal for two points of which all the same is said. Only to be
 * compared among points of one sensor model.
 */
export class FactKey {
  /** The survey facts that they rest on. */
  readonly roots: readonly string[];
  readonly #ofRecord: AskedFacts;
  readonly #ofGroups: readonly string[];
  readonly #key: KeyNumbers;

  /** @param except - a fact of the record that is not to count */
  constructor(facts: readonly string[], except: string | null = null) {
    this.roots = [...new Set(facts.flatMap(surveyFactsUnder))].filter((id) => id !== except);
    this.#ofGroups = this.roots.filter(isOfGroup);
    this.#ofRecord = new AskedFacts(this.roots.filter((id) => !isOfGroup(id)));
    this.#key = new KeyNumbers(new Int32Array(this.roots.length + 1));
  }

  /** Null where it cannot be told whether two points are equal. Good until it is asked for the next point. */
  of(facts: PointFacts): KeyNumbers | null {
    const { family } = facts;
    if (family === undefined) return null;
    const { numbers } = this.#key;
    numbers[0] = family;
    this.#key.length = facts.keyNumbers(this.#ofRecord, this.#ofGroups, numbers, 1);
    return this.#key;
  }
}

function isOfGroup(id: string): boolean {
  return findFact(id)?.source === "group";
}

/** Things remembered by sensor model (or the reason why there is none) and by key; forgets all when it gets too many. */
export class Remembered<Thing> {
  readonly #byModel = new Map<unknown, NumberTable<Thing>>();
  readonly #most: number;

  /** @param most - per sensor model; past it everything is forgotten, which costs time and nothing else */
  constructor(most: number) {
    this.#most = most;
  }

  get(facts: PointFacts, key: KeyNumbers): Thing | undefined {
    return this.#byModel.get(modelOf(facts))?.get(key);
  }

  /** @param key - copied, if anything was asked since it was made */
  set(facts: PointFacts, key: KeyNumbers, thing: Thing): void {
    const model = modelOf(facts);
    let things = this.#byModel.get(model);
    if (!things || things.size >= this.#most) {
      things = new NumberTable();
      this.#byModel.set(model, things);
    }
    things.set(key, thing);
  }
}

function modelOf({ model }: PointFacts): unknown {
  return model.ok ? model.model : model.reason;
}

const FIRST_PLACES = 64;

/**
 * Things by keys of whole numbers: open addressing over one array of numbers. A key as text would have to be put
 * together, spread out and compared for every rule and point.
 */
class NumberTable<Thing> {
  readonly #things: Thing[] = [];
  /** Where the key of a thing begins, its length first. */
  readonly #starts: number[] = [];
  #numbers = new Int32Array(FIRST_PLACES * 4);
  #used = 0;
  /** Number of a thing and one, 0 for an empty place; twice as many places as things, a power of two. */
  #places = new Int32Array(FIRST_PLACES);

  get size(): number {
    return this.#things.length;
  }

  get(key: KeyNumbers): Thing | undefined {
    const found = this.#places[this.#placeOf(key)] as number;
    return found === 0 ? undefined : this.#things[found - 1];
  }

  set(key: KeyNumbers, thing: Thing): void {
    const place = this.#placeOf(key);
    const found = this.#places[place] as number;
    if (found > 0) {
      this.#things[found - 1] = thing;
      return;
    }
    this.#starts.push(this.#used);
    this.#keep(key);
    this.#places[place] = this.#things.push(thing);
    if (this.#things.length * 2 > this.#places.length) this.#widen();
  }

  /** The place of a key, or the empty one where it belongs. */
  #placeOf(key: KeyNumbers): number {
    const mask = this.#places.length - 1;
    let place = key.hash() & mask;
    for (;;) {
      const found = this.#places[place] as number;
      if (found === 0 || this.#isAt(this.#starts[found - 1] as number, key)) return place;
      place = (place + 1) & mask;
    }
  }

  #isAt(start: number, { numbers, length }: KeyNumbers): boolean {
    if (this.#numbers[start] !== length) return false;
    for (let i = 0; i < length; i++) if (this.#numbers[start + 1 + i] !== numbers[i]) return false;
    return true;
  }

  #keep({ numbers, length }: KeyNumbers): void {
    const needed = this.#used + length + 1;
    if (needed > this.#numbers.length) {
      const wider = new Int32Array(Math.max(needed, this.#numbers.length * 2));
      wider.set(this.#numbers);
      this.#numbers = wider;
    }
    this.#numbers[this.#used] = length;
    this.#numbers.set(numbers.subarray(0, length), this.#used + 1);
    this.#used = needed;
  }

  #widen(): void {
    this.#places = new Int32Array(this.#places.length * 2);
    for (const [i, start] of this.#starts.entries()) {
      const length = this.#numbers[start] as number;
      const key = new KeyNumbers(this.#numbers.subarray(start + 1, start + 1 + length));
      key.length = length;
      this.#places[this.#placeOf(key)] = i + 1;
    }
  }
}
