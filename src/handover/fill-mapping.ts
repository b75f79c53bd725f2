import type { Screening } from "../screening/index.js";
import { checkReferred, checkRoom, checkTwice, keysWritten, remarkOnCodes } from "./check-rows.js";
import type { MappedFile } from "./mapped.js";
import type { Mapping, Target } from "./mapping.js";
import { type PointWording, pointLookup, runLookup } from "./point-lookup.js";
import { Gathered, type MappingProblem, type MappingRemark } from "./problems.js";
import { RowMaker } from "./row-maker.js";
import { isTaken } from "./taken.js";

/** A target with its rows. */
export interface FilledTarget {
  readonly target: Target;
  readonly mapped: MappedFile;
  /** Points that the filter took. */
  readonly taken: number;
  /** Points that it left out. */
  readonly leftOut: number;
}

/** A filled mapping. Where there are problems, nothing of it may be written. */
export interface Filling {
  readonly mapping: Mapping;
  readonly targets: readonly FilledTarget[];
  /** The first of them, in the order of targets and points; `problemCount` counts all. */
  readonly problems: readonly MappingProblem[];
  readonly problemCount: number;
  readonly remarks: readonly MappingRemark[];
  readonly remarkCount: number;
}

/**
 * Fills a mapping with the points of a screening. Every row is held to everything that the mapping asks for; all
 * problems of all rows are gathered.
 *
 * @param wording - how the outputs put findings into words
 */
export function fillMapping(
  mapping: Mapping,
  screening: Pick<Screening, "head" | "pointsWithFacts">,
  wording: PointWording,
): Filling {
  const run = { head: screening.head, mapping, wording };
  const gathering = { problems: new Gathered<MappingProblem>(), remarks: new Gathered<MappingRemark>() };
  const making = mapping.targets.map((target) => ({
    target,
    rows: new RowMaker(target, runLookup(run), gathering),
    taken: 0,
    leftOut: 0,
  }));
  for (const known of screening.pointsWithFacts()) {
    const lookup = pointLookup(known, run);
    for (const one of making) {
      if (!isTaken(known, one.target.filter)) {
        one.leftOut += 1;
        continue;
      }
      one.taken += 1;
      one.rows.take(known.point, lookup);
    }
  }
  const keys = new Map<string, ReadonlySet<string>>();
  const targets = making.map(({ target, rows: maker, taken, leftOut }): FilledTarget => {
    const rows = maker.rows();
    checkTwice(target, rows, gathering.problems);
    checkReferred(target, rows, keys, gathering.problems);
    checkRoom(target, rows.length, gathering.problems);
    remarkOnCodes(target, rows, gathering.remarks);
    keys.set(target.id, keysWritten(target, rows));
    const columns = target.columns.map(({ heading, key }) => ({ heading, key }));
    return { target, mapped: { target: target.id, columns, rows: rows.map(({ row }) => row) }, taken, leftOut };
  });
  return {
    mapping,
    targets,
    problems: gathering.problems.list,
    problemCount: gathering.problems.count,
    remarks: gathering.remarks.list,
    remarkCount: gathering.remarks.count,
  };
}
