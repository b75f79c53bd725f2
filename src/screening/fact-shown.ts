import type { CellPlace } from "../base/index.js";
import { type FactState, type Facts, findFact, MISSING, type Origin, readingOf } from "../facts/index.js";
import type { FactShown } from "./result.js";

/** A fact as a finding shows it, with the cells and lines under it. */
export function showFact(id: string, facts: Facts): FactShown {
  const state = facts.get(id) ?? MISSING;
  const unit = findFact(id)?.unit ?? null;
  return {
    fact: id,
    ...valueShown(state),
    unit,
    accuracy: state.known ? (state.accuracy ?? null) : null,
    assumed: state.known ? (state.assumed ?? null) : null,
    cells: cellsOf(rootsUnder(id, facts), facts),
    origin: lineUnder(state.origin, facts, 0),
  };
}

function valueShown(state: FactState): Pick<FactShown, "value" | "lowest" | "highest"> {
  if (!state.known) return { value: null, lowest: null, highest: null };
  const { value } = state;
  if (typeof value !== "object") return { value, lowest: null, highest: null };
  if (value.lowest === value.highest) return { value: value.lowest, lowest: value.lowest, highest: value.highest };
  const middle = state.accuracy === undefined ? null : readingOf(state);
  return { value: middle, lowest: finite(value.lowest), highest: finite(value.highest) };
}

function finite(end: number): number | null {
  return Number.isFinite(end) ? end : null;
}

/** Derived facts rest on survey facts, never on each other more than a few deep. */
const DEEPEST = 8;

/** The facts under a fact that are not derived themselves, in the order in which it rests on them. */
export function rootsUnder(id: string, facts: Facts, depth: number = 0): readonly string[] {
  const origin = facts.get(id)?.origin;
  if (origin?.kind !== "derived") return [id];
  return depth > DEEPEST ? [] : origin.from.flatMap((from) => rootsUnder(from, facts, depth + 1));
}

/** The cells in which facts stand, each once. */
export function cellsOf(roots: readonly string[], facts: Facts): readonly CellPlace[] {
  const [only] = roots;
  if (only !== undefined && roots.length === 1) return cellsOfOne(only, facts);
  const cells = new Map<string, CellPlace>();
  for (const id of roots) {
    for (const place of cellsOfOne(id, facts)) cells.set(`${place.file ?? ""}!${place.sheet}!${place.cell}`, place);
  }
  return [...cells.values()];
}

function cellsOfOne(id: string, facts: Facts): readonly CellPlace[] {
  if (facts.cells) return facts.cells(id);
  const origin = facts.get(id)?.origin;
  return origin?.kind === "cells" ? origin.cells : [];
}

function lineUnder(origin: Origin, facts: Facts, depth: number): FactShown["origin"] {
  if (origin.kind === "statement") return { file: origin.file, line: origin.line };
  if (origin.kind !== "derived" || depth > DEEPEST) return null;
  if (origin.at) return origin.at;
  for (const id of origin.from) {
    const found = lineUnder((facts.get(id) ?? MISSING).origin, facts, depth + 1);
    if (found) return found;
  }
  return null;
}
