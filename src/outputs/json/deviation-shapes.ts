import type { Accepted, DeviationShown, DeviationsShown } from "../../screening/index.js";
import type { Shape } from "./shape.js";

/** Who accepted a finding, as documents write it. */
export function acceptedShape({ reason, acceptedBy, from, until, origin }: Accepted): Shape<Accepted> {
  return { reason, acceptedBy, from, until, origin: { file: origin.file, line: origin.line } };
}

/** The deviations of a run, as documents write them. */
export function deviationsShape({ file, digest, endingWithin, list }: DeviationsShown): Shape<DeviationsShown> {
  return { file, digest, endingWithin, list: list.map(deviationShape) };
}

function deviationShape(one: DeviationShown): Shape<DeviationShown> {
  return {
    point: one.point,
    rule: one.rule,
    outcome: one.outcome,
    limit: one.limit,
    value: one.value,
    ...acceptedShape(one),
    status: one.status,
    pointId: one.pointId,
    found: one.found,
    open: one.open,
    endsSoon: one.endsSoon,
    remark: one.remark,
  };
}
