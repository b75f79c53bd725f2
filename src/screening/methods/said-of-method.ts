import { isOpen, type Outcome, type Verdict } from "../../base/index.js";
import { weightOf, worst } from "../judge-point.js";
import type { KeptList } from "../kept-list.js";
import type { MethodTried } from "../result.js";

/** A method on a point. */
export type Named = Pick<MethodTried, "method" | "proposed" | "allowed">;

/** How an open question counts in the verdict, by rule; a warning for those that are built in. */
export type OpenCounts = ReadonlyMap<string, "warn" | "fail">;

/** Gathers what rules say, in the order in which they say it. */
export class Said {
  verdict: Verdict = "pass";
  fails: KeptList;
  warns: KeptList;
  undecided: KeptList;
  missing: KeptList;
  readonly #openCounts: OpenCounts;

  /** @param none - what all lists begin with */
  constructor(openCounts: OpenCounts, none: KeptList) {
    this.#openCounts = openCounts;
    this.fails = none;
    this.warns = none;
    this.undecided = none;
    this.missing = none;
  }

  add(rule: string, outcome: Outcome, missing: readonly string[]): void {
    if (outcome === "fail") this.fails = this.fails.with(rule);
    else if (outcome === "warn") this.warns = this.warns.with(rule);
    else if (isOpen(outcome)) this.undecided = this.undecided.with(rule);
    else return;
    this.verdict = worst(this.verdict, weightOf(outcome, this.#openCounts.get(rule) ?? "warn"));
    for (const fact of missing) if (!this.missing.ids.includes(fact)) this.missing = this.missing.with(fact);
  }
}

/** What a rule may be to a method beside what it says. */
export interface Asking {
  readonly asked: KeptList;
  readonly notAsked: KeptList;
}

/** First what rules say of the method, then what they say of the point whatever the method. */
export function triedMethod(named: Named, ofMethod: Said, ofPoint: Said, { asked, notAsked }: Asking): MethodTried {
  return {
    method: named.method,
    proposed: named.proposed,
    allowed: named.allowed,
    verdict: worst(ofMethod.verdict, ofPoint.verdict),
    fails: ofMethod.fails.withAll(ofPoint.fails).ids,
    warns: ofMethod.warns.withAll(ofPoint.warns).ids,
    undecided: ofMethod.undecided.withAll(ofPoint.undecided).ids,
    missing: ofMethod.missing.withAll(ofPoint.missing).ids,
    asked: asked.ids,
    notAsked: notAsked.ids,
  };
}
