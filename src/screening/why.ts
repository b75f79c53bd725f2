import { type Facts, findFact, MISSING, type UnknownReason } from "../facts/index.js";
import { type RuleTrace, traceRule } from "../rulebook/index.js";
import { showFact } from "./fact-shown.js";
import type { ScreeningInput } from "./input.js";
import type { ReadyRule } from "./judge-point.js";
import { factsInMessage } from "./messages.js";
import { missingFacts } from "./missing.js";
import type { FactShown, Finding, MissingFact, NotAsked, PointResult } from "./result.js";
import { factsOfRun, screen } from "./screen.js";

/** A fact, where it comes from, and the facts under it. */
export interface FactWhy {
  readonly shown: FactShown;
  /** Why it is not known; null where it is. */
  readonly reason: UnknownReason | null;
  /** Of a derived fact: those it rests on, each followed down to the cells. */
  readonly under: readonly FactWhy[];
}

/** One rule on one point, step by step. */
export interface RuleWhy {
  readonly rule: string;
  readonly finding: Finding;
  readonly trace: RuleTrace;
  readonly facts: readonly FactWhy[];
  /** The rule was not asked of this survey, and why. */
  readonly notAsked: NotAsked | null;
}

/** One point with the whole way to its verdict. */
export interface PointWhy {
  readonly point: PointResult;
  readonly rules: readonly RuleWhy[];
  /** What has to be found out so that nothing of this point is open. */
  readonly open: readonly MissingFact[];
}

/** Which points and rules are looked at. */
export interface WhySelection {
  isMeant(point: PointResult): boolean;
  /** Ids of rules; null for all of the set. */
  readonly rules: ReadonlySet<string> | null;
}

/**
 * Follows points through all rules, those that do not apply and those not asked included.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function* whyPoints(input: ScreeningInput, selection: WhySelection): IterableIterator<PointWhy> {
  const { rulebook, options } = input;
  const screening = screen({ ...input, options: { ...options, allFindings: true } });
  const run = factsOfRun(input);
  const ready = run.rules.filter(({ rule }) => selection.rules?.has(rule.id) ?? true);
  const ways = run.points[Symbol.iterator]();
  for (const point of screening.points()) {
    const way = ways.next();
    if (way.done) throw new Error("the points of a run and their facts are not as many");
    if (!selection.isMeant(point)) continue;
    const { facts: ofPoint, survey, at } = way.value;
    const silent = screening.head.surveys.find(({ file }) => file === survey.file)?.notAsked ?? [];
    const rules = ready.flatMap(({ rule, compiled }): RuleWhy[] => {
      const facts = rule.group === null ? ofPoint : run.groups.factsOfRow(at, rule.id);
      if (facts === null) return [];
      const trace = traceRule(rule, rulebook, options, facts);
      const finding = point.findings.find((one) => one.rule === rule.id) ?? null;
      const model = ofPoint.model.ok ? ofPoint.model.model.id : null;
      const isOfPoint = (one: NotAsked): boolean => one.model === null || one.model === model;
      const notAsked = silent.find((one) => one.rule === rule.id && isOfPoint(one)) ?? null;
      if (trace === null) return [];
      const named = [
        ...compiled.factsNamed,
        ...factsInMessage(compiled.messages.fail),
        ...factsInMessage(compiled.messages.warn),
      ];
      const followed = [...new Set(named)].filter((id) => id !== "stage").map((id) => follow(id, facts, 0));
      return [
        {
          rule: rule.id,
          finding: finding ?? unasked(rule.id, compiled.judge(facts), facts),
          trace,
          facts: followed,
          notAsked,
        },
      ];
    });
    const missing = new Map(point.findings.flatMap((finding) => finding.missing).map((one) => [one.fact, one]));
    yield { point, rules, open: [...missing.values()] };
  }
}

/** What a rule that was not asked would say; it counts in no verdict. */
function unasked(
  rule: string,
  { outcome, atBest, limit, margin, open }: ReturnType<ReadyRule["compiled"]["judge"]>,
  facts: Facts,
): Finding {
  const missing = missingFacts(open, facts);
  return {
    rule,
    outcome,
    atBest,
    facts: [],
    limit,
    margin,
    missing,
    message: null,
    remedy: null,
    changes: [],
    group: null,
    accepted: null,
  };
}

/** Derived facts rest on survey facts, never on each other more than a few deep. */
const DEEPEST = 8;

function follow(id: string, facts: Facts, depth: number): FactWhy {
  const state = facts.get(id) ?? MISSING;
  const needs = depth > DEEPEST ? [] : (findFact(id)?.needs ?? []);
  return {
    shown: showFact(id, facts),
    reason: state.known ? null : state.reason,
    under: needs.map((need) => follow(need, facts, depth + 1)),
  };
}
