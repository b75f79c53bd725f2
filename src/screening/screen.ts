import { isOpen, type Verdict } from "../base/index.js";
import type { ImportProblem, PointRecord, Survey } from "../records/index.js";
import { compileRule, type Rulebook, type SensorModel } from "../rulebook/index.js";
import { headOf, surveyShown } from "./head.js";
import { namesOf, pointIdOf } from "./identity.js";
import type { ScreeningInput, ScreeningOptions } from "./input.js";
import { type ReadyRule, weightOf, worst } from "./judge-point.js";
import { ModelShelf } from "./models.js";
import { rulesNotAsked } from "./not-asked.js";
import { PointFacts, type PointOnItsWay } from "./point-facts.js";
import { PointIds } from "./point-ids.js";
import { POINT_TWICE, pointTwice } from "./point-twice.js";
import { Remedies } from "./remedies/remedies.js";
import { RememberedJudge } from "./remembered-judge.js";
import type { Finding, PointResult, ResultHead, Screening } from "./result.js";
import { Tally } from "./tally.js";

/**
 * Screens the points of all surveys with one rulebook. Points are judged while they are iterated.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function screen(input: ScreeningInput): Screening {
  const { rulebook, options } = input;
  const run = new Run(input);
  const head = run.head();
  const newTally = (): Tally => new Tally([...run.rules.map(({ rule }) => rule.id), POINT_TWICE]);
  let done = false;
  let tally = newTally();
  return {
    head,
    points: function* () {
      tally = newTally();
      done = false;
      for (const point of run.points()) yield run.judge(point, tally);
      done = true;
    },
    summary: () => {
      if (!done) throw new Error(`the points of this run (${rulebook.name}, ${options.set}) are not all judged yet`);
      return tally.summary(head.surveys.reduce((sum, survey) => sum + survey.problems.length, 0));
    },
  };
}

/** The rules of a set, ready for a stage and a day. */
export function readyRules(
  rulebook: Rulebook,
  options: Pick<ScreeningOptions, "set" | "stage" | "asOf">,
): readonly ReadyRule[] {
  if (!rulebook.sets.includes(options.set)) {
    throw new RangeError(`the rulebook has no set "${options.set}"; it has ${rulebook.sets.join(", ")}`);
  }
  return rulebook.rules.flatMap((rule) => {
    const compiled = rule.sets.includes(options.set) ? compileRule(rule, rulebook, options) : null;
    return compiled ? [{ rule, compiled }] : [];
  });
}

/** The points of a run with all their facts, in order, without judging them. */
export function pointFactsOf(input: ScreeningInput): Iterable<PointOnItsWay> {
  return new Run(input).points();
}

/** Judges the points of a run one by one, in any order. */
export interface PointJudge {
  readonly head: ResultHead;
  /** @param survey - the survey of the run that the record stands in */
  judge(record: PointRecord, survey: Survey): PointResult;
}

/**
 * The same run as `screen` makes, for comparing it with another one point by point: nothing is counted.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function pointJudge(input: ScreeningInput): PointJudge {
  const run = new Run(input);
  const head = run.head();
  const uncounted = new Tally([]);
  return { head, judge: (record, survey) => run.judge(run.pointOf(record, survey), uncounted) };
}

/** One run over all surveys; judges lazily, so that a hundred thousand points need no room for their findings. */
class Run {
  readonly rules: readonly ReadyRule[];
  readonly #input: ScreeningInput;
  readonly #shelf: ModelShelf;
  readonly #judges: readonly RememberedJudge[];
  readonly #remedies: Remedies;
  readonly #notAsked = new Map<Survey, ReadonlySet<string>>();
  readonly #ids = new PointIds();

  constructor(input: ScreeningInput) {
    this.#input = input;
    this.rules = readyRules(input.rulebook, input.options);
    this.#shelf = new ModelShelf(input.rulebook, input.options.asOf);
    this.#judges = this.rules.map((ready) => new RememberedJudge(ready, input.options.allFindings));
    this.#remedies = new Remedies(this.#judges, this.#shelf, input.options.stage);
  }

