import { isOpen } from "../base/index.js";
import type { PointResult } from "./result.js";
import { SettlingCounts } from "./settling/settling-counts.js";
import type { FreedByRule, Freeing } from "./summary-parts.js";

type Freed = { -readonly [key in keyof FreedByRule]: FreedByRule[key] };

/** Points that the same rules fail: how many, and how many of them nothing else keeps from passing. */
interface FailedAlike {
  readonly rules: readonly string[];
  points: number;
  wouldPass: number;
}

/** Counts which rules keep points from a better verdict, for what mending them would free. */
export class FreeingCounts {
  readonly #openFails: ReadonlySet<string>;
  readonly #alone = new Map<string, Freed>();
  readonly #alike = new Map<string, FailedAlike>();

  /** @param openFails - rules whose open question counts as a fail */
  constructor(openFails: ReadonlySet<string>) {
    this.#openFails = openFails;
  }

  add({ verdict, findings }: Pick<PointResult, "verdict" | "findings">): void {
    if (verdict === "pass") return;
    const fails: string[] = [];
    const warns: string[] = [];
    let isAnyOpen = false;
    for (const { rule, outcome } of findings) {
      if (outcome === "fail") fails.push(rule);
      else if (outcome === "warn") warns.push(rule);
      else if (isOpen(outcome)) {
        // What is not known is found out, not mended.
        if (this.#openFails.has(rule)) return;
        isAnyOpen = true;
      }
    }
    const [rule] = fails.length > 0 ? fails : warns;
    if (rule === undefined) return;
    const wouldPass = !isAnyOpen && warns.length === 0;
    if (fails.length === 1) this.#freed(rule)[wouldPass ? "failToPass" : "failToWarn"] += 1;
    if (fails.length === 0 && warns.length === 1 && !isAnyOpen) this.#freed(rule).warnToPass += 1;
    if (fails.length > 0) this.#failed(fails, wouldPass);
  }

  /** @param order - every rule of the run, in the order of the rulebook */
  freeing(order: Iterable<string>): Freeing {
    const alone = [...order].flatMap((rule) => this.#alone.get(rule) ?? []);
    const counts = new SettlingCounts();
    for (const { rules, points } of this.#alike.values()) counts.add(rules, points);
    let left = [...this.#alike.values()];
    const mended = new Set<string>();
    const inTurn = counts.steps().map(({ facts: rules, points, pointsSoFar }) => {
      for (const rule of rules) mended.add(rule);
      const isFreed = (one: FailedAlike): boolean => one.rules.every((rule) => mended.has(rule));
      const wouldPass = left.filter(isFreed).reduce((sum, one) => sum + one.wouldPass, 0);
      left = left.filter((one) => !isFreed(one));
      return { rules, points, wouldPass, pointsSoFar };
    });
    return { alone, inTurn };
  }

  #freed(rule: string): Freed {
    const known = this.#alone.get(rule) ?? { rule, failToPass: 0, failToWarn: 0, warnToPass: 0 };
    this.#alone.set(rule, known);
    return known;
  }

  #failed(fails: readonly string[], wouldPass: boolean): void {
    const key = fails.join();
    const known = this.#alike.get(key) ?? { rules: fails, points: 0, wouldPass: 0 };
    known.points += 1;
    if (wouldPass) known.wouldPass += 1;
    this.#alike.set(key, known);
  }
}
