import { type CellPlace, cellName, type Interval } from "../base/index.js";
import type { FactState, FactValue, KnownFact, UnknownReason } from "../facts/index.js";
import type { CellTrouble } from "./cell-reading.js";
import type { SeenCell } from "./grid.js";
import type { ProblemCode } from "./problems.js";

/** What one cell says of one fact. */
export interface Entry {
  readonly fact: string;
  readonly state: FactState;
  /** The cell is empty, so that the site's word may stand in for it. */
  readonly empty: boolean;
  /** Found beside the matter of the column (the finish in a column of materials). */
  readonly mention: boolean;
  /** Nothing in the cell was understood, and it stands in the column of another fact: a known value may overrule it. */
  readonly weak?: true;
}

/** The phrase of a cell was understood, and does not speak of the fact. */
export interface Unmentioned {
  readonly fact: string;
  readonly at: CellPlace;
}

export function placeOf(sheet: string | null, cell: Pick<SeenCell, "row" | "column">): CellPlace {
  return { sheet, cell: cellName(cell.row, cell.column) };
}

export function knownAt(
  value: FactValue,
  place: CellPlace,
  more: { accuracy?: number; assumed?: string } = {},
): KnownFact {
  return { known: true, value, ...more, origin: { kind: "cells", cells: [place] } };
}

export function unknownAt(reason: UnknownReason, place: CellPlace): FactState {
  return { known: false, reason, origin: { kind: "cells", cells: [place] } };
}

/** How the trouble of a cell counts for its fact. */
export function reasonOf(trouble: Pick<CellTrouble, "code">): UnknownReason {
  const reasons: Partial<Record<ProblemCode, UnknownReason>> = {
    missing: "missing",
    doubtful: "doubtful",
    conflicting: "conflicting",
  };
  return reasons[trouble.code] ?? "unreadable";
}

/** Whether two values are the same; intervals only if both ends are. */
export function isSameValue(a: FactValue, b: FactValue): boolean {
  if (typeof a !== "object" || typeof b !== "object") return a === b;
  return sameInterval(a, b);
}

function sameInterval(a: Interval, b: Interval): boolean {
  return a.lowest === b.lowest && a.highest === b.highest;
}

/** All that the cells of a row say of one fact, as one state. */
export interface Combined {
  readonly state: FactState;
  readonly empty: boolean;
  /** Places of values that contradict each other; empty if none do. */
  readonly conflict: readonly CellPlace[];
}

const NO_PLACES: readonly CellPlace[] = [];

/** Known values must agree; only an empty cell, or one with a word for missing, yields to them. */
export function combine(entries: readonly Entry[]): Combined {
  const [only] = entries;
  if (only && entries.length === 1) return { state: only.state, empty: only.empty, conflict: NO_PLACES };
  const known = entries.flatMap((entry) => (entry.state.known ? [entry.state] : []));
  const [first] = known;
  const cells = known.flatMap(cellsOf);
  if (first && !known.every((state) => isSameValue(state.value, first.value))) {
    return { state: conflicting(cells), empty: false, conflict: cells };
  }
  const spoiling = entries.find((entry) => !yields(entry));
  if (spoiling) return { state: spoiling.state, empty: false, conflict: NO_PLACES };
  if (first) return { state: { ...first, origin: { kind: "cells", cells } }, empty: false, conflict: NO_PLACES };
  const told = entries.find((entry) => !entry.empty) ?? entries[0];
  if (!told) throw new RangeError("nothing to combine");
  return { state: told.state, empty: entries.every((entry) => entry.empty), conflict: NO_PLACES };
}

function yields({ state, weak }: Entry): boolean {
  return state.known || state.reason === "missing" || weak === true;
}

/** The state of a fact whose cells contradict each other. */
export function conflicting(cells: readonly CellPlace[]): FactState {
  return { known: false, reason: "conflicting", origin: { kind: "cells", cells } };
}

/** The cells that a state was read from. */
export function cellsOf(state: FactState): readonly CellPlace[] {
  return state.origin.kind === "cells" ? state.origin.cells : [];
}
