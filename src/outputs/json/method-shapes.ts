import type { OpenPoints, OtherMethod, SettlingStep } from "../../screening/index.js";
import type { Shape } from "./shape.js";

/** A step of what to fetch, as documents write it. */
export function stepShape({ facts, points, pointsSoFar }: SettlingStep): Shape<SettlingStep> {
  return { facts, points, pointsSoFar };
}

/** Points with something undecided, as documents write them. */
export function openShape({ toSettle, failAnyway, notByFacts }: OpenPoints): Shape<OpenPoints> {
  return { toSettle, failAnyway, notByFacts };
}

/** How often another method is advised, as documents write it. */
export function otherMethodShape({ method, wouldPass, closest }: OtherMethod): Shape<OtherMethod> {
  return { method, wouldPass, closest };
}
