import { isOpen, type Verdict } from "../base/index.js";
import type { PointRecord, Survey } from "../records/index.js";
import { type Margin, type Rule, type SensorModel, tablesOn } from "../rulebook/index.js";
import { AskedRules } from "./asked-rules.js";
import { isAccepted } from "./deviations/covering.js";
import { DeviationsOnPoints } from "./deviations/deviations-on-points.js";
import { showDeviations } from "./deviations/show-deviations.js";
import { GroupBook } from "./groups/group-book.js";
import { MachineClasses } from "./groups/machine-classes.js";
import { groupRulesNotAsked, rowsInNoGroup } from "./groups/not-asked-groups.js";
import { headOf, surveyShown } from "./head.js";
import { namesOf, pointIdOf } from "./identity.js";
import { ENDING_WITHIN, type ScreeningInput } from "./input.js";
import { type ReadyRule, weightOf, worst } from "./judge-point.js";
import { METHOD_ALLOWED, methodAllowed } from "./methods/method-allowed.js";
import { type LackingFacts, MethodTrials, NO_TRIALS } from "./methods/method-trials.js";
import { methodsAllowedFor } from "./methods/methods-allowed.js";
import { ModelShelf } from "./models.js";
import type { PointFacts, PointOnItsWay } from "./point-facts.js";
import { PointIds } from "./point-ids.js";
import { pointTwice } from "./point-twice.js";
import { readyRules } from "./ready-rules.js";
import { Remedies } from "./remedies/remedies.js";
import { type Judged, RememberedJudge } from "./remembered-judge.js";
import type { Finding, PointResult, ResultHead } from "./result.js";
import { RowsOfRun } from "./rows-of-run.js";
import { type OpenFinding, Settler } from "./settling/settler.js";
import { surveyRemarks } from "./survey-remarks.js";
import type { Tally } from "./tally.js";

const NONE: ReadonlySet<string> = new Set();
const NOTHING_LACKING: LackingFacts = new Map();

/** One run over all surveys; judges lazily, so that a hundred thousand points need no room for their findings. */
export class Run {
  readonly rules: readonly ReadyRule[];
  readonly groups: GroupBook;
  readonly #input: ScreeningInput;
  readonly #rows: RowsOfRun;
  readonly #judges: readonly RememberedJudge[];
  readonly #said: (Judged | null)[];
  readonly #applied: boolean[];
  readonly #places = new WeakMap<ReadonlySet<string>, readonly number[]>();
  readonly #remedies: Remedies;
  readonly #asked = new Map<Survey, AskedRules>();
  readonly classes = new MachineClasses();
  readonly #ids = new PointIds();
  readonly #trials: MethodTrials | null;
  readonly #settler = new Settler();
  readonly #deviations: DeviationsOnPoints | null;

  constructor(input: ScreeningInput) {
    const { rulebook, surveys, options, deviations = null } = input;
    this.#input = input;
    this.#deviations = deviations && new DeviationsOnPoints(deviations, options.asOf);
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
    this.#said = this.#judges.map(() => null);
    this.#applied = this.#judges.map(() => false);
    this.#remedies = new Remedies(this.#judges, shelf, options.stage);
  }

  /** Goes through all points once, for what can be told of a point only when all are known. */
  gather(): { readonly models: readonly SensorModel[]; readonly unnamed: ReadonlyMap<Survey, number> } {
    const models = new Set<SensorModel>();
    const unnamed = new Map<Survey, number>();
    const siteName = this.#siteName();
    for (const point of this.points()) {
      const { facts, record, survey, at } = point;
      if (facts.model.ok) models.add(facts.model.model);
      const id = this.#ids.add(record, pointIdOf(facts, siteName));
      if (id === null) unnamed.set(survey, (unnamed.get(survey) ?? 0) + 1);
      this.#deviations?.add(point, id);
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
    const groups = this.groups.shown((row, rule) => this.#isSilent(row, rule));
    return headOf(this.#input, this.rules, models, surveys, groups, this.#deviationsShown());
  }

  /** Whether a rule of groups is not asked of a row. */
  #isSilent(row: number, rule: string): boolean {
    return this.#asked.get(this.#rows.surveyOf(row))?.silent.has(rule) ?? false;
  }

  /** Counts how far each group lies from the limits of its rules; once, whatever the number of its rows. */
  countGroups(tally: Tally): void {
    for (const { rule, outcome, margin } of this.groups.judgedOnce((row, id) => this.#isSilent(row, id))) {
      tally.group(rule, outcome, margin);
    }
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

  /** Places of the rules of points that are asked of one; the same list for all points of a survey and model. */
  #placesAsked({ facts, survey }: PointOnItsWay): readonly number[] {
    const silent = this.#asked.get(survey)?.silentOn(facts.model) ?? NONE;
    const known = this.#places.get(silent);
    if (known) return known;
    const places = this.#judges.flatMap(({ ready }, place) => (silent.has(ready.rule.id) ? [] : [place]));
    this.#places.set(silent, places);
    return places;
  }

  #judgeAt(place: number): RememberedJudge {
    return this.#judges[place] as RememberedJudge;
  }

  /** @param tally - counts what is judged; null where it has been counted before */
  judge(point: PointOnItsWay, tally: Tally | null): PointResult {
    const { facts, record, survey, at } = point;
    const id = this.#ids.idOf(record);
    const findings: Finding[] = [];
    const open: OpenFinding[] = [];
    let verdict: Verdict = "pass";
    const isAsked = this.asks(point);
    const places = this.#placesAsked(point);
    // Nobody keeps them: the same lists serve every point.
    const said = this.#said.fill(null);
    const applied = this.#applied.fill(false);
    const take = (rule: Rule, outcome: Finding["outcome"], finding: Finding | null, margin?: Margin | null): void => {
      tally?.outcome(rule.id, outcome, margin);
      verdict = worst(verdict, weightOf(outcome, rule.undecided));
      if (finding) findings.push(finding);
    };
    for (const place of places) said[place] = this.#judgeAt(place).judge(facts);
    for (const place of places) {
      const judged = said[place] as Judged;
      const { ready } = this.#judgeAt(place);
      const { outcome } = judged;
      const finding = judged.finding && this.#remedies.added(judged.finding, place, said, point);
      take(ready.rule, outcome, finding, judged.margin);
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
    const marked = this.#deviations?.mark(record, findings) ?? findings;
    const { file, sheet, row } = record;
    const isTried = verdict !== "pass" || this.#input.options.allFindings;
    const lacking = this.#asked.get(survey)?.lackingOn(facts.model) ?? NOTHING_LACKING;
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
      accepted: this.#deviations !== null && isAccepted(marked),
      methods: trials.methods,
      methodAdvised: trials.methodAdvised,
      settledBy: isSettled ? null : this.#settler.settling(open, facts),
      findings: marked,
    };
    tally?.point(result, facts);
    return result;
  }

  /** To be asked once it is settled which rules are asked of which points. */
  #deviationsShown(): ResultHead["deviations"] {
    const { asOf, endingWithin = ENDING_WITHIN } = this.#input.options;
    if (this.#deviations === null) return null;
    this.#deviations.checkClear();
    const builtIn = this.#input.site?.methodsAllowed ? [METHOD_ALLOWED] : [];
    const ofRun = new Set([...builtIn, ...this.rules.map(({ rule }) => rule.id)]);
    return showDeviations(this.#deviations, {
      asOf,
      endingWithin,
      isAsked: (rule, point) => ofRun.has(rule) && this.asks(point)(rule),
      judge: (point) => this.judge(point, null),
    });
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
