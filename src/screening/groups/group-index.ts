import { tidyText } from "../../base/index.js";
import type { Facts, FactValue } from "../../facts/index.js";
import type { CompiledGroup } from "../../rulebook/index.js";
import { saidOf } from "../identity.js";
import type { PointFacts } from "../point-facts.js";
import { GroupFacts } from "./group-facts.js";
import { rowKeyOf } from "./group-key.js";
import type { GroupFactState } from "./group-state.js";
import { PartsBook } from "./row-parts.js";
import { together } from "./together.js";

/** No group. */
export const NONE = -1;

/** What groups that are alike come to. */
export interface GroupSum {
  /** Tells sums of one kind of group apart; from 0. */
  readonly number: number;
  readonly states: ReadonlyMap<string, GroupFactState>;
}

/**
 * The groups of one kind over all rows of a run, in a few numbers per row: rows are gathered one by one, then settled.
 * What groups come to is kept once for all groups that are alike.
 */
export class GroupIndex {
  readonly compiled: CompiledGroup;
  readonly #siteName: string | null;
  readonly #parts: PartsBook;
  readonly #byKey = new Map<string, number>();
  /** By group: the key as spelled by the row that comes first in the alphabet, and that row. */
  readonly #shown: string[] = [];
  readonly #speller: number[] = [];
  /** By row. */
  readonly #groupOf: Int32Array;
  readonly #partsOf: Int32Array;
  /** Rows in the order of their groups, and where each group begins among them. */
  #rows = new Int32Array(0);
  #starts = new Int32Array(1);
  readonly #sums: GroupSum[] = [];
  #sumOf = new Int32Array(0);

  /** @param rows - how many rows the run has */
  constructor(compiled: CompiledGroup, rows: number, siteName: string | null) {
    this.compiled = compiled;
    this.#siteName = siteName;
    this.#parts = new PartsBook(compiled);
    this.#groupOf = new Int32Array(rows).fill(NONE);
    this.#partsOf = new Int32Array(rows);
  }

  /** Takes a row in; before `settle`. */
  add(row: number, facts: PointFacts): void {
    const key = rowKeyOf(facts, this.compiled.group.key, this.#siteName);
    if (key === null) return;
    const group = this.#byKey.get(key.folded) ?? this.#shown.length;
    if (group === this.#shown.length) {
      this.#byKey.set(key.folded, group);
      this.#shown.push(key.shown);
      this.#speller.push(row);
    } else if (key.shown < (this.#shown[group] ?? "")) {
      this.#shown[group] = key.shown;
      this.#speller[group] = row;
    }
    this.#groupOf[row] = group;
    this.#partsOf[row] = this.#parts.numberOf(facts);
  }

  /** Puts the rows of each group together, once all rows are in. */
  settle(): void {
    this.#byKey.clear();
    const starts = new Int32Array(this.#shown.length + 1);
    for (const group of this.#groupOf) if (group !== NONE) starts[group + 1] = (starts[group + 1] ?? 0) + 1;
    for (let group = 0; group < this.#shown.length; group++) {
      starts[group + 1] = (starts[group + 1] ?? 0) + (starts[group] ?? 0);
    }
    const next = starts.slice();
    const rows = new Int32Array(starts.at(-1) ?? 0);
    for (let row = 0; row < this.#groupOf.length; row++) {
      const group = this.#groupOf[row] ?? NONE;
      if (group === NONE) continue;
      rows[next[group] ?? 0] = row;
      next[group] = (next[group] ?? 0) + 1;
    }
    this.#starts = starts;
    this.#rows = rows;
    this.#sumUp();
  }

  get size(): number {
    return this.#shown.length;
  }

  get sums(): readonly GroupSum[] {
    return this.#sums;
  }

  /** The group of a row, or NONE. */
  groupOf(row: number): number {
    return this.#groupOf[row] ?? NONE;
  }

  /** The rows of a group in the order of the run. */
  rowsOf(group: number): Int32Array {
    return this.#rows.subarray(this.#starts[group], this.#starts[group + 1]);
  }

  sumOf(group: number): GroupSum {
    const sum = this.#sums[this.#sumOf[group] ?? NONE];
    if (!sum) throw new RangeError(`no group ${group} of the kind "${this.compiled.group.id}"`);
    return sum;
  }

  /** Kind and key ("supply: PSU 1"); the same whatever the order of rows and files. */
  idOf(group: number): string {
    return `${this.compiled.group.id}: ${this.#shown[group]}`;
  }

  /** The row whose spelling of the key stands for all of them. */
  spellerOf(group: number): number {
    return this.#speller[group] ?? 0;
  }

  /** Everything that a rule may ask of a group. @param facts - of the row that spells the key */
  factsOf(group: number, facts: Facts): GroupFacts {
    return new GroupFacts(this.sumOf(group).states, this.keyOf(facts));
  }

  /** What a row says of the key, as far as it is known; the site left out. */
  keyOf(facts: Facts): ReadonlyMap<string, FactValue> {
    const key = new Map<string, FactValue>();
    for (const id of this.compiled.group.key) {
      const said = saidOf(facts, id);
      if (said?.known) key.set(id, typeof said.value === "string" ? tidyText(said.value) : said.value);
    }
    return key;
  }

  #sumUp(): void {
    this.#sumOf = new Int32Array(this.size);
    const numbers = new Map<string, number>();
    for (let group = 0; group < this.size; group++) {
      const counts = new Map<number, number>();
      for (const row of this.rowsOf(group)) {
        const part = this.#partsOf[row] ?? 0;
        counts.set(part, (counts.get(part) ?? 0) + 1);
      }
      const brought = [...counts].sort(([a], [b]) => a - b);
      const mark = brought.join(";");
      const known = numbers.get(mark);
      this.#sumOf[group] = known ?? this.#sums.length;
      if (known !== undefined) continue;
      numbers.set(mark, this.#sums.length);
      this.#sums.push({ number: this.#sums.length, states: this.#statesOf(brought) });
    }
  }

  #statesOf(brought: readonly (readonly [number, number])[]): ReadonlyMap<string, GroupFactState> {
    return new Map(
      this.compiled.members.map((member, i) => {
        const parts = brought.flatMap(([number, rows]) => {
          const part = this.#parts.parts(number)[i];
          return part ? [{ part, rows }] : [];
        });
        return [member.id, together(member, parts)] as const;
      }),
    );
  }
}
