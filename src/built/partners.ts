import { namesOf } from "../screening/index.js";
import type { LikelyPartner } from "./result.js";
import { partsInCommon, type Row, rowAt, tagOf } from "./rows.js";

/** Shown for one point; more are of no help. */
const MOST_SHOWN = 3;

/** A row without a partner, and the id of its point. */
export interface Lone {
  readonly id: string | null;
  readonly row: Row;
}

/**
 * Finds for a row without a partner the rows of the same machine that have none on the other side: an id made from
 * component, bearing position and direction is another one where one of them was corrected.
 */
export class Partners {
  readonly #byTag = new Map<string, Lone[]>();

  constructor(lone: Iterable<Lone>) {
    for (const one of lone) {
      const tag = tagOf(one.row);
      if (tag === null) continue;
      const others = this.#byTag.get(tag);
      if (others) others.push(one);
      else this.#byTag.set(tag, [one]);
    }
  }

  /** Those with most parts of the place in common first, then by id, so that the order of rows does not count. */
  likelyFor(row: Row): readonly LikelyPartner[] {
    const tag = tagOf(row);
    const lone = tag === null ? [] : (this.#byTag.get(tag) ?? []);
    return lone
      .map((one) => ({ ...one, common: partsInCommon(row, one.row) }))
      .sort((a, b) => b.common - a.common || order(a.id ?? "", b.id ?? "") || a.row.record.row - b.row.record.row)
      .slice(0, MOST_SHOWN)
      .map(({ id, row: found }) => ({ id, point: namesOf(found.record.facts).point, at: rowAt(found) }));
  }
}

function order(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