  head(): ResultHead {
    const models = new Set<SensorModel>();
    const siteName = this.#siteName();
    const surveys = this.#input.surveys.map((survey) => {
      let unnamed = 0;
      for (const { facts, record } of this.#pointsOf(survey)) {
        if (facts.model.ok) models.add(facts.model.model);
        if (this.#ids.add(record, pointIdOf(facts, siteName)) === null) unnamed += 1;
      }
      const notAsked = rulesNotAsked(this.rules, survey, () => this.#factsOf(survey));
      this.#notAsked.set(survey, new Set(notAsked.map(({ rule }) => rule)));
      return surveyShown(survey, { notAsked, remarks: this.#remarks(survey, unnamed) });
    });
    return headOf(this.#input, this.rules, [...models], surveys);
  }

  *points(): Iterable<PointOnItsWay> {
    for (const survey of this.#input.surveys) yield* this.#pointsOf(survey);
  }

  pointOf(record: PointRecord, survey: Survey): PointOnItsWay {
    const asked = survey.factsAsked.has("sensor_model");
    return { record, survey, facts: new PointFacts(record.facts, this.#shelf.modelOf(record.facts, asked)) };
  }

  judge(point: PointOnItsWay, tally: Tally): PointResult {
    const { facts, record, survey } = point;
    const id = this.#ids.idOf(record);
    const findings: Finding[] = [];
    let verdict: Verdict = "pass";
    const silent = this.#notAsked.get(survey);
    const said = this.#judges.map((judge) => (silent?.has(judge.ready.rule.id) ? null : judge.judge(facts)));
    for (let place = 0; place < this.rules.length; place++) {
      const rule = this.rules[place]?.rule;
      const judged = said[place];
      if (!rule || !judged) continue;
      tally.outcome(rule.id, judged.outcome);
      verdict = worst(verdict, weightOf(judged.outcome, rule.undecided));
      if (judged.finding) findings.push(this.#remedies.added(judged.finding, place, said, point));
    }
    const twice = pointTwice(facts, this.#ids.othersOf(record));
    if (twice) {
      tally.outcome(POINT_TWICE, "fail");
      verdict = "fail";
      findings.push(twice);
    }
    const { file, sheet, row } = record;
    const result: PointResult = { id, ...namesOf(facts), file, sheet, row, verdict, findings };
    tally.point(result);
    return result;
  }

  #siteName(): string | null {
    return this.#input.options.siteName ?? this.#input.site?.siteName ?? null;
  }

  *#factsOf(survey: Survey): Iterable<PointFacts> {
    for (const point of this.#pointsOf(survey)) yield point.facts;
  }

  *#pointsOf(survey: Survey): Iterable<PointOnItsWay> {
    for (const record of survey.records) yield this.pointOf(record, survey);
  }

  /** What is said once per survey: no model, no site, rows without an id. */
  #remarks(survey: Survey, unnamed: number): readonly ImportProblem[] {
    const remarks: ImportProblem[] = [];
    const say = (code: ImportProblem["code"], fact: string, text: string): void => {
      remarks.push({ code, file: survey.file, sheet: null, cell: null, heading: null, fact, found: null, text });
    };
    const { siteName } = this.#input.options;
    if (!survey.factsAsked.has("sensor_model")) {
      const baseline = this.#input.rulebook.baselineModel;
      say("no-model", "sensor_model", `no sensor model is stated; every point is judged by "${baseline}"`);
    }
    if (siteName === null && !this.#input.site?.siteName && !survey.factsAsked.has("site")) {
      say("assumed", "site", "no site is stated; point ids are made without one, so two sites may clash; give --site");
    }
    if (unnamed > 0) {
      const rows = unnamed === 1 ? "1 row has" : `${unnamed} rows have`;
      const text = `${rows} no point ID, nor tag, component, bearing position and direction together, and so no id`;
      say("no-id", "point_id", text);
    }
    return remarks;
  }
}

/** Whether a result reached the level at which a run is to end with exit code 1. */
export function reachesLevel(point: PointResult, level: "fail" | "warn" | "undecided"): boolean {
  if (level === "undecided") return point.verdict === "fail" || point.findings.some((f) => isOpen(f.outcome));
  return level === "warn" ? point.verdict !== "pass" : point.verdict === "fail";
}
