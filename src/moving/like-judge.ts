import { isOpen, type Outcome, type Verdict } from "../base/index.js";
import type { Survey } from "../records/index.js";
import { compileRule, modelFactsOn, type Rulebook } from "../rulebook/index.js";
import {
  askingOf,
  type LikePoints,
  lackingFacts,
  type PointFacts,
  type ReadyRule,
  type ScreeningOptions,
  weightOf,
  worst,
} from "../screening/index.js";
import { type Moved, modelFactMoved, movedBook } from "./moved-book.js";

/** What came out for the rule at one value of the number: how many points of each outcome. */
export interface OutcomeCounts {
  readonly pass: number;
  readonly warn: number;
  readonly fail: number;
  readonly undecided: number;
  readonly notApplicable: number;
  /** Points of surveys that cannot be asked this rule, for want of a column. */
  readonly notAsked: number;
}

/** How many points have each verdict. */
export type VerdictCounts = Readonly<Record<Verdict, number>>;

/** Both at one value of the number. */
export interface Counted {
  readonly rule: OutcomeCounts;
  readonly points: VerdictCounts;
}

/** What the moved rules say of points that are alike, and the others beside them. */
export interface Said {
  readonly survey: Survey;
  readonly others: Verdict;
  readonly outcomes: readonly Outcome[];
  readonly asking: readonly ("open" | "decided" | null)[];
}

/** The same things said are one text, so that they can be counted together. */
export type SaidKey = string;

/** Judges points that are alike by the moved rules, at any value of the number. */
export class LikeJudge {
  readonly #rules: readonly ReadyRule[];
  readonly #rulebook: Rulebook;
  readonly #moved: Moved;
  readonly #options: ScreeningOptions;
  readonly #lacking = new Map<Survey, readonly (readonly string[])[]>();
  readonly #surveyNumbers = new Map<Survey, number>();
  readonly #said = new Map<SaidKey, Said>();
  #at: { readonly value: number; readonly rules: readonly ReadyRule[]; readonly facts: Facts } | null = null;

  /** @param rules - the rule whose number moves, then every other one that feels it */
  constructor(rules: readonly ReadyRule[], moved: Moved, rulebook: Rulebook, options: ScreeningOptions) {
    this.#rules = rules;
    this.#moved = moved;
    this.#rulebook = rulebook;
    this.#options = options;
  }

  /** What is said of points at a value; points are best asked one after another at the same value. */
  at(value: number, { facts, survey, others }: LikePoints): SaidKey {
    const ready = this.#readyAt(value);
    const seen = ready.facts(facts);
    const lacking = this.#lackingIn(survey);
    const judgements = ready.rules.map(({ compiled }) => compiled.judge(seen));
    const outcomes = judgements.map(({ outcome }) => outcome);
    const asking = judgements.map((judgement, i) => askingOf(judgement, seen, lacking[i] ?? []));
    const key = `${this.#surveyNumbers.get(survey)} ${others} ${outcomes.join()} ${asking.join()}`;
    if (!this.#said.has(key)) this.#said.set(key, { survey, others, outcomes, asking });
    return key;
  }

  /** Counts what is said, leaving out the rules that a survey cannot be asked. */
  count(points: ReadonlyMap<SaidKey, number>): Counted {
    const all = [...points].flatMap(([key, count]) => {
      const said = this.#said.get(key);
      return said && count > 0 ? [{ ...said, count }] : [];
    });
    const silent = this.#silentIn(all);
    const rule = { pass: 0, warn: 0, fail: 0, undecided: 0, notApplicable: 0, notAsked: 0 };
    const verdicts = { pass: 0, warn: 0, fail: 0 };
    for (const { survey, others, outcomes, count } of all) {
      let verdict = others;
      for (const [i, outcome] of outcomes.entries()) {
        const isSilent = silent.get(survey)?.[i] ?? false;
        if (!isSilent) verdict = worst(verdict, weightOf(outcome, this.#rules[i]?.rule.undecided ?? "warn"));
        if (i === 0) rule[isSilent ? "notAsked" : countedAs(outcome)] += count;
      }
      verdicts[verdict] += count;
    }
    return { rule, points: verdicts };
  }

  /** By survey, for each rule, whether it is open for want of a column and decided on no row. */
  #silentIn(all: readonly Said[]): ReadonlyMap<Survey, readonly boolean[]> {
    const found = new Map<Survey, Set<string>>();
    for (const { survey, asking } of all) {
      const ways = found.get(survey) ?? new Set();
      found.set(survey, ways);
      for (const [i, way] of asking.entries()) if (way !== null) ways.add(`${i} ${way}`);
    }
    return new Map(
      [...found].map(([survey, ways]) => [
        survey,
        this.#lackingIn(survey).map(
          (facts, i) => facts.length > 0 && ways.has(`${i} open`) && !ways.has(`${i} decided`),
        ),
      ]),
    );
  }

  #lackingIn(survey: Survey): readonly (readonly string[])[] {
    const known = this.#lacking.get(survey);
    if (known) return known;
    const lacking = this.#rules.map((ready) => lackingFacts(ready, survey));
    this.#lacking.set(survey, lacking);
    this.#surveyNumbers.set(survey, this.#surveyNumbers.size);
    return lacking;
  }

  #readyAt(value: number): { readonly rules: readonly ReadyRule[]; readonly facts: Facts } {
    if (this.#at?.value === value) return this.#at;
    this.#at = { value, ...(modelFactMoved(this.#moved) === null ? this.#ruleAt(value) : this.#modelAt(value)) };
    return this.#at;
  }

  #ruleAt(value: number): { readonly rules: readonly ReadyRule[]; readonly facts: Facts } {
    const rule = this.#moved.place.with(value);
    const compiled = compileRule(rule, this.#rulebook, this.#options);
    const rules = this.#rules.map((ready) => (compiled && ready.rule.id === rule.id ? { rule, compiled } : ready));
    return { rules, facts: (facts) => facts };
  }

  #modelAt(value: number): { readonly rules: readonly ReadyRule[]; readonly facts: Facts } {
    const { asOf } = this.#options;
    const model = movedBook(this.#rulebook, this.#moved, value, asOf).models.get(this.#moved.model?.id ?? "");
    const others = model ? modelFactsOn(model, asOf) : null;
    return {
      rules: this.#rules,
      facts: (facts) =>
        others !== null && facts.model.ok && facts.model.model.id === model?.id
          ? facts.changed(new Map(), { ...facts.model, facts: others })
          : facts,
    };
  }
}

/** The facts of a point as they are at a value. */
type Facts = (facts: PointFacts) => PointFacts;

function countedAs(outcome: Outcome): Exclude<keyof OutcomeCounts, "notAsked"> {
  if (outcome === "not-applicable") return "notApplicable";
  return isOpen(outcome) ? "undecided" : (outcome as "pass" | "warn" | "fail");
}
