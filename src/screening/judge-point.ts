import { isOpen, type Verdict } from "../base/index.js";
import type { Facts } from "../facts/index.js";
import type { CompiledRule, Judgement, Rule } from "../rulebook/index.js";
import { showFact } from "./fact-shown.js";
import { measureTo } from "./measure-to.js";
import { messageOf, remedyOf } from "./messages.js";
import { missingFacts, type Solve } from "./missing.js";
import type { PointFacts } from "./point-facts.js";
import type { FactShown, Finding, MissingFact } from "./result.js";

/** A rule with its compiled form, for one stage and day. */
export interface ReadyRule {
  readonly rule: Rule;
  readonly compiled: CompiledRule;
}

/** Whether an outcome is listed without being asked for. */
export function isAlwaysListed(outcome: Finding["outcome"]): boolean {
  return outcome === "warn" || outcome === "fail" || isOpen(outcome);
}

/** The finding of one rule on one point, with its trace. */
export function findingOf(ready: ReadyRule, judgement: Judgement, facts: PointFacts): Finding {
  const isDecided = (changed: Facts): boolean => !isOpen(ready.compiled.judge(changed).outcome);
  return findingWith(ready, judgement, facts, (fact) => measureTo(fact, facts, isDecided));
}

/** The finding of one rule on one group; which row to measure again, and how accurately, cannot be told. */
export function groupFindingOf(ready: ReadyRule, judgement: Judgement, facts: Facts): Finding {
  return findingWith(ready, judgement, facts, () => null);
}

function findingWith({ rule, compiled }: ReadyRule, judgement: Judgement, facts: Facts, solve: Solve): Finding {
  const { outcome } = judgement;
  const missing = isOpen(outcome) ? missingFacts(judgement.open, facts, solve) : [];
  return {
    rule: rule.id,
    outcome,
    atBest: judgement.atBest,
    facts: factsShown(compiled, outcome, missing, facts),
    limit: judgement.limit,
    margin: marginShown(judgement),
    missing,
    message: messageOf(compiled, judgement, missing, facts),
    remedy: remedyOf(outcome, rule.remedy.text, missing),
    changes: [],
    group: null,
    accepted: null,
  };
}

/** A free condition that spoke has no distance; that of another band would look like room to spare. */
export function marginShown({ limit, margin }: Judgement): Judgement["margin"] {
  return limit?.is === "when" ? null : margin;
}

/** The judged fact first; an open finding shows beside it only what is missing, all others every fact they name. */
function factsShown(
  compiled: CompiledRule,
  outcome: Finding["outcome"],
  missing: readonly MissingFact[],
  facts: Facts,
): readonly FactShown[] {
  const named = isOpen(outcome) ? missing.map((m) => m.fact) : compiled.factsNamed.filter((id) => id !== "stage");
  const ids = new Set([...(compiled.judged === null ? [] : [compiled.judged]), ...named]);
  return [...ids].map((id) => showFact(id, facts));
}

/** How one outcome weighs in the verdict of the point. */
export function weightOf(outcome: Finding["outcome"], undecided: "warn" | "fail"): Verdict {
  if (outcome === "fail" || outcome === "warn") return outcome;
  return isOpen(outcome) ? undecided : "pass";
}

/** The worst of two verdicts. */
export function worst(a: Verdict, b: Verdict): Verdict {
  if (a === "fail" || b === "fail") return "fail";
  return a === "warn" || b === "warn" ? "warn" : "pass";
}
