import type { ResultHead, Screening } from "../screening/index.js";
import { Releasing, type ReleasingBook } from "../workpacks/index.js";
import { checkReferred, checkRoom, checkTwice, keysWritten, remarkOnCodes } from "./check-rows.js";
import type { MappedFile } from "./mapped.js";
import type { Mapping, Target } from "./mapping.js";
import { type PointWording, pointLookup, runLookup } from "./point-lookup.js";
import { Gathered, type MappingProblem, type MappingRemark } from "./problems.js";
import { namesOf, RowMaker } from "./row-maker.js";
import { isTaken } from "./taken.js";

/** Fields that say whether work may be planned on a point. */
const OF_RELEASE = ["released", "heldBack"];

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
 * @param rulebook - that of the screening; needed where the mapping asks whether points are released
 * @throws RangeError where it is needed and not there
 */
export function fillMapping(
  mapping: Mapping,
  screening: Pick<Screening, "head" | "pointsWithFacts">,
  wording: PointWording,
  rulebook: ReleasingBook | null = null,
): Filling {
  const releasing = asksForRelease(mapping) ? releasingBy(rulebook, screening.head) : null;
  const run = { head: screening.head, mapping, wording };
  const gathering = { problems: new Gathered<MappingProblem>(), remarks: new Gathered<MappingRemark>() };
  const making = mapping.targets.map((target) => ({
    target,
    rows: new RowMaker(target, runLookup(run), gathering),
    taken: 0,
    leftOut: 0,
  }));
  for (const known of screening.pointsWithFacts()) {
    const release = releasing?.releaseOf(known) ?? null;
    const lookup = pointLookup(known, release, run);
    for (const one of making) {
      if (!isTaken(known, release, one.target.filter)) {
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
    checkReleasable(target, releasing, gathering.problems);
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

function asksForRelease({ targets }: Mapping): boolean {
  return targets.some(
    ({ filter, columns, rows }) =>
      filter.released ||
      [...columns.flatMap(namesOf), ...("per" in rows ? rows.per.map(({ name }) => name) : [])].some(
        (name) => name.of === "field" && OF_RELEASE.includes(name.name),
      ),
  );
}

function releasingBy(rulebook: ReleasingBook | null, head: ResultHead): Releasing {
  if (rulebook === null) throw new RangeError("the mapping asks whether points are released; hand the rulebook in");
  return new Releasing(rulebook, head);
}

/** A target of released points in a run that can release none is no empty file, but a mistake. */
function checkReleasable(
  { id, filter }: Target,
  releasing: Releasing | null,
  problems: Gathered<MappingProblem>,
): void {
  if (!filter.released || !releasing?.all) return;
  const text = `only released points are taken, and none can be: ${releasing.all.text}; ${releasing.all.remedy}`;
  problems.add({ target: id, column: null, of: "all points", code: "none-releasable", text });
}
