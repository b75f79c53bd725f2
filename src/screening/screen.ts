import { isOpen, type Verdict } from "../base/index.js";
import type { ImportProblem, PointRecord, Survey } from "../records/index.js";
import { compileRule, type Rulebook, type SensorModel, type TableLookup, tablesOn } from "../rulebook/index.js";
import { AskedRules } from "./asked-rules.js";
import { headOf, surveyShown } from "./head.js";
import { namesOf, pointIdOf } from "./identity.js";
import type { ScreeningInput, ScreeningOptions } from "./input.js";
import { type ReadyRule, weightOf, worst } from "./judge-point.js";
import { methodAllowed } from "./methods/method-allowed.js";
import { MethodTrials, NO_TRIALS, type Trials } from "./methods/method-trials.js";
import { methodsAllowedFor } from "./methods/methods-allowed.js";
import { ModelShelf } from "./models.js";
import { PointFacts, type PointOnItsWay } from "./point-facts.js";
import { PointIds } from "./point-ids.js";
import { pointTwice } from "./point-twice.js";
import { Remedies } from "./remedies/remedies.js";
import { RememberedJudge } from "./remembered-judge.js";
import type { Finding, PointResult, ResultHead, Screening, Summary } from "./result.js";
import { type OpenFinding, Settler } from "./settling/settler.js";
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
  let done = false;
  // Every pass over the points gives the same: they are counted in the first that comes to its end.
  let summary: Summary | null = null;
  return {
    head,
    points: function* () {
      const tally = summary === null ? new Tally(head.rules.map(({ id }) => id)) : null;
      done = false;
      for (const point of run.points()) yield run.judge(point, tally);
      summary ??= tally?.summary(head.surveys.reduce((sum, survey) => sum + survey.problems.length, 0)) ?? null;
      done = true;
    },
    summary: () => {
      if (done && summary !== null) return summary;
      throw new Error(`the points of this run (${rulebook.name}, ${options.set}) are not all judged yet`);
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
  /** Which rules are asked of the point, by their ids. */
  asks(record: PointRecord, survey: Survey): (rule: string) => boolean;
}

/**
 * The same run as `screen` makes, for comparing it with another one point by point: nothing is counted.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function pointJudge(input: ScreeningInput): PointJudge {
  const run = new Run(input);
  const head = run.head();
  return {
    head,
    judge: (record, survey) => run.judge(run.pointOf(record, survey), null),
    asks: (record, survey) => run.asks(run.pointOf(record, survey)),
  };
}

/** One run over all surveys; judges lazily, so that a hundred thousand points need no room for their findings. */
class Run {
  readonly rules: readonly ReadyRule[];
  readonly #input: ScreeningInput;
  readonly #shelf: ModelShelf;
  readonly #tables: TableLookup;
  readonly #judges: readonly RememberedJudge[];
  readonly #remedies: Remedies;
  readonly #asked = new Map<Survey, AskedRules>();
  readonly #ids = new PointIds();
  readonly #trials: MethodTrials | null;
  readonly #settler = new Settler();

  constructor(input: ScreeningInput) {
    this.#input = input;
    this.rules = readyRules(input.rulebook, input.options);
    this.#shelf = new ModelShelf(input.rulebook, input.options.asOf);
    this.#tables = tablesOn(input.rulebook, input.options.asOf);
    // What is built has been mounted, and the rules on how that is done safely speak of proposals alone.
    this.#trials = input.options.stage === "proposed" ? new MethodTrials(this.rules, input.rulebook, input.site) : null;
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
      const asked = new AskedRules(this.rules, survey, models, () => this.#factsOf(survey));
      this.#asked.set(survey, asked);
      return surveyShown(survey, { notAsked: asked.notAsked, remarks: this.#remarks(survey, unnamed) });
    });
    return headOf(this.#input, this.rules, [...models], surveys);
  }

  *points(): Iterable<PointOnItsWay> {
    for (const survey of this.#input.surveys) yield* this.#pointsOf(survey);
  }

  pointOf(record: PointRecord, survey: Survey): PointOnItsWay {
    const asked = survey.factsAsked.has("sensor_model");
    const model = this.#shelf.modelOf(record.facts, asked);
    return { record, survey, facts: new PointFacts(record.facts, model, this.#tables) };
  }

  /** Whether a rule is asked of a point: its survey has the columns, and its model states what the rule needs. */
  asks({ facts, survey }: PointOnItsWay): (rule: string) => boolean {
    const silent = this.#asked.get(survey)?.silentOn(facts.model);
    return (rule) => !silent?.has(rule);
  }

  /** @param tally - counts what is judged; null where it has been counted before */
  judge(point: PointOnItsWay, tally: Tally | null): PointResult {
    const { facts, record, survey } = point;
    const id = this.#ids.idOf(record);
    const findings: Finding[] = [];
    const open: OpenFinding[] = [];
    const applied: boolean[] = [];
    let verdict: Verdict = "pass";
    const isAsked = this.asks(point);
    const said = this.#judges.map((judge) => (isAsked(judge.ready.rule.id) ? judge.judge(facts) : null));
    for (const [place, ready] of this.rules.entries()) {
      const judged = said[place];
      if (!judged) continue;
      const { rule } = ready;
      tally?.outcome(rule.id, judged.outcome);
      verdict = worst(verdict, weightOf(judged.outcome, rule.undecided));
      applied[place] = judged.outcome !== "not-applicable";
      if (!judged.finding) continue;
      const finding = this.#remedies.added(judged.finding, place, said, point);
      findings.push(finding);
      if (isOpen(finding.outcome)) open.push({ ready, finding });
    }
    for (const finding of this.#builtIn(facts, record)) {
      tally?.outcome(finding.rule, finding.outcome);
      verdict = worst(verdict, weightOf(finding.outcome, "warn"));
      findings.push(finding);
      if (isOpen(finding.outcome)) open.push({ ready: null, finding });
    }
    const { file, sheet, row } = record;
    const isTried = verdict !== "pass" || this.#input.options.allFindings;
    const lacking = this.#asked.get(survey)?.lackingOn(facts.model) ?? new Map();
    let trials: Trials | null = null;
    // Only some outputs tell of methods.
    const tried = (): Trials => {
      trials ??= (isTried && this.#trials?.of({ facts, findings, applied, verdict, lacking })) || NO_TRIALS;
      return trials;
    };
    const isSettled = open.length === 0 || findings.some(({ outcome }) => outcome === "fail");
    const settler = this.#settler;
    let settledBy: readonly string[] | null | undefined;
    const result: PointResult = {
      id,
      ...namesOf(facts),
      file,
      sheet,
      row,
      verdict,
      get methods() {
        return tried().methods;
      },
      get methodAdvised() {
        return tried().methodAdvised;
      },
      get settledBy() {
        if (settledBy === undefined) settledBy = isSettled ? null : settler.settling(open, facts);
        return settledBy;
      },
      findings,
    };
    tally?.point(result);
    return result;
  }

  /** What is not in any rulebook: a point that stands twice, a method that the site does not allow. */
  #builtIn(facts: PointFacts, record: PointRecord): readonly Finding[] {
    const twice = pointTwice(facts, this.#ids.othersOf(record));
    const allowed = methodAllowed(facts, methodsAllowedFor(facts, this.#input.site));
    return [twice, allowed].filter((finding) => finding !== null);
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
