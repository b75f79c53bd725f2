import { readAddress } from "../cell-address.js";
import type { MergedRange } from "../cells.js";

/** Reads "A1:D20" or "A1"; null for anything else. */
export function readRange(ref: string): MergedRange | null {
  const [first = "", second = first] = ref.split(":");
  const a = readAddress(first);
  const b = readAddress(second);
  if (a === null || b === null) return null;
  return {
    top: Math.min(a.row, b.row),
    left: Math.min(a.column, b.column),
    bottom: Math.max(a.row, b.row),
    right: Math.max(a.column, b.column),
  };
}
