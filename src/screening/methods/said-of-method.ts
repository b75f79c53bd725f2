import { isOpen, type Outcome, type Verdict } from "../../base/index.js";
import { weightOf, worst } from "../judge-point.js";
import type { MethodTried } from "../result.js";

/** How an open question counts in the verdict, by rule; a warning for those that are built in. */
export type OpenCounts = ReadonlyMap<string, "warn" | "fail">;

/** What rules say, gathered. */
export type Said = Pick<MethodTried, "verdict" | "fails" | "warns" | "undecided" | "missing">;

/** Gathers what rules say, in the order in which they say it. */
export class Saying implements Said {
  verdict: Verdict = "pass";
  readonly fails: string[] = [];
  readonly warns: string[] = [];
  readonly undecided: string[] = [];
  readonly missing: string[] = [];
  readonly #openCounts: OpenCounts;

  constructor(openCounts: OpenCounts) {
    this.#openCounts = openCounts;
  }

  add(rule: string, outcome: Outcome, missing: readonly string[]): void {
    if (outcome === "fail") this.fails.push(rule);
    else if (outcome === "warn") this.warns.push(rule);
    else if (isOpen(outcome)) this.undecided.push(rule);
    else return;
    this.verdict = worst(this.verdict, weightOf(outcome, this.#openCounts.get(rule) ?? "warn"));
    for (const fact of missing) if (!this.missing.includes(fact)) this.missing.push(fact);
  }
}

/** First what rules say of the method, then what they say of the point whatever the method. */
export function joined(ofMethod: Said, ofPoint: Said): Said {
  return {
    verdict: worst(ofMethod.verdict, ofPoint.verdict),
    fails: inOne(ofMethod.fails, ofPoint.fails),
    warns: inOne(ofMethod.warns, ofPoint.warns),
    undecided: inOne(ofMethod.undecided, ofPoint.undecided),
    missing: inOne(
      ofMethod.missing,
      ofPoint.missing.filter((fact) => !ofMethod.missing.includes(fact)),
    ),
  };
}

function inOne(first: readonly string[], then: readonly string[]): readonly string[] {
  if (then.length === 0) return first;
  return first.length === 0 ? then : [...first, ...then];
}
