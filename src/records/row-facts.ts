import type { Said } from "../facts/index.js";
import { type CellSaid, isSeat } from "./column-cell.js";
import { CONFLICTING, combine, type Entry, type PlacedEntry, unknownAs } from "./entries.js";
import type { CellAt, FactSlots } from "./record-facts.js";
import { RowDraft } from "./row-draft.js";
import { speedsOutOfOrder } from "./speed-order.js";

/** What a cell of a row says, and the cell that says it: another one under a merged range or a mark for "as above". */
export interface PlacedCell {
  readonly said: CellSaid;
  readonly at: CellAt;
}

/** The facts of one row and what is to be reported about them. */
export interface RowFacts {
  readonly draft: RowDraft;
  /** Facts whose cells are all empty: the site's word may stand in. */
  readonly empty: ReadonlySet<string>;
  readonly conflicts: readonly { readonly fact: string; readonly cells: readonly CellAt[] }[];
  /** Parts of the seat that nobody mentioned, with the cell whose phrase leaves them out. */
  readonly absent: ReadonlyMap<string, CellAt>;
}

/** Speeds that mains of 50 and 60 Hz would be if their hertz were turns of a shaft, r/min. */
const MAINS_SPEEDS_RPM: readonly number[] = [3000, 3600];

/** What is taken for granted of a part of the seat that the phrase about the seat does not mention. */
export const ABSENT: Said = { known: true, value: "absent", assumed: "not mentioned, taken as absent" };

const DOUBTFUL: Said = unknownAs("doubtful");

/**
 * Puts together what the cells of a row say.
 *
 * @param cells - what each cell said, in the order of the columns
 */
export function factsOfRow(cells: readonly PlacedCell[], row: number, slots: FactSlots): RowFacts {
  const draft = new RowDraft(row, slots);
  const empty = new Set<string>();
  const conflicts: RowFacts["conflicts"][number][] = [];
  const { first, several } = gather(cells);
  for (const [fact, { entry, at }] of first) {
    const list = several.get(fact);
    if (list === undefined) {
      draft.setFrom(fact, entry.said, at);
      if (entry.empty) empty.add(fact);
      continue;
    }
    const combined = combine(list);
    draft.set(fact, combined.said, combined.cells);
    if (combined.empty) empty.add(fact);
    if (combined.conflict) conflicts.push({ fact, cells: combined.cells });
  }
  for (const { fact, cells: places } of speedsOutOfOrder(draft)) {
    draft.set(fact, CONFLICTING, places);
    conflicts.push({ fact, cells: places });
  }
  return { draft, empty, conflicts, absent: absentParts(cells, first) };
}

/** The entries of a row by fact: the first of each, and all of those that more than one cell speaks of. */
function gather(cells: readonly PlacedCell[]): {
  readonly first: ReadonlyMap<string, PlacedEntry>;
  readonly several: ReadonlyMap<string, readonly PlacedEntry[]>;
} {
  const first = new Map<string, PlacedEntry>();
  const several = new Map<string, PlacedEntry[]>();
  for (const { said, at } of cells) {
    for (const entry of said.hertz ? mainsDoubted(said, cells) : said.entries) {
      const before = first.get(entry.fact);
      if (before === undefined) {
        first.set(entry.fact, { entry, at });
        continue;
      }
      const list = several.get(entry.fact) ?? [before];
      list.push({ entry, at });
      several.set(entry.fact, list);
    }
  }
  return { first, several };
}

const NOTHING_ABSENT: ReadonlyMap<string, CellAt> = new Map();

/** Parts of the seat that have no column of their own and that the understood phrases do not mention. */
function absentParts(cells: readonly PlacedCell[], spoken: ReadonlyMap<string, unknown>): ReadonlyMap<string, CellAt> {
  let absent: Map<string, CellAt> | null = null;
  for (const { said, at } of cells) {
    for (const fact of said.unmentioned) {
      if (spoken.has(fact) || !isSeat(fact)) continue;
      absent ??= new Map();
      absent.set(fact, at);
    }
  }
  return absent ?? NOTHING_ABSENT;
}

/** Hertz may be those of the mains or of the drive: doubtful at 50 and 60, over a range, and under a variable drive. */
function mainsDoubted(cell: CellSaid, cells: readonly PlacedCell[]): readonly Entry[] {
  const variable = cells.some(({ said: other }) =>
    other.entries.some((e) => e.fact === "variable_speed" && e.said.known && e.said.value === "yes"),
  );
  const range = cell.entries.length > 1;
  return cell.entries.map((entry) => {
    const { said } = entry;
    const value = said.known && typeof said.value === "object" ? said.value.lowest : null;
    const doubted = variable || range || (value !== null && MAINS_SPEEDS_RPM.includes(value));
    return doubted ? { ...entry, said: DOUBTFUL } : entry;
  });
}
