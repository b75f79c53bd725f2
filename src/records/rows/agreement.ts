import { round12 } from "../../base/index.js";
import type { FactValue, KnownFact } from "../../facts/index.js";

/** How a number stood in its cell. */
export interface Written {
  /** Id of the unit in which it was written, or that was taken for it. */
  readonly unit: string;
  /** Half of its last decimal place, in the unit of the field: as far as rounding may have moved it. */
  readonly rounding: number;
}

type KnownSaid = Omit<KnownFact, "origin">;

/** A known value as one cell states it. */
export interface Statement {
  readonly said: KnownSaid;
  readonly written?: Written | undefined;
}

/** Whether two values are the same; intervals only if both ends are. */
function isSameValue(a: FactValue, b: FactValue): boolean {
  if (typeof a !== "object" || typeof b !== "object") return a === b;
  return a.lowest === b.lowest && a.highest === b.highest;
}

/** Two measurements agree that may both be true of one number, by the accuracy of one or the other. */
function isWithinAccuracy(a: KnownSaid, b: KnownSaid): boolean {
  if (typeof a.value !== "object" || typeof b.value !== "object") return false;
  const accurate = (a.accuracy ?? 0) > 0 || (b.accuracy ?? 0) > 0;
  return accurate && a.value.lowest <= b.value.highest && b.value.lowest <= a.value.highest;
}

/**
 * Whether two cells say the same: the same value, numbers that meet within their accuracies, or one number in two units of which one is the other converted and
 * rounded as it is written (16 mm and 0.63 in; 9.5 N·m and 7 ft-lb).
 */
export function isSameStatement(a: Statement, b: Statement): boolean {
  const [one, other] = [a.said.value, b.said.value];
  if (isSameValue(one, other)) return true;
  if (isWithinAccuracy(a.said, b.said)) return true;
  if (typeof one !== "object" || typeof other !== "object" || !a.written || !b.written) return false;
  if (a.written.unit === b.written.unit) return false;
  const rounding = Math.max(a.written.rounding, b.written.rounding) * (1 + 1e-9);
  return Math.abs(one.lowest - other.lowest) <= rounding && Math.abs(one.highest - other.highest) <= rounding;
}

/**
 * What statements that agree say together; where rounding or accuracy parts them the value may lie wherever one of
 * them says.
 */
export function statedTogether(first: Statement, statements: readonly Statement[]): KnownSaid {
  const intervals = statements.map(({ said }) => said.value).filter((value) => typeof value === "object");
  if (intervals.length === 0 || statements.every(({ said }) => isSameValue(said.value, first.said.value))) {
    return first.said;
  }
  const lowest = Math.min(...intervals.map((interval) => interval.lowest));
  const highest = Math.max(...intervals.map((interval) => interval.highest));
  const assumed = [...new Set(statements.flatMap(({ said }) => (said.assumed === undefined ? [] : [said.assumed])))];
  return {
    known: true,
    value: { lowest, highest },
    ...(statements.some(({ said }) => said.accuracy !== undefined)
      ? { accuracy: round12((highest - lowest) / 2) }
      : {}),
    ...(assumed.length === 0 ? {} : { assumed: assumed.join("; ") }),
  };
}
