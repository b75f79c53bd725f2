import { isOpen, type Verdict } from "../../base/index.js";
import { factOf, type SiteStatements } from "../../facts/index.js";
import type { Rulebook } from "../../rulebook/index.js";
import { supposed } from "../changed-record.js";
import type { ReadyRule } from "../judge-point.js";
import { KeptList } from "../kept-list.js";
import type { LackingRule } from "../not-asked.js";
import type { PointFacts } from "../point-facts.js";
import type { Finding, MethodAdvised, MethodTried, PointResult } from "../result.js";
import { METHOD_ALLOWED } from "./method-allowed.js";
import { METHOD, MethodTrial, restsOnMethod, type TrialOutcome, withMethod } from "./method-trial.js";
import { methodsAllowedFor, wordOf } from "./methods-allowed.js";
import { type Asking, type Named, type OpenCounts, Said, triedMethod } from "./said-of-method.js";

const ALL_METHODS: readonly string[] = factOf(METHOD).choices ?? [];

/** What the trials of one point give. */
export type Trials = Pick<PointResult, "methods" | "methodAdvised">;

/** No trial was made. */
export const NO_TRIALS: Trials = { methods: null, methodAdvised: null };

/** The rules that are decided on no row of a survey for want of a column, by their ids. */
export type LackingFacts = ReadonlyMap<string, Pick<LackingRule, "lacking" | "open">>;

/** A point as it is proposed, judged. */
export interface JudgedPoint {
  readonly facts: PointFacts;
  readonly findings: readonly Finding[];
  /** By the place of a rule among those of points: whether it applies and was asked. */
  readonly applied: readonly boolean[];
  readonly verdict: Verdict;
  /** Of its survey. */
  readonly lacking: LackingFacts;
}

/** Tries the mounting methods that a site allows on points, with all rules that rest on the method. */
export class MethodTrials {
  readonly #site: SiteStatements | null;
  readonly #lasting: readonly string[];
  readonly #gates: ReadonlySet<string>;
  /** By method; rules that do not concern it, or that it passes by its name, are left out. */
  readonly #trials: ReadonlyMap<string, readonly MethodTrial[]>;
  readonly #resting: ReadonlySet<string>;
  readonly #openCounts: OpenCounts;
  readonly #none = KeptList.empty();

  /** @param rules - every rule of the run, of points and of groups */
  constructor(rules: readonly ReadyRule[], rulebook: Pick<Rulebook, "methods">, site: SiteStatements | null) {
    this.#site = site;
    this.#lasting = rulebook.methods?.lasting ?? ALL_METHODS;
    const strict = rules.filter(({ rule }) => rule.undecided === "fail").map(({ rule }) => rule.id);
    this.#gates = new Set([...(rulebook.methods?.gates ?? []), ...strict]);
    // What is said of a group does not hang on the method of one of its points.
    const ofPoints = rules.filter(({ rule }) => rule.group === null);
    const resting = ofPoints.map((ready, place) => ({ ready, place })).filter(({ ready }) => restsOnMethod(ready));
    const trialsOf = (method: string) =>
      resting.map(({ ready, place }) => new MethodTrial(ready, place, method)).filter(saysSomething);
    this.#trials = new Map(ALL_METHODS.map((method) => [method, trialsOf(method)]));
    this.#resting = new Set([...resting.map(({ ready }) => ready.rule.id), METHOD_ALLOWED]);
    this.#openCounts = new Map(rules.map(({ rule }) => [rule.id, rule.undecided]));
  }

