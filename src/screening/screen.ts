import { isOpen, type Verdict } from "../base/index.js";
import type { PointRecord, Survey } from "../records/index.js";
import { type Rule, type SensorModel, tablesOn } from "../rulebook/index.js";
import { AskedRules } from "./asked-rules.js";
import { GroupBook } from "./groups/group-book.js";
import { MachineClasses } from "./groups/machine-classes.js";
import { groupRulesNotAsked, rowsInNoGroup } from "./groups/not-asked-groups.js";
import { headOf, surveyShown } from "./head.js";
import { namesOf, pointIdOf } from "./identity.js";
import type { ScreeningInput } from "./input.js";
import { type ReadyRule, weightOf, worst } from "./judge-point.js";
import { methodAllowed } from "./methods/method-allowed.js";
import { MethodTrials, NO_TRIALS } from "./methods/method-trials.js";
import { methodsAllowedFor } from "./methods/methods-allowed.js";
import { ModelShelf } from "./models.js";
import type { PointFacts, PointOnItsWay } from "./point-facts.js";
import { PointIds } from "./point-ids.js";
import { pointTwice } from "./point-twice.js";
import { readyRules } from "./ready-rules.js";
import { Remedies } from "./remedies/remedies.js";
import { RememberedJudge } from "./remembered-judge.js";
import type { Finding, PointResult, ResultHead, Screening, Summary } from "./result.js";
import { RowsOfRun } from "./rows-of-run.js";
import { type OpenFinding, Settler } from "./settling/settler.js";
import { surveyRemarks } from "./survey-remarks.js";
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
      const problems = head.surveys.reduce((sum, survey) => sum + survey.problems.length, 0);
      summary ??= tally?.summary(problems, run.classes.counts()) ?? null;
      done = true;
    },
    summary: () => {
      if (done && summary !== null) return summary;
      throw new Error(`the points of this run (${rulebook.name}, ${options.set}) are not all judged yet`);
    },
  };
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

/** A run whose points are judged by somebody else: by outcomes alone, which cost less than findings. */
export interface BareRun {
  readonly head: ResultHead;
  /** Rules of points and of groups. */
  readonly rules: readonly ReadyRule[];
  points(): Iterable<PointOnItsWay>;
  /** Which rules are asked of a point. */
  asks(point: PointOnItsWay): (rule: string) => boolean;
  /** What its groups and what no rulebook holds give it. */
  verdictBeside(point: PointOnItsWay): Verdict;
}

/** @throws RangeError if the rulebook has no such set */
export function bareRun(input: ScreeningInput): BareRun {
  const run = new Run(input);
  return {
    head: run.head(),
    rules: run.rules,
    points: () => run.points(),
    asks: (point) => run.asks(point),
    verdictBeside: (point) => run.verdictBeside(point),
  };
}

/** One run over all surveys; judges lazily, so that a hundred thousand points need no room for their findings. */
class Run {
  readonly rules: readonly ReadyRule[];
  readonly groups: GroupBook;
  readonly #input: ScreeningInput;
  readonly #rows: RowsOfRun;
  readonly #judges: readonly RememberedJudge[];
  readonly #remedies: Remedies;
  readonly #asked = new Map<Survey, AskedRules>();
  readonly classes = new MachineClasses();
  readonly #ids = new PointIds();
  readonly #trials: MethodTrials | null;
  readonly #settler = new Settler();

