import type {
  Bin,
  Distributions,
  FreedByRule,
  Freeing,
  FreeingStep,
  MarginSpread,
  Spread,
} from "../../screening/index.js";
import type { Shape } from "./shape.js";

/** What mending rules would free, as documents write it. */
export function freeingShape({ alone, inTurn }: Freeing): Shape<Freeing> {
  return { alone: alone.map(freedShape), inTurn: inTurn.map(stepShape) };
}

function freedShape({ rule, failToPass, failToWarn, warnToPass }: FreedByRule): Shape<FreedByRule> {
  return { rule, failToPass, failToWarn, warnToPass };
}

function stepShape({ rules, points, wouldPass, pointsSoFar }: FreeingStep): Shape<FreeingStep> {
  return { rules, points, wouldPass, pointsSoFar };
}

/** How speeds and margins are spread, as documents write it. */
export function distributionsShape({ lowestSpeed, margins }: Distributions): Shape<Distributions> {
  return { lowestSpeed: spreadShape(lowestSpeed), margins: margins.map(marginShape) };
}

function marginShape(spread: MarginSpread): Shape<MarginSpread> {
  return { rule: spread.rule, counts: spread.counts, ...spreadShape(spread) };
}

function spreadShape({ unit, known, notKnown, bins }: Spread): Shape<Spread> {
  return { unit, known, notKnown, bins: bins.map(binShape) };
}

function binShape({ from, to, points }: Bin): Shape<Bin> {
  return { from, to, points };
}
