import type { CellPlace, Interval } from "../base/index.js";

/** Value of a known fact: an interval for numbers, true or false for yes-no, text (a choice by its id) for the rest. */
export type FactValue = Interval | string | boolean;

/** Why a fact is not known; `too-close` is said of a known number whose accuracy does not settle a comparison. */
export type UnknownReason = "missing" | "doubtful" | "unreadable" | "conflicting" | "too-close";

/** Where a fact came from. */
export type Origin =
  | { readonly kind: "cells"; readonly cells: readonly CellPlace[] }
  | { readonly kind: "statement"; readonly file: string; readonly line: number }
  | {
      readonly kind: "derived";
      readonly from: readonly string[];
      /** Of a fact looked up in a table: the line of its row, or of the entry where several rows agree; absent while open. */
      readonly at?: { readonly file: string; readonly line: number };
    }
  | { readonly kind: "none" };

/** A fact with its value, and where it came from. */
export interface KnownFact {
  readonly known: true;
  readonly value: FactValue;
  /** Stated accuracy (±), in the unit of the fact. */
  readonly accuracy?: number;
  /** What was taken for granted in reading it, in words; absent if nothing was. */
  readonly assumed?: string;
  readonly origin: Origin;
}

/** A fact without a value, and why. */
export interface UnknownFact {
  readonly known: false;
  readonly reason: UnknownReason;
  readonly origin: Origin;
}

export type FactState = KnownFact | UnknownFact;

/** A fact that nobody wrote down anywhere. */
export const MISSING: UnknownFact = { known: false, reason: "missing", origin: { kind: "none" } };

/** What is said of a fact, without the place where it stands. */
export type Said = Omit<KnownFact, "origin"> | Omit<UnknownFact, "origin">;

/** Facts that are asked of one point after the other. Who knows where they stand may note it here for the next point. */
export class AskedFacts {
  readonly ids: readonly string[];
  /** Whose places they are; null as long as nobody's. */
  keeper: object | null = null;
  /** How many facts the keeper had then. */
  among = 0;
  places = new Int32Array(0);

  constructor(ids: readonly string[]) {
    this.ids = ids;
  }
}

/** Facts of one point by id; a fact that is not there is missing. */
export interface Facts extends Iterable<readonly [string, FactState]> {
  get(id: string): FactState | undefined;
  has(id: string): boolean;
  /** What is said of a fact, without the place; cheaper than its state where the place does not matter. */
  said?(id: string): Said | undefined;
  /** The cells a fact was read from; empty for one that comes from elsewhere. */
  cells?(id: string): readonly CellPlace[];
  /**
   * A number that is the same for all points of the same family of which the same is said: value, accuracy and
   * assumption, in cells or in the same statement; 0 for a fact that is not there. A collection that cannot tell
   * has no family.
   */
  sameness?(id: string): number;
  /**
   * Writes the sameness of several facts, in their order; facts of which nothing is said in the whole family may be left out.
   *
   * @param at - where in `into` to begin
   * @returns the place behind the last
   */
  samenesses?(asked: AskedFacts, into: Int32Array, at: number): number;
  readonly family?: number | undefined;
}
