import type { CellPlace } from "../base/index.js";
import { type FactState, type Facts, MISSING, type Said, type UnknownFact } from "../facts/index.js";
import type { PointRecord } from "../records/index.js";
import { heldBack, mayBeCarried } from "./carrying.js";
import { isFilled, isStated, type SameText, saidOf } from "./said.js";

/** Asked for in some column, and not said. */
const ASKED: UnknownFact = { known: false, reason: "missing", origin: { kind: "cells", cells: [] } };

/**
 * The facts of a point as built: the word of the built survey where its row says something, else that of the proposal
 * (cell or site) where it may be carried over, else that of the site. Cells of the proposal bear the name of its file.
 */
export class CarriedFacts implements Facts {
  readonly #built: Facts;
  readonly #proposed: PointRecord;
  readonly #sameText: SameText;
  #heldBack: ReadonlySet<string> | null = null;

  constructor(built: Facts, proposed: PointRecord, sameText: SameText) {
    this.#built = built;
    this.#proposed = proposed;
    this.#sameText = sameText;
  }

  /** Whether the proposal's word counts for a fact. */
  carries(id: string): boolean {
    if (!mayBeCarried(id)) return false;
    if (isFilled(saidOf(this.#built, id))) return false;
    return isStated(saidOf(this.#proposed.facts, id)) && !this.#back().has(id);
  }

  /** Whether the proposal states a fact that the built survey does not, of something that was built otherwise. */
  holdsBack(id: string): boolean {
    if (!this.#back().has(id) || !mayBeCarried(id) || isFilled(saidOf(this.#built, id))) return false;
    return isStated(saidOf(this.#proposed.facts, id));
  }

  get(id: string): FactState | undefined {
    if (!this.carries(id)) return this.#own(id);
    const state = this.#proposed.facts.get(id);
    if (state?.origin.kind !== "cells") return state;
    return { ...state, origin: { kind: "cells", cells: this.#named(state.origin.cells) } };
  }

  /** The word of the built survey; a fact that the proposal was asked is missing, not unasked, where its word does not count. */
  #own(id: string): FactState | undefined {
    const state = this.#built.get(id);
    const isUnasked = state === undefined || (!state.known && state.origin.kind === "none");
    const wasAsked = (this.#proposed.facts.get(id) ?? MISSING).origin.kind !== "none";
    return isUnasked && wasAsked ? ASKED : state;
  }

  has(id: string): boolean {
    return this.said(id) !== undefined;
  }

  said(id: string): Said | undefined {
    return saidOf(this.carries(id) ? this.#proposed.facts : this.#built, id);
  }

  cells(id: string): readonly CellPlace[] {
    const { facts } = this.#proposed;
    return this.carries(id) ? this.#named(cellsOf(facts, id)) : cellsOf(this.#built, id);
  }

  get family(): number | undefined {
    const [built, proposed] = [this.#built.family, this.#proposed.facts.family];
    return built === undefined || proposed === undefined ? undefined : familyOf(built, proposed);
  }

  /** Even for a fact of the built survey, odd for one of the proposal. */
  sameness(id: string): number {
    if (this.carries(id)) return 2 * (this.#proposed.facts.sameness?.(id) ?? 0) + 1;
    return 2 * (this.#built.sameness?.(id) ?? 0);
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    const ids = new Set([...this.#built, ...this.#proposed.facts].map(([id]) => id));
    for (const id of ids) {
      const state = this.get(id);
      if (state) yield [id, state];
    }
  }

  #back(): ReadonlySet<string> {
    this.#heldBack ??= heldBack(this.#proposed.facts, this.#built, this.#sameText);
    return this.#heldBack;
  }

  #named(cells: readonly CellPlace[]): readonly CellPlace[] {
    const { file } = this.#proposed;
    return cells.map(({ sheet, cell }) => ({ sheet, cell, file }));
  }
}

function cellsOf(facts: Facts, id: string): readonly CellPlace[] {
  if (facts.cells) return facts.cells(id);
  const origin = facts.get(id)?.origin;
  return origin?.kind === "cells" ? origin.cells : [];
}

/** Numbers of families are given to tables of cells from 1 up; those below 0 are free for pairs of them. */
const families = new Map<string, number>();

function familyOf(built: number, proposed: number): number {
  const key = `${built} ${proposed}`;
  const known = families.get(key) ?? -1 - families.size;
  families.set(key, known);
  return known;
}
