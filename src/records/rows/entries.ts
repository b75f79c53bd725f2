import type { FactValue, Said, UnknownReason } from "../../facts/index.js";
import type { CellTrouble } from "../cells/cell-reading.js";
import type { CellAt } from "../cells/grid.js";
import type { ProblemCode } from "../cells/problems.js";
import { isSameStatement, statedTogether, type Written } from "./agreement.js";

/** What one cell says of one fact; where the cell stands is known to its row. */
export interface Entry {
  readonly fact: string;
  readonly said: Said;
  /** The cell is empty, so that the site's word may stand in for it. */
  readonly empty: boolean;
  /** Found beside the matter of the column (the finish in a column of materials). */
  readonly mention: boolean;
  /** Nothing in the cell was understood, and it stands in the column of another fact: a known value may overrule it. */
  readonly weak?: true;
  /** Of a number: how it stood in the cell. */
  readonly written?: Written;
}

/** An entry with the cell that it stands in. */
export interface PlacedEntry {
  readonly entry: Entry;
  readonly at: CellAt;
}

export function knownAs(value: FactValue, more: { accuracy?: number; assumed?: string } = {}): Said {
  return { known: true, value, ...more };
}

export function unknownAs(reason: UnknownReason): Said {
  return { known: false, reason };
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

/** All that the cells of a row say of one fact, with the cells it rests on. */
export interface Combined {
  readonly said: Said;
  readonly cells: readonly CellAt[];
  readonly empty: boolean;
  /** The values contradict each other. */
  readonly conflict: boolean;
}

/** The values of a fact contradict each other. */
export const CONFLICTING: Said = unknownAs("conflicting");

/** Known values must agree; only an empty cell, or one with a word for missing, yields to them. */
export function combine(entries: readonly PlacedEntry[]): Combined {
  const [only] = entries;
  if (!only) throw new RangeError("nothing to combine");
  if (entries.length === 1) return alone(only, only.entry.empty);
  const known = entries.flatMap(({ entry: { said, written }, at }) => (said.known ? [{ said, written, at }] : []));
  const [first] = known;
  const cells = known.map(({ at }) => at);
  if (first && !known.every((statement) => isSameStatement(statement, first))) {
    return { said: CONFLICTING, cells, empty: false, conflict: true };
  }
  const spoiling = entries.find(({ entry }) => !yields(entry));
  if (spoiling) return alone(spoiling, false);
  if (first) return { said: statedTogether(first, known), cells, empty: false, conflict: false };
  return alone(
    entries.find(({ entry }) => !entry.empty) ?? only,
    entries.every(({ entry }) => entry.empty),
  );
}

function alone({ entry, at }: PlacedEntry, empty: boolean): Combined {
  return { said: entry.said, cells: [at], empty, conflict: false };
}

function yields({ said, weak }: Entry): boolean {
  return said.known || said.reason === "missing" || weak === true;
}
