import { isOpen } from "../base/index.js";
import type { Facts } from "../facts/index.js";
import type { Margin } from "../rulebook/index.js";
import { distributionsOf, MarginCounts, SpeedCounts } from "./distributions.js";
import { FreeingCounts } from "./freeing.js";
import type {
  Finding,
  MissingFact,
  OpenPoints,
  OtherMethod,
  PointResult,
  RuleCounts,
  RuleShown,
  Summary,
} from "./result.js";
import { SettlingCounts } from "./settling/settling-counts.js";

type Writable<T> = { -readonly [key in keyof T]: T[key] };
type Counts = Writable<RuleCounts>;
/** What is counted of one rule. */
interface OfRule {
  readonly counts: Counts;
  readonly margins: MarginCounts;
}

/**
 * Counts outcomes and verdicts while points pass by. A rule of groups is counted at every point with the outcome of
 * its group; at a point that is in none because its key is not known, it is undecided unless it cannot apply.
 */
export class Tally {
  readonly #rules = new Map<string, OfRule>();
  readonly #judged: ReadonlyMap<string, string | null>;
  readonly #freeing: FreeingCounts;
  readonly #speeds = new SpeedCounts();
  readonly #missing = new Map<string, number>();
  readonly #verdicts = { pass: 0, warn: 0, fail: 0 };
  readonly #settling = new SettlingCounts();
  readonly #open: Writable<OpenPoints> = { toSettle: 0, failAnyway: 0, notByFacts: 0 };
  readonly #methods = new Map<string, Writable<OtherMethod>>();
  #warnOnlyUndecided = 0;
  #accepted = 0;

  constructor(rules: readonly Pick<RuleShown, "id" | "judged" | "undecided">[]) {
    for (const { id } of rules) this.#ofRule(id);
    this.#judged = new Map(rules.map(({ id, judged }) => [id, judged]));
    this.#freeing = new FreeingCounts(new Set(rules.flatMap(({ id, undecided }) => (undecided === "fail" ? id : []))));
  }

  /** @param margin - of a rule of points, null where there is none; left out of a rule of groups, see `group` */
  outcome(rule: string, outcome: Finding["outcome"], margin?: Margin | null): void {
    const { counts, margins } = this.#ofRule(rule);
    if (margin !== undefined) margins.add(outcome, margin);
    if (outcome === "not-applicable") counts.notApplicable += 1;
    else if (outcome === "no-limit-in-force") counts.noLimitInForce += 1;
    else counts[outcome] += 1;
  }

  /** Takes the margin of a group, once for all of its rows. */
  group(rule: string, outcome: Finding["outcome"], margin: Margin | null): void {
    const { margins } = this.#ofRule(rule);
    margins.counts = "groups";
    margins.add(outcome, margin);
  }

  point(
    point: Pick<PointResult, "verdict" | "accepted" | "findings" | "methods" | "methodAdvised" | "settledBy">,
    known: Facts,
  ): void {
    this.#speeds.add(known);
    this.#freeing.add(point);
    this.#verdicts[point.verdict] += 1;
    if (point.accepted) this.#accepted += 1;
    const open = point.findings.filter((finding) => isOpen(finding.outcome));
    const warned = point.findings.some((finding) => finding.outcome === "warn");
    if (point.verdict === "warn" && open.length > 0 && !warned) this.#warnOnlyUndecided += 1;
    const facts = new Set(open.flatMap((finding) => finding.missing.map((missing: MissingFact) => missing.fact)));
    for (const fact of facts) this.#missing.set(fact, (this.#missing.get(fact) ?? 0) + 1);
    if (open.length > 0) this.#countOpen(point);
    this.#countMethod(point);
  }

  /**
   * @param problems - import problems over all surveys
   * @param byCriticality - counted beforehand: the class of a machine is known only when all its rows are
   */
  summary(problems: number, byCriticality: Summary["byCriticality"]): Summary {
    const { pass, warn, fail } = this.#verdicts;
    const toMeasure = [...this.#missing].map(([fact, points]) => ({ fact, points }));
    return {
      points: pass + warn + fail,
      pass,
      warn,
      fail,
      warnOnlyUndecided: this.#warnOnlyUndecided,
      accepted: this.#accepted,
      problems,
      byRule: [...this.#rules.values()].map(({ counts }) => counts),
      byCriticality,
      toMeasure: toMeasure.sort((a, b) => b.points - a.points || (a.fact < b.fact ? -1 : 1)),
      settling: this.#settling.steps(),
      openPoints: { ...this.#open },
      otherMethods: [...this.#methods.values()].sort(
        (a, b) => b.wouldPass - a.wouldPass || b.closest - a.closest || (a.method < b.method ? -1 : 1),
      ),
      freeing: this.#freeing.freeing(this.#rules.keys()),
      distributions: distributionsOf(
        this.#speeds,
        [...this.#rules].map(([rule, { margins }]) => [rule, margins]),
        (rule) => this.#judged.get(rule) ?? null,
      ),
    };
  }

  #countOpen({ settledBy, findings }: Pick<PointResult, "settledBy" | "findings">): void {
    if (settledBy) {
      this.#open.toSettle += 1;
      this.#settling.add(settledBy);
    } else if (findings.some(({ outcome }) => outcome === "fail")) this.#open.failAnyway += 1;
    else this.#open.notByFacts += 1;
  }

  #countMethod({ methods, methodAdvised: advised }: Pick<PointResult, "methods" | "methodAdvised">): void {
    if (!advised || methods?.find(({ proposed }) => proposed)?.method === advised.method) return;
    const { method } = advised;
    const counts = this.#methods.get(method) ?? { method, wouldPass: 0, closest: 0 };
    counts[advised.closest ? "closest" : "wouldPass"] += 1;
    this.#methods.set(method, counts);
  }

  #ofRule(rule: string): OfRule {
    const known = this.#rules.get(rule);
    if (known) return known;
    const counts: Counts = { rule, pass: 0, warn: 0, fail: 0, undecided: 0, notApplicable: 0, noLimitInForce: 0 };
    const ofRule = { counts, margins: new MarginCounts() };
    this.#rules.set(rule, ofRule);
    return ofRule;
  }
}
