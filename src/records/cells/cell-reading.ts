import type { Interval } from "../../base/index.js";
import type { ProblemCode } from "./problems.js";

/** Trouble with one cell, before its place is known. */
export interface CellTrouble {
  readonly ok: false;
  readonly code: ProblemCode;
  /** What was expected, and what to do. */
  readonly text: string;
}

/** A number read from a cell, in the unit of its field. */
export interface NumberRead {
  readonly ok: true;
  readonly kind: "number";
  readonly interval: Interval;
  /** Stated ±, in the unit of the field; the interval already includes it. */
  readonly accuracy: number | null;
  /** The cell gave the two ends of a running range, not one uncertain number. */
  readonly range: boolean;
  /** Where the unit of the number came from. */
  readonly unitFrom: "cell" | "heading" | "field";
  /** Unit in which it was written, or which was taken for it; null of a count. */
  readonly unit: string | null;
  /** Half of its last decimal place, in the unit of the field; 0 where that says nothing. */
  readonly rounding: number;
  /** Of a supply: what the cell or its heading says of the kind. */
  readonly supply: "dc" | "ac" | null;
  /** Speed given in turns per second, which may also be the mains side. */
  readonly hertz: boolean;
  /** Words that were left out, or kept beside the value. */
  readonly remarks: readonly string[];
}

/** A choice, a yes-no or a text read from a cell. */
export interface WordRead {
  readonly ok: true;
  readonly kind: "word";
  readonly value: string | boolean;
  readonly remarks: readonly string[];
}

export type CellReading = NumberRead | WordRead | CellTrouble;

export function trouble(code: ProblemCode, text: string): CellTrouble {
  return { ok: false, code, text };
}
