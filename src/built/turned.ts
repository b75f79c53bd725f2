import { isOpen, type Outcome, type Verdict } from "../base/index.js";
import type { Finding, ResultHead } from "../screening/index.js";
import type { SaidBefore, Turned } from "./result.js";

const RANK: Readonly<Record<Verdict, number>> = { pass: 0, warn: 1, fail: 2 };

/** What is compared of a verdict: of a screening made now, or of a stored one. */
export interface VerdictSaid {
  readonly verdict: Verdict;
  readonly findings: readonly {
    readonly rule: string;
    readonly outcome: Outcome;
    readonly message: string | null;
  }[];
}

/** Rules that count an open question as a fail. */
export function gatesOf(rules: readonly Pick<ResultHead["rules"][number], "id" | "undecided">[]): ReadonlySet<string> {
  return new Set(rules.filter(({ undecided }) => undecided === "fail").map(({ id }) => id));
}

/** What two verdicts are compared by. */
export interface Compared {
  /** Ids of the rules that count an open question as a fail, before and now. */
  readonly gates: { readonly before: ReadonlySet<string>; readonly now: ReadonlySet<string> };
  /** Whether a rule is asked now; one that speaks of proposals alone is not asked of what was built. */
  readonly isAsked: (rule: string) => boolean;
}

/** What became of a verdict, and of the order that rests on it. */
export interface VerdictChange {
  readonly change: "falls" | "rises" | "same";
  readonly recall: boolean;
  readonly onlyUndecided: boolean;
  readonly turned: readonly Turned[];
}

/**
 * Compares two verdicts on a point. An order is recalled where the verdict falls, and where a rule now fails, or is
 * open and counts as a fail, that did neither before. It rises only by rules that are asked both times: what stood in
 * the way and is not asked any more has not become better.
 */
export function compareVerdicts(
  then: VerdictSaid,
  now: { readonly verdict: Verdict; readonly findings: readonly Finding[] },
  { gates, isAsked }: Compared,
): VerdictChange {
  const turned = turnedRules(then.findings, now.findings, { gates, isAsked });
  const worse = turned.filter((one) => one.worse);
  const falls = RANK[now.verdict] > RANK[then.verdict];
  const rises = RANK[now.verdict] < rankOfAsked(then, { gates, isAsked });
  const recall = falls || worse.some((one) => one.now !== null && weight(one.now, gates.now) === RANK.fail);
  return {
    change: falls ? "falls" : rises ? "rises" : "same",
    recall,
    onlyUndecided: recall && worse.every((one) => one.now !== null && isOpen(one.now.outcome)),
    turned,
  };
}

function turnedRules(
  then: VerdictSaid["findings"],
  now: readonly Finding[],
  { gates, isAsked }: Compared,
): readonly Turned[] {
  const before = new Map(then.map((finding) => [finding.rule, finding]));
  const turned: Turned[] = [];
  for (const finding of now) {
    const old = before.get(finding.rule) ?? null;
    before.delete(finding.rule);
    if (old?.outcome === finding.outcome) continue;
    const heavier = weight(finding, gates.now) > (old === null ? RANK.pass : weight(old, gates.before));
    const newlyFails = finding.outcome === "fail";
    turned.push({
      rule: finding.rule,
      worse: heavier || newlyFails,
      before: saidBefore(old),
      now: finding,
      asked: true,
    });
  }
  for (const old of before.values()) {
    const asked = isAsked(old.rule);
    turned.push({ rule: old.rule, worse: false, before: saidBefore(old), now: null, asked });
  }
  return turned;
}

/** How a verdict would rank without the rules that are not asked any more. */
function rankOfAsked({ verdict, findings }: VerdictSaid, { gates, isAsked }: Compared): number {
  const asked = findings.filter(({ rule }) => isAsked(rule));
  return asked.length === findings.length
    ? RANK[verdict]
    : Math.max(RANK.pass, ...asked.map((finding) => weight(finding, gates.before)));
}

function saidBefore(finding: SaidBefore | null): SaidBefore | null {
  return finding && { outcome: finding.outcome, message: finding.message };
}

function weight({ rule, outcome }: { readonly rule: string; readonly outcome: Outcome }, gates: ReadonlySet<string>) {
  if (outcome === "fail" || (isOpen(outcome) && gates.has(rule))) return RANK.fail;
  return outcome === "warn" || isOpen(outcome) ? RANK.warn : RANK.pass;
}
