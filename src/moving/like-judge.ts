import { isOpen, type Outcome, type Verdict } from "../base/index.js";
import type { Survey } from "../records/index.js";
import { compileRule, modelFactsOn, type Rulebook } from "../rulebook/index.js";
import {
  askingOf,
  columnsLacking,
  type LikePoints,
  type PointFacts,
  type ReadyRule,
  type ScreeningOptions,
  unstatedFacts,
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
  /** Whether the rules can be asked as far as the columns of the survey go, and what the sensor model states. */
  readonly asking: Readonly<Record<Scope, readonly Asking[]>>;
  readonly model: string | null;
}

type Asking = ReturnType<typeof askingOf>;

/** A rule is left out for a whole survey, or for the points of one sensor model in it. */
type Scope = "survey" | "model";

/** The same things said are one text, so that they can be counted together. */
export type SaidKey = string;

/** Judges points that are alike by the moved rules, at any value of the number. */
export class LikeJudge {
  readonly #rules: readonly ReadyRule[];
  readonly #rulebook: Rulebook;
  readonly #moved: Moved;
  readonly #options: ScreeningOptions;
  readonly #lacking = new Map<Survey, readonly (readonly string[])[]>();
  readonly #unstated = new Map<string, readonly (readonly string[])[]>();
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
    const lacking = { survey: this.#lackingIn(survey), model: this.#unstatedBy(facts) };
    const judgements = ready.rules.map(({ compiled }) => compiled.judge(seen));
    const outcomes = judgements.map(({ outcome }) => outcome);
    const askingIn = (scope: Scope): readonly Asking[] =>
      judgements.map((judgement, i) => askingOf(judgement, seen, lacking[scope][i] ?? []));
    const asking = { survey: askingIn("survey"), model: askingIn("model") };
    const model = facts.model.ok ? facts.model.model.id : null;
    const parts = [this.#surveyNumbers.get(survey), model, others, outcomes, asking.survey, asking.model];
    const key = JSON.stringify(parts);
    if (!this.#said.has(key)) this.#said.set(key, { survey, others, outcomes, asking, model });
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
    for (const { survey, model, others, outcomes, count } of all) {
      let verdict = others;
      for (const [i, outcome] of outcomes.entries()) {
        const isSilent = silent(survey, model, i);
        if (!isSilent) verdict = worst(verdict, weightOf(outcome, this.#rules[i]?.rule.undecided ?? "warn"));
        if (i === 0) rule[isSilent ? "notAsked" : countedAs(outcome)] += count;
      }
      verdicts[verdict] += count;
    }
    return { rule, points: verdicts };
  }

  /** Whether a rule is open for want of a column, or of what a model states, and decided on no row concerned. */
  #silentIn(all: readonly Said[]): (survey: Survey, model: string | null, rule: number) => boolean {
    const found = new Set<string>();
    const place = (survey: Survey, model: string | null): string =>
      `${this.#surveyNumbers.get(survey)} ${model === null ? "" : JSON.stringify(model)}`;
    for (const { survey, model, asking } of all) {
      for (const [i, way] of asking.survey.entries()) found.add(`${place(survey, null)} ${i} ${way}`);
      if (model === null) continue;
      for (const [i, way] of asking.model.entries()) found.add(`${place(survey, model)} ${i} ${way}`);
    }
    const isSilent = (at: string, rule: number): boolean =>
      found.has(`${at} ${rule} open`) && !found.has(`${at} ${rule} decided`);
    return (survey, model, rule) =>
      isSilent(place(survey, null), rule) || (model !== null && isSilent(place(survey, model), rule));
  }

  #unstatedBy({ model }: PointFacts): readonly (readonly string[])[] {
    if (!model.ok) return [];
    const known = this.#unstated.get(model.model.id);
    if (known) return known;
    const unstated = this.#rules.map((ready) => unstatedFacts(ready, model.model));
    this.#unstated.set(model.model.id, unstated);
    return unstated;
  }

  #lackingIn(survey: Survey): readonly (readonly string[])[] {
    const known = this.#lacking.get(survey);
    if (known) return known;
    const lacking = this.#rules.map((ready) => columnsLacking(ready, survey));
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
