import type { PointResult, ResultHead, Screening, Summary } from "../../src/screening/index.js";
import { POINTS } from "./fake-findings.js";
import { HEAD } from "./fake-head.js";

export const SUMMARY: Summary = {
  points: 5,
  pass: 1,
  warn: 2,
  fail: 2,
  warnOnlyUndecided: 1,
  accepted: 0,
  problems: 2,
  byRule: HEAD.rules.map((one, index) => ({
    rule: one.id,
    pass: 5 - (index % 3),
    warn: index % 2,
    fail: index % 3 === 2 ? 1 : 0,
    undecided: index % 3 === 1 ? 1 : 0,
    notApplicable: 0,
    noLimitInForce: 0,
  })),
  byCriticality: [
    { criticality: "A", machines: 1, points: 3 },
    { criticality: null, machines: 1, points: 1 },
  ],
  toMeasure: [
    { fact: "lowest_speed", points: 1 },
    { fact: "target_torque", points: 1 },
  ],
  settling: [{ facts: ["lowest_speed"], points: 1, pointsSoFar: 1 }],
  openPoints: { toSettle: 1, failAnyway: 1, notByFacts: 0 },
  otherMethods: [{ method: "adhesive-pad", wouldPass: 0, closest: 1 }],
  freeing: {
    alone: [{ rule: "seat-material", failToPass: 0, failToWarn: 0, warnToPass: 1 }],
    inTurn: [{ rules: ["supply-voltage", "thread-depth"], points: 1, wouldPass: 0, pointsSoFar: 1 }],
  },
  distributions: {
    lowestSpeed: {
      unit: "r/min",
      known: 4,
      notKnown: 1,
      bins: [
        { from: 1400, to: 1500, points: 3 },
        { from: 1500, to: null, points: 1 },
      ],
    },
    margins: [
      {
        rule: "thread-depth",
        counts: "points",
        unit: null,
        known: 3,
        notKnown: 0,
        bins: [
          { from: -0.2, to: -0.1, points: 1 },
          { from: -0.1, to: 0, points: 0 },
          { from: 0, to: 0.1, points: 2 },
        ],
      },
    ],
  },
};

/** A screening as the real one behaves: points once, the summary only afterwards. */
export function fakeScreening(points: readonly PointResult[] = POINTS, head: ResultHead = HEAD): Screening {
  let done = false;
  return {
    head,
    *points() {
      yield* points;
      done = true;
    },
    *pointsWithFacts() {
      for (const point of points) yield { point, facts: new Map() };
      done = true;
    },
    summary() {
      if (!done) throw new Error("summary asked for before all points were iterated");
      return SUMMARY;
    },
  };
}
