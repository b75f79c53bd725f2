import { isOpen, type Outcome, type Verdict } from "../../base/index.js";
import { weightOf, worst } from "../judge-point.js";
import type { MethodTried } from "../result.js";

/** A method on a point. */
export type Named = Pick<MethodTried, "method" | "proposed" | "allowed">;

/** How an open question counts in the verdict, by rule; a warning for those that are built in. */
export type OpenCounts = ReadonlyMap<string, "warn" | "fail">;

const NONE: readonly string[] = [];

/** Gathers what rules say, in the order in which they say it. Most lists stay empty and need no room. */
export class Said {
  verdict: Verdict = "pass";
  fails = NONE;
  warns = NONE;
  undecided = NONE;
  missing = NONE;
  readonly #openCounts: OpenCounts;

  constructor(openCounts: OpenCounts) {
    this.#openCounts = openCounts;
  }

  add(rule: string, outcome: Outcome, missing: readonly string[]): void {
    if (outcome === "fail") this.fails = [...this.fails, rule];
    else if (outcome === "warn") this.warns = [...this.warns, rule];
    else if (isOpen(outcome)) this.undecided = [...this.undecided, rule];
    else return;
    this.verdict = worst(this.verdict, weightOf(outcome, this.#openCounts.get(rule) ?? "warn"));
    for (const fact of missing) if (!this.missing.includes(fact)) this.missing = [...this.missing, fact];
  }
}

/** What a rule may be to a method beside what it says. */
export interface Asking {
  readonly asked: readonly string[];
  readonly notAsked: readonly string[];
}

/** First what rules say of the method, then what they say of the point whatever the method. */
export function triedMethod(named: Named, ofMethod: Said, ofPoint: Said, { asked, notAsked }: Asking): MethodTried {
  return {
    method: named.method,
    proposed: named.proposed,
    allowed: named.allowed,
    verdict: worst(ofMethod.verdict, ofPoint.verdict),
    fails: inOne(ofMethod.fails, ofPoint.fails),
    warns: inOne(ofMethod.warns, ofPoint.warns),
    undecided: inOne(ofMethod.undecided, ofPoint.undecided),
    missing: inOne(ofMethod.missing, ofPoint.missing),
    asked,
    notAsked,
  };
}

function inOne(first: readonly string[], then: readonly string[]): readonly string[] {
  if (then.length === 0) return first;
  return first.length === 0 ? then : [...first, ...then.filter((id) => !first.includes(id))];
}
