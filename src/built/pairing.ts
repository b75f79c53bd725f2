import type { Survey } from "../records/index.js";
import { CarriedFacts } from "./carried-facts.js";
import { AS_BUILT, COMPARED, NAMING } from "./carrying.js";
import { PairSurveys } from "./pair-surveys.js";
import { type Lone, Partners } from "./partners.js";
import type { MatchStatus } from "./result.js";
import { type Row, RowsById } from "./rows.js";
import { differ, isFilled, type SameText, saidOf } from "./said.js";

/** A point with its rows, and the row by which it is judged as built. */
export interface Pair {
  readonly id: string | null;
  readonly status: MatchStatus;
  readonly proposed: readonly Row[];
  readonly built: readonly Row[];
  /** In a survey of the run over what was built; null where there is nothing to judge. */
  readonly judged: Row | null;
}

/** Proposal and built survey, matched by the ids of their points. */
export interface Pairing {
  /** In the order of the proposal; then what was built besides. */
  readonly pairs: readonly Pair[];
  readonly surveys: PairSurveys;
  readonly proposed: RowsById;
  /** For rows of the proposal that are not built, and the other way round. */
  readonly partnersOfProposed: Partners;
  readonly partnersOfBuilt: Partners;
}

/**
 * Matches rows by the id of their point. An id that stands in several rows of one side is not matched at all.
 *
 * @param built - null where the proposed surveys hold what was built, too
 */
export function pairUp(
  sides: { readonly proposed: readonly Survey[]; readonly built: readonly Survey[] | null },
  sites: { readonly proposed: string | null; readonly built: string | null },
  sameText: SameText,
): Pairing {
  const proposed = new RowsById(sides.proposed, sites.proposed);
  const built = sides.built === null ? null : new RowsById(sides.built, sites.built);
  const surveys = new PairSurveys();
  const pairs: Pair[] = [];
  for (const [id, rows] of proposed) {
    pairs.push(pairOf(id, rows, built === null ? rows.filter(isDone) : built.of(id), surveys, sameText));
  }
  for (const row of proposed.unnamed) {
    const done = built === null && isDone(row);
    const judged = done ? surveys.add(row, row, row.record.facts) : null;
    pairs.push({ id: null, status: "no-id", proposed: [row], built: done ? [row] : [], judged });
  }
  for (const [id, rows] of built ?? []) {
    if (proposed.of(id).length === 0) pairs.push(notProposed(id, rows, surveys));
  }
  for (const row of built?.unnamed ?? []) {
    const judged = surveys.add(row, null, row.record.facts);
    pairs.push({ id: null, status: "no-id", proposed: [], built: [row], judged });
  }
  return {
    pairs,
    surveys,
    proposed,
    partnersOfProposed: new Partners(lone(pairs, "proposed")),
    partnersOfBuilt: new Partners(lone(pairs, "built")),
  };
}

function pairOf(
  id: string,
  proposed: readonly Row[],
  built: readonly Row[],
  surveys: PairSurveys,
  sameText: SameText,
): Pair {
  const [then] = proposed;
  const [now] = built;
  if (then === undefined) throw new RangeError("a point of the proposal stands in a row");
  if (proposed.length > 1 || built.length > 1) {
    const rows = built.map((row) => surveys.add(row, null, row.record.facts));
    return { id, status: "twice", proposed, built, judged: (rows.length > 1 ? rows[0] : null) ?? null };
  }
  if (now === undefined || (now.record !== then.record && saysNothing(then, now, sameText))) {
    surveys.addNotBuilt(then);
    return { id, status: "not-built", proposed, built, judged: null };
  }
  const same = now.record === then.record;
  const facts = same ? then.record.facts : new CarriedFacts(now.record.facts, then.record, sameText);
  return { id, status: "matched", proposed, built, judged: surveys.add(now, then, facts) };
}

function notProposed(id: string, built: readonly Row[], surveys: PairSurveys): Pair {
  const [judged = null] = built.map((row) => surveys.add(row, null, row.record.facts));
  return { id, status: built.length > 1 ? "twice" : "not-proposed", proposed: [], built, judged };
}

/** A row of a survey that holds both sides: built if it says something that only fitting brings about. */
function isDone({ record, survey }: Row): boolean {
  return [...AS_BUILT].some((id) => survey.factsAsked.has(id) && isFilled(saidOf(record.facts, id)));
}

/** A list of points handed out to be filled in has rows for what is not built yet. */
function saysNothing(then: Row, { record, survey }: Row, sameText: SameText): boolean {
  for (const id of survey.factsAsked) {
    if (!NAMING.has(id) && isFilled(saidOf(record.facts, id))) return false;
  }
  return !COMPARED.some((id) => {
    if (!NAMING.has(id)) return false;
    const [one, other] = [saidOf(then.record.facts, id), saidOf(record.facts, id)];
    return one !== undefined && isFilled(other) && differ(id, one, other, sameText);
  });
}

/** Rows without a partner on the other side. */
function* lone(pairs: readonly Pair[], side: "proposed" | "built"): IterableIterator<Lone> {
  const statuses: readonly MatchStatus[] = ["no-id", side === "proposed" ? "not-built" : "not-proposed"];
  for (const { id, status, [side]: rows } of pairs) {
    const [row] = rows;
    if (row !== undefined && statuses.includes(status)) yield { id, row };
  }
}
