import { isOpen, type Verdict } from "../base/index.js";
import type { ImportProblem, PointRecord, Survey } from "../records/index.js";
import { compileRule, type Rule, type Rulebook, type SensorModel } from "../rulebook/index.js";
import { GroupBook } from "./groups/group-book.js";
import { MachineClasses } from "./groups/machine-classes.js";
import { groupRulesNotAsked, rowsInNoGroup } from "./groups/not-asked-groups.js";
import { headOf, surveyShown } from "./head.js";
import { namesOf, pointIdOf } from "./identity.js";
import type { ScreeningInput, ScreeningOptions } from "./input.js";
import { type ReadyRule, weightOf, worst } from "./judge-point.js";
import { ModelShelf } from "./models.js";
import { rulesNotAsked } from "./not-asked.js";
import type { PointFacts, PointOnItsWay } from "./point-facts.js";
import { PointIds } from "./point-ids.js";
import { POINT_TWICE, pointTwice } from "./point-twice.js";
import { RememberedJudge } from "./remembered-judge.js";
import type { Finding, PointResult, ResultHead, Screening } from "./result.js";
import { RowsOfRun } from "./rows-of-run.js";
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
      const problems = head.surveys.reduce((sum, survey) => sum + survey.problems.length, 0);
      return tally.summary(problems, run.classes.counts());
    },
  };
}

/** The rules of a set, ready for a stage and a day. */
function readyRules(
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

/** The points of a run with all their facts, its groups and its rules; the points are not judged. */
export function factsOfRun(input: ScreeningInput): {
  readonly points: Iterable<PointOnItsWay>;
  readonly groups: GroupBook;
  readonly rules: readonly ReadyRule[];
} {
  const run = new Run(input);
  run.gather();
  return { points: run.points(), groups: run.groups, rules: run.rules };
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
  return { head, judge: (record) => run.judge(run.pointOf(record), uncounted) };
}

/** One run over all surveys; judges lazily, so that a hundred thousand points need no room for their findings. */
class Run {
  readonly rules: readonly ReadyRule[];
  readonly groups: GroupBook;
  readonly #input: ScreeningInput;
  readonly #rows: RowsOfRun;
  readonly #judges: readonly RememberedJudge[];
  readonly #notAsked = new Map<Survey, ReadonlySet<string>>();
  readonly classes = new MachineClasses();
  readonly #ids = new PointIds();

  constructor(input: ScreeningInput) {
    const { rulebook, surveys, options } = input;
    this.#input = input;
    this.rules = readyRules(rulebook, options);
    const shelf = new ModelShelf(rulebook, options.asOf);
    this.#rows = new RowsOfRun(surveys, shelf, (row, record) => this.groups.ofPoint(row, record));
    this.groups = new GroupBook({
      rulebook,
      rules: this.rules,
      rows: this.#rows.length,
      siteName: this.#siteName(),
      allFindings: options.allFindings,
      rowAt: (row) => this.#rows.at(row),
    });
    this.#judges = this.rules
      .filter(({ rule }) => rule.group === null)
      .map((ready) => new RememberedJudge(ready, options.allFindings));
  }

  /** Goes through all points once, for what can be told of a point only when all are known. */
  gather(): { readonly models: readonly SensorModel[]; readonly unnamed: ReadonlyMap<Survey, number> } {
    const models = new Set<SensorModel>();
    const unnamed = new Map<Survey, number>();
    const siteName = this.#siteName();
    for (const { facts, record, survey, at } of this.points()) {
      if (facts.model.ok) models.add(facts.model.model);
      const id = this.#ids.add(record, pointIdOf(facts, siteName));
      if (id === null) unnamed.set(survey, (unnamed.get(survey) ?? 0) + 1);
      this.groups.add(at, facts);
      this.classes.add(facts, siteName);
    }
    this.groups.settle();
    return { models: [...models], unnamed };
  }

  head(): ResultHead {
    const { models, unnamed } = this.gather();
    const ofPoints = this.#judges.map(({ ready }) => ready);
    const surveys = this.#input.surveys.map((survey) => {
      const stretch = this.#rows.stretchOf(survey);
      const notAsked = [
        ...rulesNotAsked(ofPoints, survey, () => this.#factsOf(survey)),
        ...groupRulesNotAsked(this.groups, survey, stretch),
      ];
      const silent = new Set(notAsked.map(({ rule }) => rule));
      this.#notAsked.set(survey, silent);
      const remarks = [
        ...this.#remarks(survey, unnamed.get(survey) ?? 0),
        ...rowsInNoGroup(this.groups, survey, stretch, silent),
      ];
      return surveyShown(survey, { notAsked, remarks });
    });
    const groups = this.groups.shown((row, rule) => this.#notAsked.get(this.#rows.surveyOf(row))?.has(rule) ?? false);
    return headOf(this.#input, this.rules, models, surveys, groups);
  }

  points(): Iterable<PointOnItsWay> {
    return this.#rows.all();
  }

  /** @throws RangeError for a record that is in none of the surveys of the run */
  pointOf(record: PointRecord): PointOnItsWay {
    return this.#rows.at(this.#rows.rowOf(record));
  }

  judge({ facts, record, survey, at }: PointOnItsWay, tally: Tally): PointResult {
    const id = this.#ids.idOf(record);
    const findings: Finding[] = [];
    let verdict: Verdict = "pass";
    const silent = this.#notAsked.get(survey);
    const take = (rule: Rule, outcome: Finding["outcome"], finding: Finding | null): void => {
      tally.outcome(rule.id, outcome);
      verdict = worst(verdict, weightOf(outcome, rule.undecided));
      if (finding) findings.push(finding);
    };
    for (const judge of this.#judges) {
      const { rule } = judge.ready;
      if (silent?.has(rule.id)) continue;
      const { outcome, finding } = judge.judge(facts);
      take(rule, outcome, finding);
    }
    for (const { ready, outcome, finding } of this.groups.judgedOn(at, facts, (rule) => silent?.has(rule) ?? false)) {
      take(ready.rule, outcome, finding);
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
    for (const point of this.#rows.of(survey)) yield point.facts;
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
