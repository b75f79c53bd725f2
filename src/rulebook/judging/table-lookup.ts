import { type Interval, isSingle, type PlainDay } from "../../base/index.js";
import { type FactState, type Facts, type FactValue, MISSING } from "../../facts/index.js";
import type { Rulebook } from "../book/rulebook.js";
import type { TableEntry, ValueTable } from "../book/table.js";
import { inForce } from "../reading/dated.js";
import { ABSENT } from "../reading/table-rows-check.js";

/** The tables of a rulebook on one day, ready to be looked up for many points. */
export interface TableLookup {
  /** Every fact that a table in force gives. */
  readonly facts: ReadonlySet<string>;
  /**
   * A fact of a table for one point: the value of the row that the facts it is looked up by name. Where they leave
   * several rows open it is, of a number, the interval over all of them; of anything else, unknown unless they agree.
   *
   * @returns undefined for a fact that no table in force gives
   */
  get(id: string, facts: Facts): FactState | undefined;
}

/** Makes the tables of a rulebook ready for one day. */
export function tablesOn(rulebook: Pick<Rulebook, "tables">, day: PlainDay): TableLookup {
  const homes = new Map<string, TableOnDay>();
  for (const table of rulebook.tables.values()) {
    const entry = table.entries.find((candidate) => inForce(candidate, day));
    if (!entry) continue;
    const onDay = new TableOnDay(table, entry);
    for (const id of table.gives) homes.set(id, onDay);
  }
  return { facts: new Set(homes.keys()), get: (id, facts) => homes.get(id)?.get(id, facts) };
}

class TableOnDay {
  readonly #by: readonly string[];
  readonly #entry: TableEntry;
  /** Answers by what the keys say; few, since every key is a choice. */
  readonly #answers = new Map<string, ReadonlyMap<string, FactState>>();
  readonly #gives: readonly string[];

  constructor(table: ValueTable, entry: TableEntry) {
    this.#by = table.by;
    this.#gives = table.gives;
    this.#entry = entry;
  }

  get(id: string, facts: Facts): FactState | undefined {
    const keys = this.#by.map((key) => facts.get(key) ?? MISSING);
    const mark = keys.map(markOf).join("|");
    const known = this.#answers.get(mark) ?? this.#lookUp(keys);
    this.#answers.set(mark, known);
    const state = known.get(id);
    const assumed = keys.find((key) => key.known && key.assumed !== undefined);
    // What was taken for granted of a key is, of what is looked up by it, too.
    return state?.known && assumed?.known && assumed.assumed !== undefined
      ? { ...state, assumed: assumed.assumed }
      : state;
  }

  #lookUp(keys: readonly FactState[]): ReadonlyMap<string, FactState> {
    const possible = this.#entry.rows.filter((row) => row.keys.every((key, i) => canBe(key, keys[i] ?? MISSING)));
    const open = this.#by.filter((_, i) => keys[i]?.known === false);
    // A value that nobody has is missing; one that hangs on an unknown choice is unknown for the reason of that choice.
    const reason = keys.find((key) => !key.known)?.reason ?? "missing";
    const from = [...open, ...this.#by.filter((id) => !open.includes(id))];
    const [only] = possible.length === 1 ? possible : [];
    return new Map(
      this.#gives.map((id): readonly [string, FactState] => {
        const value = valueOver(possible.map((row) => row.values.get(id) ?? null));
        const at = only?.at ?? (isSettled(value) ? this.#entry.at : null);
        const origin = { kind: "derived", from, ...(at ? { at: { file: at.file, line: at.line } } : {}) } as const;
        return [id, value === null ? { known: false, reason, origin } : { known: true, value, origin }];
      }),
    );
  }
}

function markOf(key: FactState): string {
  if (!key.known) return `?${key.reason}`;
  return typeof key.value === "object" ? "" : String(key.value);
}

function canBe(choice: string | boolean, key: FactState): boolean {
  return key.known ? key.value === choice : choice !== ABSENT;
}

function isSettled(value: FactValue | null): boolean {
  return value !== null && (typeof value !== "object" || isSingle(value));
}

/** The value that holds whichever of the rows is meant: an interval over all numbers, a word only if it is the same. */
function valueOver(values: readonly (FactValue | null)[]): FactValue | null {
  const [first = null] = values;
  if (first === null || values.includes(null)) return null;
  if (typeof first !== "object") return values.every((value) => value === first) ? first : null;
  const numbers = values.filter((value): value is Interval => typeof value === "object" && value !== null);
  return {
    lowest: Math.min(...numbers.map((number) => number.lowest)),
    highest: Math.max(...numbers.map((number) => number.highest)),
  };
}

/**
 * Facts with those of the tables laid under them: what the facts say themselves stays.
 *
 * @param facts - of a case, given one by one
 */
export function withTables(facts: ReadonlyMap<string, FactState>, tables: TableLookup): ReadonlyMap<string, FactState> {
  const all = new Map(facts);
  for (const id of tables.facts) {
    const state = facts.has(id) ? undefined : tables.get(id, facts);
    if (state) all.set(id, state);
  }
  return all;
}
