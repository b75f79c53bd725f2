import { isOpen, type Outcome } from "../base/index.js";
import { factName } from "../facts/index.js";
import { type CompiledRule, compileRule, type Rule, type Rulebook } from "../rulebook/index.js";
import type { Finding, PointWithFacts, ResultHead } from "../screening/index.js";
import { isGrave } from "./grave.js";
import type { HeldBack, HeldBackCause } from "./release.js";

interface NeverRule {
  readonly rule: Rule;
  readonly compiled: CompiledRule;
}

/** The rules of a rulebook on what can hurt somebody: those marked `releases: never` that speak of proposals. */
export function neverRulesOf(rulebook: Pick<Rulebook, "rules">): readonly Rule[] {
  return rulebook.rules.filter(({ releases, stages }) => releases === "never" && stages.includes("proposed"));
}

/** What the rules marked `releases: never` hold against single points of a run. */
export class NeverRules {
  readonly #rules: readonly NeverRule[];
  /** Built-in rules, which are in no rulebook. */
  readonly #builtIn: ReadonlySet<string>;
  /** Why a rule is not asked, by survey and rule. */
  readonly #notAsked: ReadonlyMap<string, ReadonlyMap<string, string>>;

  constructor(
    rulebook: Pick<Rulebook, "rules" | "conditions">,
    { asOf, rules, surveys }: Pick<ResultHead, "asOf" | "rules" | "surveys">,
  ) {
    this.#rules = neverRulesOf(rulebook).flatMap((rule) => {
      const compiled = compileRule(rule, rulebook, { stage: "proposed", asOf });
      return compiled ? [{ rule, compiled }] : [];
    });
    const ofBook = new Set(rulebook.rules.map(({ id }) => id));
    this.#builtIn = new Set(rules.flatMap(({ id, releases }) => (releases === "never" && !ofBook.has(id) ? [id] : [])));
    this.#notAsked = new Map(
      surveys.map(({ file, notAsked }) => [file, new Map(notAsked.map(({ rule, text }) => [rule, text]))]),
    );
  }

  /** Every reason against releasing the point; none where each of the rules passes or does not apply. */
  reasons(run: PointWithFacts): readonly HeldBack[] {
    const builtIn = run.point.findings.filter(({ rule, outcome }) => this.#builtIn.has(rule) && isGrave(outcome));
    return [
      ...builtIn.map((finding) => heldBack(causeOf(finding.outcome), finding, finding.rule, finding.rule, "")),
      ...this.#rules.flatMap((never) => this.#reasonOf(never, run)),
    ];
  }

  /**
   * A rule that is not asked of the survey has no finding. Judged on all facts of the point it may turn out not to
   * apply; decided in favour of the point it cannot be, since then it would have been asked.
   */
  #reasonOf({ rule, compiled }: NeverRule, { point, facts }: PointWithFacts): readonly HeldBack[] {
    const finding = point.findings.find((one) => one.rule === rule.id && isGrave(one.outcome));
    const silent = finding ? undefined : this.#notAsked.get(point.file)?.get(rule.id);
    // What is said of a group is judged on its rows together: where it is silent, nothing can be told from one row.
    const judged = rule.group === null ? compiled.judge(facts).outcome : silent === undefined ? "pass" : "undecided";
    const outcome = finding?.outcome ?? judged;
    if (!isGrave(outcome)) return [];
    if (!finding && isOpen(outcome)) {
      const text = silent ?? "not asked of this point, and open";
      return [{ cause: "never-not-asked", rule: rule.id, text: `${rule.title}: ${text}`, remedy: rule.remedy.text }];
    }
    return [heldBack(causeOf(outcome), finding, rule.id, rule.title, rule.remedy.text)];
  }
}

function causeOf(outcome: Outcome): HeldBackCause {
  if (isOpen(outcome)) return "never-undecided";
  return outcome === "fail" ? "never-fails" : "never-warns";
}

function heldBack(
  cause: HeldBackCause,
  finding: Finding | undefined,
  rule: string,
  title: string,
  remedy: string,
): HeldBack {
  return { cause, rule, text: textOf(finding, title), remedy: finding?.remedy ?? remedy };
}

/** Why, in words: what the rule says, or without which facts it cannot be settled. */
export function textOf(finding: Finding | undefined, title: string): string {
  if (finding?.message != null) return isOpen(finding.outcome) ? `${title}: ${finding.message}` : finding.message;
  if (finding?.outcome === "no-limit-in-force") return `${title}: no limit is in force on this day`;
  const missing = [...new Set(finding?.missing.map(({ fact }) => factName(fact)))].join(", ");
  return missing === "" ? title : `${title}: not settled without ${missing}`;
}
