import type { PlainCells, PlainValue } from "./plain-cells.js";

/** How a reader differs from ours in a cell. */
export type Difference = "loses" | "adds" | "reads otherwise";

/** The cells in which a reader differs from ours in one way. */
export interface Differing {
  readonly count: number;
  /** The first of them, as sheet!address, and what the two say. */
  readonly at: string;
  readonly ours: PlainValue | null;
  readonly theirs: PlainValue | null;
}

/** Serial numbers that a reader has rounded to milliseconds still name the same moment. */
const HALF_A_MILLISECOND = 0.6 / 86_400_000;

/** Every way in which their cells differ from ours, with the number of cells; empty where they agree. */
export function differences(ours: PlainCells, theirs: PlainCells): ReadonlyMap<Difference, Differing> {
  const found = new Map<Difference, Differing>();
  const note = (what: Difference, at: string, our: PlainValue | null, their: PlainValue | null): void => {
    const before = found.get(what);
    found.set(what, before ? { ...before, count: before.count + 1 } : { count: 1, at, ours: our, theirs: their });
  };
  for (const [sheet, cells] of ours) {
    const others = theirs.get(sheet);
    for (const [address, our] of cells) {
      const their = others?.get(address);
      const at = `${sheet}!${address}`;
      if (their === undefined) note("loses", at, our, null);
      else if (!isSame(our, their)) note("reads otherwise", at, our, their);
    }
  }
  for (const [sheet, cells] of theirs) {
    for (const [address, their] of cells) {
      if (!ours.get(sheet)?.has(address)) note("adds", `${sheet}!${address}`, null, their);
    }
  }
  return found;
}

function isSame(our: PlainValue, their: PlainValue): boolean {
  if (typeof our === "number" && typeof their === "number") {
    return our === their || (Math.abs(our - their) < HALF_A_MILLISECOND && Math.abs(our) > 0.001);
  }
  if (typeof our === "object" && typeof their === "object") return JSON.stringify(our) === JSON.stringify(their);
  return our === their;
}
