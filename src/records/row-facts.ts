import type { FactState, KnownFact } from "../facts/index.js";
import { type CellSaid, isSeat } from "./column-cell.js";
import { combine, type Entry, unknownAt } from "./entries.js";
import { speedsOutOfOrder } from "./speed-order.js";

/** The facts of one row and what is to be reported about them. */
export interface RowFacts {
  readonly facts: Map<string, FactState>;
  /** Facts whose cells are all empty: the site's word may stand in. */
  readonly empty: ReadonlySet<string>;
  readonly conflicts: readonly { readonly fact: string; readonly cells: readonly string[]; readonly cell: string }[];
  /** Parts of the seat that nobody mentioned, with what is taken for granted. */
  readonly absent: ReadonlyMap<string, KnownFact>;
}

/** Speeds that mains of 50 and 60 Hz would be if their hertz were turns of a shaft, r/min. */
const MAINS_SPEEDS_RPM: readonly number[] = [3000, 3600];

/**
 * Puts together what the cells of a row say.
 *
 * @param cells - what each cell said, in the order of the columns
 */
export function factsOfRow(cells: readonly CellSaid[]): RowFacts {
  const byFact = new Map<string, Entry[]>();
  for (const entry of cells.flatMap((cell) => (cell.hertz ? [...mainsDoubted(cell, cells)] : cell.entries))) {
    const known = byFact.get(entry.fact);
    if (known) known.push(entry);
    else byFact.set(entry.fact, [entry]);
  }
  const facts = new Map<string, FactState>();
  const empty = new Set<string>();
  const conflicts: RowFacts["conflicts"][number][] = [];
  for (const [fact, entries] of byFact) {
    const combined = combine(entries);
    facts.set(fact, combined.state);
    if (combined.empty) empty.add(fact);
    const [first] = combined.conflict;
    if (first) conflicts.push({ fact, cells: combined.conflict.map((place) => place.cell), cell: first.cell });
  }
  for (const { fact, state, cells: places } of speedsOutOfOrder(facts)) {
    facts.set(fact, state);
    conflicts.push({ fact, cells: places, cell: places[0] ?? "" });
  }
  return { facts, empty, conflicts, absent: absentParts(cells, byFact) };
}

/** Parts of the seat that have no column of their own and that the understood phrases do not mention. */
function absentParts(
  cells: readonly CellSaid[],
  byFact: ReadonlyMap<string, readonly Entry[]>,
): ReadonlyMap<string, KnownFact> {
  const absent = new Map<string, KnownFact>();
  for (const { fact, at } of cells.flatMap((cell) => cell.unmentioned)) {
    const spoken = byFact.get(fact) ?? [];
    if (spoken.length > 0 || !isSeat(fact)) continue;
    absent.set(fact, {
      known: true,
      value: "absent",
      assumed: "not mentioned, taken as absent",
      origin: { kind: "cells", cells: [at] },
    });
  }
  return absent;
}

/** Hertz may be those of the mains or of the drive: doubtful at 50 and 60, over a range, and under a variable drive. */
function* mainsDoubted(cell: CellSaid, cells: readonly CellSaid[]): Iterable<Entry> {
  const variable = cells.some((other) =>
    other.entries.some((e) => e.fact === "variable_speed" && e.state.known && e.state.value === "yes"),
  );
  const range = cell.entries.length > 1;
  for (const entry of cell.entries) {
    const { state } = entry;
    const value = state.known && typeof state.value === "object" ? state.value.lowest : null;
    const place = state.origin.kind === "cells" ? state.origin.cells[0] : undefined;
    const doubted = variable || range || (value !== null && MAINS_SPEEDS_RPM.includes(value));
    yield doubted && place ? { ...entry, state: unknownAt("doubtful", place) } : entry;
  }
}