  constructor(input: ScreeningInput) {
    const { rulebook, surveys, options } = input;
    this.#input = input;
    this.rules = readyRules(rulebook, options);
    const shelf = new ModelShelf(rulebook, options.asOf);
    const tables = tablesOn(rulebook, options.asOf);
    this.#rows = new RowsOfRun(surveys, { shelf, tables, groupsOf: (row, record) => this.groups.ofPoint(row, record) });
    this.groups = new GroupBook({
      rulebook,
      rules: this.rules,
      rows: this.#rows.length,
      siteName: this.#siteName(),
      allFindings: options.allFindings,
      rowAt: (row) => this.#rows.at(row),
    });
    // What is built has been mounted, and the rules on how that is done safely speak of proposals alone.
    this.#trials = options.stage === "proposed" ? new MethodTrials(this.rules, rulebook, input.site) : null;
    this.#judges = this.rules
      .filter(({ rule }) => rule.group === null)
      .map((ready) => new RememberedJudge(ready, options.allFindings));
    this.#remedies = new Remedies(this.#judges, shelf, options.stage);
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
      const ofGroups = groupRulesNotAsked(this.groups, survey, stretch);
      const asked = new AskedRules(ofPoints, survey, { models, ofGroups, rows: () => this.#factsOf(survey) });
      this.#asked.set(survey, asked);
      const remarks = [
        ...surveyRemarks(this.#input, survey, unnamed.get(survey) ?? 0),
        ...rowsInNoGroup(this.groups, survey, stretch, asked.silent),
      ];
      return surveyShown(survey, { notAsked: asked.notAsked, remarks });
    });
    const groups = this.groups.shown(
      (row, rule) => this.#asked.get(this.#rows.surveyOf(row))?.silent.has(rule) ?? false,
    );
    return headOf(this.#input, this.rules, models, surveys, groups);
  }

  points(): Iterable<PointOnItsWay> {
    return this.#rows.all();
  }

  /** @throws RangeError for a record that does not stand in the survey, or a survey that is not of the run */
  pointOf(record: PointRecord, survey: Survey): PointOnItsWay {
    return this.#rows.at(this.#rows.rowOf(record, survey));
  }

  /** Whether a rule is asked of a point: its survey has the columns, and its model states what the rule needs. */
  asks({ facts, survey }: PointOnItsWay): (rule: string) => boolean {
    const silent = this.#asked.get(survey)?.silentOn(facts.model);
    return (rule) => !silent?.has(rule);
  }

  /** @param tally - counts what is judged; null where it has been counted before */
  judge(point: PointOnItsWay, tally: Tally | null): PointResult {
    const { facts, record, survey, at } = point;
    const id = this.#ids.idOf(record);
    const findings: Finding[] = [];
    const open: OpenFinding[] = [];
    const applied: boolean[] = [];
    let verdict: Verdict = "pass";
    const isAsked = this.asks(point);
    const take = (rule: Rule, outcome: Finding["outcome"], finding: Finding | null): void => {
      tally?.outcome(rule.id, outcome);
      verdict = worst(verdict, weightOf(outcome, rule.undecided));
      if (finding) findings.push(finding);
    };
    const said = this.#judges.map((judge) => (isAsked(judge.ready.rule.id) ? judge.judge(facts) : null));
    for (const [place, { ready }] of this.#judges.entries()) {
      const judged = said[place];
      if (!judged) continue;
      const { outcome } = judged;
      const finding = judged.finding && this.#remedies.added(judged.finding, place, said, point);
      take(ready.rule, outcome, finding);
      applied[place] = outcome !== "not-applicable";
      if (finding && isOpen(outcome)) open.push({ ready, finding });
    }
    for (const { ready, outcome, finding } of this.groups.judgedOn(at, facts, (rule) => !isAsked(rule))) {
      take(ready.rule, outcome, finding);
      // What is missing may stand in any row of the group: the facts of this point alone cannot tell what settles it.
      if (finding && isOpen(outcome)) open.push({ ready: null, finding });
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
    const trials = (isTried && this.#trials?.of({ facts, findings, applied, verdict, lacking })) || NO_TRIALS;
    const isSettled = open.length === 0 || findings.some(({ outcome }) => outcome === "fail");
    // Plain data: accessors would give every point a shape of its own, which the engine frees late.
    const result: PointResult = {
      id,
      ...namesOf(facts),
      file,
      sheet,
      row,
      verdict,
      methods: trials.methods,
      methodAdvised: trials.methodAdvised,
      settledBy: isSettled ? null : this.#settler.settling(open, facts),
      findings,
    };
    tally?.point(result);
    return result;
  }

  verdictBeside(point: PointOnItsWay): Verdict {
    const { facts, record, at } = point;
    const isAsked = this.asks(point);
    let verdict: Verdict = "pass";
    for (const { ready, outcome } of this.groups.judgedOn(at, facts, (rule) => !isAsked(rule))) {
      verdict = worst(verdict, weightOf(outcome, ready.rule.undecided));
    }
    for (const { outcome } of this.#builtIn(facts, record)) verdict = worst(verdict, weightOf(outcome, "warn"));
    return verdict;
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
    for (const point of this.#rows.of(survey)) yield point.facts;
  }
}

/** Whether a result reached the level at which a run is to end with exit code 1. */
export function reachesLevel(point: PointResult, level: "fail" | "warn" | "undecided"): boolean {
  if (level === "undecided") return point.verdict === "fail" || point.findings.some((f) => isOpen(f.outcome));
  return level === "warn" ? point.verdict !== "pass" : point.verdict === "fail";
}
