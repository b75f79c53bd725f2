import type { BuiltPoint, BuiltSummary } from "./result.js";

type Counts = { -readonly [key in keyof Omit<BuiltSummary, "byFact">]: number };

/** Counts points while they pass by. */
export class BuiltTally {
  readonly #counts: Counts = {
    points: 0,
    matched: 0,
    notBuilt: 0,
    notProposed: 0,
    twice: 0,
    noId: 0,
    recalled: 0,
    recalledOnlyUndecided: 0,
    needsNewVerdict: 0,
    againstVerdict: 0,
    differing: 0,
    rises: 0,
    pass: 0,
    warn: 0,
    fail: 0,
  };
  readonly #facts = new Map<string, number>();

  point(point: BuiltPoint): void {
    const counts = this.#counts;
    counts.points += 1;
    counts[STATUS_COUNTS[point.status]] += 1;
    if (point.recall) counts.recalled += 1;
    if (point.recall && point.onlyUndecided) counts.recalledOnlyUndecided += 1;
    if (point.needsNewVerdict) counts.needsNewVerdict += 1;
    if (point.againstVerdict) counts.againstVerdict += 1;
    if (point.differences.length > 0) counts.differing += 1;
    if (point.change === "rises") counts.rises += 1;
    if (point.status === "matched" && point.verdictNow !== null) counts[point.verdictNow] += 1;
    for (const { fact } of point.differences) this.#facts.set(fact, (this.#facts.get(fact) ?? 0) + 1);
  }

  summary(): BuiltSummary {
    const byFact = [...this.#facts].map(([fact, points]) => ({ fact, points }));
    return { ...this.#counts, byFact: byFact.sort((a, b) => b.points - a.points || (a.fact < b.fact ? -1 : 1)) };
  }
}

const STATUS_COUNTS = {
  matched: "matched",
  "not-built": "notBuilt",
  "not-proposed": "notProposed",
  twice: "twice",
  "no-id": "noId",
} as const satisfies Record<BuiltPoint["status"], keyof Counts>;