  /** The proposed method and those allowed, best first, and the one to be advised. */
  of(point: JudgedPoint): Trials {
    const { facts, findings, verdict } = point;
    const proposed = wordOf(facts, METHOD);
    const stated = methodsAllowedFor(facts, this.#site);
    const candidates = stated?.methods ?? this.#lasting;
    const ofMethod = new Said(this.#openCounts, this.#none);
    const ofPoint = new Said(this.#openCounts, this.#none);
    for (const { rule, outcome, missing } of findings) {
      const lacking = missing.length === 0 ? [] : missing.map(({ fact }) => fact);
      (this.#resting.has(rule) ? ofMethod : ofPoint).add(rule, outcome, lacking);
    }
    const methods: MethodTried[] = [];
    for (const method of ALL_METHODS) {
      const isCandidate = candidates.includes(method);
      const named = { method, proposed: method === proposed, allowed: stated === null || isCandidate };
      if (named.proposed) methods.push(triedMethod(named, ofMethod, ofPoint, this.#askedAsProposed(method, point)));
      else if (isCandidate) methods.push(this.#tried(named, point, ofPoint));
    }
    methods.sort(compareTried);
    return { methods, methodAdvised: verdict === "pass" ? null : this.#advised(methods, candidates) };
  }

  /** The point has been judged with it; only rules that its survey is not asked are tried. */
  #askedAsProposed(method: string, { facts, applied, lacking }: JudgedPoint): Asking {
    let asked = this.#none;
    let notAsked = this.#none;
    for (const trial of this.#trials.get(method) ?? []) {
      if (!trial.tests) continue;
      if (applied[trial.place]) asked = asked.with(trial.id);
      else if (
        lacking.has(trial.id) &&
        isNotAsked(
          trial,
          trial.outcomeOn(facts, () => facts),
          lacking,
        )
      ) {
        notAsked = notAsked.with(trial.id);
      }
    }
    return { asked, notAsked };
  }

  #tried(named: Named, { facts, lacking }: JudgedPoint, ofPoint: Said): MethodTried {
    const said = new Said(this.#openCounts, this.#none);
    let point: PointFacts | null = null;
    const changed = (): PointFacts => {
      point ??= withMethod(facts, supposed(named.method));
      return point;
    };
    let asked = this.#none;
    let notAsked = this.#none;
    for (const trial of this.#trials.get(named.method) ?? []) {
      const outcome = trial.outcomeOn(facts, changed);
      if (outcome.outcome === "not-applicable") continue;
      if (isNotAsked(trial, outcome, lacking)) notAsked = notAsked.with(trial.id);
      else {
        if (trial.tests) asked = asked.with(trial.id);
        said.add(trial.id, outcome.outcome, outcome.missing);
      }
    }
    return triedMethod(named, said, ofPoint, { asked, notAsked });
  }

  /**
   * Never advised is a method of which nothing was asked (or decided, where the survey proposes none), one that is neither
   * meant to stay nor allowed, and one that a gate holds up which does not hold up the proposed one: the one open fact of a
   * weld that nobody consented to would otherwise make it closer than any other.
   */
  #advised(methods: readonly MethodTried[], candidates: readonly string[]): MethodAdvised | null {
    const asProposed = methods.find((tried) => tried.proposed);
    const tested = methods.filter(
      ({ method, asked, undecided }) =>
        candidates.includes(method) && asked.some((id) => asProposed !== undefined || !undecided.includes(id)),
    );
    const heldAnyway = asProposed === undefined ? [] : this.#gatesAgainst(asProposed);
    const [other] = tested
      .filter((tried) => !tried.proposed && this.#gatesAgainst(tried).every((gate) => heldAnyway.includes(gate)))
      .sort((a, b) => failing(a) - failing(b) || this.#gatesNotAsked(a) - this.#gatesNotAsked(b));
    const proposed = asProposed && tested.includes(asProposed) ? asProposed : undefined;
    // A proposal is left for answers that are better, not because the other method was asked more or less.
    const best = proposed && (!other || compareAnswers(proposed, other) <= 0) ? proposed : other;
    if (best === undefined) return null;
    const { method, verdict } = best;
    return { method, verdict, closest: verdict !== "pass" || this.#gatesNotAsked(best) > 0 };
  }

  /** Gates that fail or are open. */
  #gatesAgainst({ fails, undecided }: MethodTried): readonly string[] {
    return [...fails, ...undecided].filter((id) => this.#gates.has(id));
  }

  #gatesNotAsked({ notAsked }: MethodTried): number {
    return notAsked.filter((id) => this.#gates.has(id)).length;
  }
}

function failing({ verdict }: MethodTried): number {
  return verdict === "fail" ? 1 : 0;
}

/** A rule that never applies to a method, or passes it by its name alone, has nothing to say of any point. */
function saysSomething({ always }: MethodTrial): boolean {
  return always === null || (always.outcome !== "not-applicable" && always.outcome !== "pass");
}

/** Open for want of a column that the survey does not have, here or on another row, and decided on no row of it. */
function isNotAsked(trial: MethodTrial, { outcome, missing }: TrialOutcome, lacking: LackingFacts): boolean {
  const rule = isOpen(outcome) ? lacking.get(trial.id) : undefined;
  return rule !== undefined && (rule.open || rule.lacking.some((fact) => missing.includes(fact)));
}

const WORSE: Readonly<Record<Verdict, number>> = { pass: 0, warn: 1, fail: 2 };

/** Best first; of equals the proposed one, then the one that was asked more, then the order of the catalogue. */
function compareTried(a: MethodTried, b: MethodTried): number {
  return (
    WORSE[a.verdict] - WORSE[b.verdict] ||
    Number(a.asked.length === 0) - Number(b.asked.length === 0) ||
    compareAnswers(a, b) ||
    Number(b.proposed) - Number(a.proposed) ||
    a.notAsked.length - b.notAsked.length
  );
}

/** By verdict, then fewest failures, fewest facts to find out, fewest open rules and fewest warnings. */
function compareAnswers(a: MethodTried, b: MethodTried): number {
  return (
    WORSE[a.verdict] - WORSE[b.verdict] ||
    a.fails.length - b.fails.length ||
    a.missing.length - b.missing.length ||
    a.undecided.length - b.undecided.length ||
    a.warns.length - b.warns.length
  );
}
