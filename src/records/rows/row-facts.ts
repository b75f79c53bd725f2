import type { Said } from "../../facts/index.js";
import type { CellAt } from "../cells/grid.js";
import { type CellSaid, isSeat } from "./column-cell.js";
import { CONFLICTING, combine, type Entry, type PlacedEntry, unknownAs } from "./entries.js";
import type { RowDraft } from "./row-draft.js";
import { speedsOutOfOrder } from "./speed-order.js";

/**
 * What the cells of a row say, in the order of the columns, each with the cell that says it: another one under a
 * merged range or a mark for "as above". Used anew for every row of a table.
 */
export class RowCells {
  readonly said: CellSaid[] = [];
  readonly rows: number[] = [];
  readonly columns: number[] = [];

  set(i: number, said: CellSaid, row: number, column: number): void {
    this.said[i] = said;
    this.rows[i] = row;
    this.columns[i] = column;
  }

  at(i: number): CellAt {
    return { row: this.rows[i] ?? 0, column: this.columns[i] ?? 0 };
  }
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

/** Whether nothing stands behind what is said but that nobody mentioned it. */
export function isOnlyAbsent(said: Said): boolean {
  return said.known && ABSENT.known && said.assumed === ABSENT.assumed;
}

const DOUBTFUL: Said = unknownAs("doubtful");

/**
 * Puts together what the cells of a row say.
 *
 * @param draft - begun for the row, and filled here
 */
export function factsOfRow(cells: RowCells, draft: RowDraft): RowFacts {
  const empty = new Set<string>();
  const conflicts: RowFacts["conflicts"][number][] = [];
  for (const [fact, entries] of spokenTwice(cells, draft, empty)) {
    const combined = combine(entries);
    draft.setFromAll(fact, combined.said, combined.cells);
    if (combined.empty) empty.add(fact);
    else empty.delete(fact);
    if (combined.conflict) conflicts.push({ fact, cells: combined.cells });
  }
  for (const { fact, cells: places } of speedsOutOfOrder(draft)) {
    draft.setFromAll(fact, CONFLICTING, places);
    conflicts.push({ fact, cells: places });
  }
  return { draft, empty, conflicts, absent: absentParts(cells, draft) };
}

/** Sets the facts that one cell speaks of; gives back those of which more than one does, with all that is said. */
function spokenTwice(
  { said, rows, columns }: RowCells,
  draft: RowDraft,
  empty: Set<string>,
): ReadonlyMap<string, readonly PlacedEntry[]> {
  let twice: Map<string, PlacedEntry[]> | null = null;
  for (let i = 0; i < said.length; i++) {
    const cell = said[i] as CellSaid;
    const row = rows[i] ?? 0;
    const column = columns[i] ?? 0;
    for (const entry of cell.hertz ? mainsDoubted(cell, said) : cell.entries) {
      if (!draft.has(entry.fact)) {
        draft.setFrom(entry.fact, entry.said, row, column);
        if (entry.empty) empty.add(entry.fact);
        continue;
      }
      twice ??= new Map();
      const entries = twice.get(entry.fact) ?? firstEntries(entry.fact, said, rows, columns, i);
      entries.push({ entry, at: { row, column } });
      twice.set(entry.fact, entries);
    }
  }
  return twice ?? new Map();
}

/** What the cells before the i-th say of a fact; the i-th itself says it, too, where it speaks of it twice. */
function firstEntries(
  fact: string,
  said: readonly CellSaid[],
  rows: readonly number[],
  columns: readonly number[],
  i: number,
): PlacedEntry[] {
  for (let j = 0; j <= i; j++) {
    const cell = said[j] as CellSaid;
    const entry = (cell.hertz ? mainsDoubted(cell, said) : cell.entries).find((one) => one.fact === fact);
    if (entry) return [{ entry, at: { row: rows[j] ?? 0, column: columns[j] ?? 0 } }];
  }
  return [];
}

const NOTHING_ABSENT: ReadonlyMap<string, CellAt> = new Map();

/** Parts of the seat that have no column of their own and that the understood phrases do not mention. */
function absentParts(cells: RowCells, spoken: RowDraft): ReadonlyMap<string, CellAt> {
  let absent: Map<string, CellAt> | null = null;
  for (const [i, { unmentioned }] of cells.said.entries()) {
    for (const fact of unmentioned) {
      if (spoken.has(fact) || !isSeat(fact)) continue;
      absent ??= new Map();
      absent.set(fact, cells.at(i));
    }
  }
  return absent ?? NOTHING_ABSENT;
}

/** Hertz may be those of the mains or of the drive: doubtful at 50 and 60, over a range, and under a variable drive. */
function mainsDoubted(cell: CellSaid, cells: readonly CellSaid[]): readonly Entry[] {
  const variable = cells.some((other) =>
    other.entries.some((e) => e.fact === "variable_speed" && e.said.known && e.said.value === "yes"),
  );
  const range = cell.entries.length > 1;
  return cell.entries.map((entry) => {
    const { said } = entry;
    const value = said.known && typeof said.value === "object" ? said.value : null;
    const isMains = MAINS_SPEEDS_RPM.some((rpm) => value !== null && value.lowest <= rpm && rpm <= value.highest);
    const doubted = variable || range || isMains;
    return doubted ? { ...entry, said: DOUBTFUL } : entry;
  });
}
