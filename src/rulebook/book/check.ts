import { type Interval, isSingle, type Truth } from "../../base/index.js";
import type { FactState, UnknownReason } from "../../facts/index.js";

/** Looks a fact up; a fact that nobody gave is missing. */
export type Look = (fact: string) => FactState;

/** The facts that leave something open, each with its reason; the first reason stays. */
export type OpenFacts = Map<string, UnknownReason>;

/** A condition made ready to run over many points. */
export interface Check {
  /** True, false, or null where the facts do not settle it. */
  truth(look: Look): Truth;
  /** Adds the facts that leave it open; nothing if it is decided. */
  gatherOpen(look: Look, open: OpenFacts): void;
}

/** A comparison of one or two facts, with the facts named that it looks at. */
export function leafCheck(facts: readonly string[], truth: (look: Look) => Truth): Check {
  return {
    truth,
    gatherOpen(look, open) {
      if (truth(look) !== null) return;
      for (const [fact, reason] of openOnes(facts, look)) if (!open.has(fact)) open.set(fact, reason);
    },
  };
}

/**
 * Of the facts of an open comparison, those that must be known first: the unknown ones and the half-bounded ones;
 * where all are known numbers, those whose accuracy is too coarse.
 */
function openOnes(facts: readonly string[], look: Look): readonly (readonly [string, UnknownReason])[] {
  const states = facts.map((fact) => [fact, look(fact)] as const);
  const unknown = states.flatMap(([fact, state]) => {
    const reason = state.known ? (isHalfBounded(state.value) ? "missing" : null) : state.reason;
    return reason === null ? [] : [[fact, reason] as const];
  });
  if (unknown.length > 0) return unknown;
  return states.flatMap(([fact, state]) => {
    const wide = state.known && typeof state.value === "object" && !isSingle(state.value);
    return wide ? [[fact, "too-close"] as const] : [];
  });
}

function isHalfBounded(value: Interval | string | boolean): boolean {
  return typeof value === "object" && !(Number.isFinite(value.lowest) && Number.isFinite(value.highest));
}

/** Checks joined by a rule of Kleene logic; decided parts leave nothing open. */
export function joinedCheck(parts: readonly Check[], join: (truths: Iterable<Truth>) => Truth): Check {
  const truth = (look: Look): Truth => join(parts.map((part) => part.truth(look)));
  return {
    truth,
    gatherOpen(look, open) {
      if (truth(look) !== null) return;
      for (const part of parts) part.gatherOpen(look, open);
    },
  };
}

/**
 * The interval of a known number, null for an unknown one.
 *
 * @throws TypeError if the fact holds something else; whoever filled it in has broken the catalogue's promise
 */
export function numberIn(look: Look, fact: string): Interval | null {
  const state = look(fact);
  if (!state.known) return null;
  if (typeof state.value === "object") return state.value;
  throw new TypeError(`the fact "${fact}" must hold a number`);
}

/**
 * The text, choice or yes-no of a known fact, null for an unknown one.
 *
 * @throws TypeError if the fact holds a number
 */
export function wordIn(look: Look, fact: string): string | boolean | null {
  const state = look(fact);
  if (!state.known) return null;
  if (typeof state.value !== "object") return state.value;
  throw new TypeError(`the fact "${fact}" must not hold a number`);
}
