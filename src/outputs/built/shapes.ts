import type {
  BuiltHead,
  BuiltPoint,
  BuiltSummary,
  Difference,
  IssuedShown,
  LikelyPartner,
  RowAt,
  Turned,
} from "../../built/index.js";
import type { FactShown, Finding } from "../../screening/index.js";
import { factShape, findingShape, headShape } from "../json/shapes.js";

/** One value per key of a contract type, in the order in which they are written; none can be forgotten. */
type Shape<T> = { readonly [K in keyof T]-?: unknown };

function rowShape({ file, sheet, row }: RowAt): Shape<RowAt> {
  return { file, sheet, row };
}

/** A fact whose cells say in which survey they stand: `file`, unless they say so themselves. */
function placedFact(fact: FactShown, file: string) {
  const cells = fact.cells.map((place) => ({ file: place.file ?? file, sheet: place.sheet, cell: place.cell }));
  return { ...factShape(fact), cells };
}

function placedFinding(finding: Finding, file: string) {
  return { ...findingShape(finding), facts: finding.facts.map((fact) => placedFact(fact, file)) };
}

function differenceShape(one: Difference, files: { proposed: string; built: string }): Shape<Difference> {
  return {
    fact: one.fact,
    proposed: placedFact(one.proposed, files.proposed),
    built: placedFact(one.built, files.built),
    needsNewVerdict: one.needsNewVerdict,
  };
}

function turnedShape({ rule, worse, before, now, asked }: Turned, file: string): Shape<Turned> {
  return {
    rule,
    worse,
    before: before && { outcome: before.outcome, message: before.message },
    now: now && placedFinding(now, file),
    asked,
  };
}

function partnerShape({ id, point, at }: LikelyPartner): Shape<LikelyPartner> {
  return { id, point, at: rowShape(at) };
}

/** A point as documents write it. */
export function builtPointShape(point: BuiltPoint): Shape<BuiltPoint> {
  const proposed = point.proposed[0]?.file ?? "";
  const built = point.built[0]?.file ?? proposed;
  // An order that is still open is judged by the row of the proposal, whatever row the built survey has.
  const open = point.status === "not-built" || (point.status === "twice" && point.built.length < 2);
  const judged = open ? proposed : built;
  return {
    id: point.id,
    point: point.point,
    machine: point.machine,
    assetTag: point.assetTag,
    component: point.component,
    bearingPosition: point.bearingPosition,
    direction: point.direction,
    status: point.status,
    proposed: point.proposed.map(rowShape),
    built: point.built.map(rowShape),
    verdictThen: point.verdictThen,
    verdictNow: point.verdictNow,
    change: point.change,
    recall: point.recall,
    onlyUndecided: point.onlyUndecided,
    needsNewVerdict: point.needsNewVerdict,
    againstVerdict: point.againstVerdict,
    differences: point.differences.map((one) => differenceShape(one, { proposed, built })),
    turned: point.turned.map((one) => turnedShape(one, judged)),
    carried: point.carried,
    notCarried: point.notCarried,
    likely: point.likely.map(partnerShape),
    text: point.text,
  };
}

function issuedShape(issued: IssuedShown): Shape<IssuedShown> {
  const { file, digest, run, asOf, set, rulebook, rulebookChanged, surveys, gone } = issued;
  return {
    file,
    digest,
    run,
    asOf,
    set,
    rulebook: { name: rulebook.name, version: rulebook.version, digest: rulebook.digest },
    rulebookChanged,
    surveys: surveys.map((survey) => ({ file: survey.file, digest: survey.digest, now: survey.now })),
    gone: gone.map(({ id, point, verdict }) => ({ id, point, verdict })),
  };
}

/** What stands before the points, in the order in which documents write it. */
export function builtHeadShape(head: BuiltHead): Shape<BuiltHead> {
  return {
    program: { name: head.program.name, version: head.program.version },
    digest: head.digest,
    sameSurvey: head.sameSurvey,
    proposed: headShape(head.proposed),
    built: headShape(head.built),
    issued: head.issued && issuedShape(head.issued),
    remarks: head.remarks.map(({ code, file, sheet, cell, heading, fact, found, text }) => {
      return { code, file, sheet, cell, heading, fact, found, text };
    }),
    cautions: head.cautions,
  };
}

/** What stands after the points. */
export function builtSummaryShape(summary: BuiltSummary): Shape<BuiltSummary> {
  return {
    points: summary.points,
    matched: summary.matched,
    notBuilt: summary.notBuilt,
    notProposed: summary.notProposed,
    twice: summary.twice,
    noId: summary.noId,
    recalled: summary.recalled,
    recalledOnlyUndecided: summary.recalledOnlyUndecided,
    needsNewVerdict: summary.needsNewVerdict,
    againstVerdict: summary.againstVerdict,
    differing: summary.differing,
    rises: summary.rises,
    pass: summary.pass,
    warn: summary.warn,
    fail: summary.fail,
    byFact: summary.byFact.map(({ fact, points }) => ({ fact, points })),
  };
}
