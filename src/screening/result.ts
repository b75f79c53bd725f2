import type { CellPlace, Outcome, PlainDay, Stage, Verdict } from "../base/index.js";
import type { UnknownReason } from "../facts/index.js";
import type { ColumnReading, ImportProblem, SheetReading } from "../records/index.js";
import type { BandKind, Citation, LimitSpoken, Margin } from "../rulebook/index.js";

/** A fact as a finding shows it. Numbers: `value` if single, else `lowest` and `highest` (null for no bound). */
export interface FactShown {
  readonly fact: string;
  readonly value: number | string | boolean | null;
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly unit: string | null;
  /** Stated accuracy, ±, in `unit`. */
  readonly accuracy: number | null;
  /** What was taken for granted, in words. */
  readonly assumed: string | null;
  /** Cells it was read from; of a derived fact, the cells of the facts under it. */
  readonly cells: readonly CellPlace[];
  /** Line of the site, model or table file that states it. */
  readonly origin: { readonly file: string; readonly line: number } | null;
}

/** An accuracy, plus or minus. */
export interface MeasureTo {
  readonly accuracy: number;
  /** Unit of the fact. */
  readonly unit: string;
}

/** A survey, site or model fact that would have to be known (better), or one for which a table has no value. */
export interface MissingFact {
  readonly fact: string;
  readonly reason: UnknownReason;
  /**
   * Of a number that is too close to a limit: how accurately it must be measured again to settle the rule, if the
   * reading stays the same. Null where no accuracy of this fact alone would, or where it sits on the limit itself.
   */
  readonly measureTo: MeasureTo | null;
}

/** A change of one fact by which a finding would pass, or no longer apply: the smallest in its direction. */
export interface ChangeFound {
  readonly fact: string;
  /** What it is now, a number in `unit`; null where that is no single value. */
  readonly from: number | string | boolean | null;
  readonly to: number | string;
  readonly unit: string | null;
  /** Rules of the run that would then say worse of the same point than they do now. */
  readonly breaks: readonly string[];
}

/** What one rule says of one point, with its trace. Pass and not-applicable are listed only on request. */
export interface Finding {
  readonly rule: string;
  readonly outcome: Outcome;
  readonly atBest: Outcome | null;
  /** The judged fact first. */
  readonly facts: readonly FactShown[];
  readonly limit: LimitSpoken | null;
  readonly margin: Margin | null;
  readonly missing: readonly MissingFact[];
  readonly message: string | null;
  /** In words: the changes that were found, then what the rule advises. */
  readonly remedy: string | null;
  /** Of a fail or a warning: changes of one fact that would do, those that make no other rule worse first. */
  readonly changes: readonly ChangeFound[];
  /** Id of the group that the finding refers to; null for a finding of the point's own. */
  readonly group: string | null;
}

/**
 * One mounting method in place of the proposed one, with all rules of the run. Facts that belong to one method (hole
 * depth, setting time) stay as the survey has them; those that it lacks leave rules undecided.
 */
export interface MethodTried {
  readonly method: string;
  readonly proposed: boolean;
  /** The site allows it here, or says nothing about methods. */
  readonly allowed: boolean;
  /** By the rules asked; a method of which nothing was asked passes easily. */
  readonly verdict: Verdict;
  /** Rules of the run by what they say, in the order of the rulebook. */
  readonly fails: readonly string[];
  readonly warns: readonly string[];
  readonly undecided: readonly string[];
  /** Survey, site and model facts that the undecided ones are short of. */
  readonly missing: readonly string[];
  /** Rules that put this very method to the test: they name it beside other facts, and apply. */
  readonly asked: readonly string[];
  /** Rules that concern this method and that the survey cannot be asked for lack of a column. */
  readonly notAsked: readonly string[];
}

/** The method that would pass, or the one that comes closest. */
export interface MethodAdvised {
  readonly method: string;
  readonly verdict: Verdict;
  /** It would not pass the rules asked, or a rule that gates it was not asked. */
  readonly closest: boolean;
}

/** One point with its verdict. */
export interface PointResult {
  /** UUID version 5, or null where the row says too little. */
  readonly id: string | null;
  /** The point as the survey names it, or null. */
  readonly point: string | null;
  readonly machine: string | null;
  /** Where on the machine, as the catalogue's words; null where the row does not say. */
  readonly component: string | null;
  readonly bearingPosition: string | null;
  readonly direction: string | null;
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly verdict: Verdict;
  /**
   * The proposed method and those that the site allows, best first. Of proposals that do not pass, and on request of
   * all; null for other points and for what is built.
   */
  readonly methods: readonly MethodTried[] | null;
  /** The best of them that was put to the test; null where the point passes, or none was. */
  readonly methodAdvised: MethodAdvised | null;
  /**
   * The fewest facts that, once known, surely settle the verdict; null where nothing is undecided, where the point
   * fails whatever they are, and where no fact would settle it.
   */
  readonly settledBy: readonly string[] | null;
  readonly findings: readonly Finding[];
}

/** A rule that this survey could not be asked for lack of a column. */
export interface NotAsked {
  readonly rule: string;
  /** Id of the sensor model of whose points it is not asked; null where it is not asked of the whole survey. */
  readonly model: string | null;
  /** Facts that have no column and are stated nowhere, or that a sensor model does not state. */
  readonly facts: readonly string[];
  readonly text: string;
}

/** One survey file as results tell of it. */
export interface SurveyShown {
  readonly file: string;
  readonly digest: string;
  readonly sheets: readonly SheetReading[];
  readonly columns: readonly ColumnReading[];
  readonly problems: readonly ImportProblem[];
  readonly notAsked: readonly NotAsked[];
}

/** A sensor model that points were judged by, with its values in force. */
export interface ModelShown {
  readonly id: string;
  readonly title: string;
  readonly facts: readonly {
    readonly fact: string;
    readonly value: number | string | boolean | null;
    readonly unit: string | null;
    readonly from: PlainDay;
    readonly cites: readonly string[];
    readonly origin: { readonly file: string; readonly line: number };
  }[];
  readonly citations: readonly Citation[];
}

/** A table in force that rules of the run look up; the rows stand in the rulebook, findings show those that were used. */
export interface TableShown {
  readonly id: string;
  readonly title: string;
  /** Facts it is looked up by. */
  readonly by: readonly string[];
  /** Facts it gives. */
  readonly gives: readonly string[];
  readonly from: PlainDay;
  readonly until: PlainDay | null;
  readonly reviewBy: PlainDay | null;
  /** The date to review it has passed. */
  readonly reviewOverdue: boolean;
  readonly citations: readonly Citation[];
  readonly origin: { readonly file: string; readonly line: number };
}

/** One limit of a rule in force on the day. */
export interface LimitShown {
  readonly outcome: "fail" | "warn";
  readonly is: BandKind;
  readonly unit: string | null;
  /** One bound, two for `outside`: a number in `unit`, or a fact times a factor plus a shift in `unit`. */
  readonly bounds: readonly {
    readonly value: number | null;
    readonly fact: string | null;
    readonly times: number;
    readonly plus: number;
  }[];
  /** Of `oneOf` and `noneOf`. */
  readonly choices: readonly string[];
  /** Of `when`, in words. */
  readonly condition: string | null;
  readonly from: PlainDay;
  readonly until: PlainDay | null;
  readonly reviewBy: PlainDay | null;
  readonly cites: readonly string[];
}

/** A rule that was applied. */
export interface RuleShown {
  readonly id: string;
  readonly title: string;
  readonly sets: readonly string[];
  readonly undecided: "warn" | "fail";
  /** The fact its limits speak of at the stage of the run, or null. */
  readonly judged: string | null;
  /** When it applies, in words; null: always. */
  readonly appliesWhen: string | null;
  readonly limits: readonly LimitShown[];
  readonly citations: readonly Citation[];
  /** The date to review its limit has passed. */
  readonly reviewOverdue: boolean;
  readonly remedy: string;
}

/** What a person settled about the reading of the surveys; it changes what is read. */
export interface ReadingSettled {
  readonly columnFile: { readonly file: string; readonly digest: string } | null;
  readonly wordFiles: readonly { readonly file: string; readonly digest: string }[];
  /** Options as written on the command line (--language de). */
  readonly options: readonly string[];
}

/** What stands before the points: said once, not per finding. */
export interface ResultHead {
  readonly program: { readonly name: string; readonly version: string };
  /** SHA-256 over program version, rulebook, surveys, site file, column file, word files and options. */
  readonly digest: string;
  readonly asOf: PlainDay;
  readonly stage: Stage;
  readonly set: string;
  readonly rulebook: { readonly name: string; readonly version: string; readonly digest: string };
  readonly site: { readonly name: string | null; readonly file: string | null; readonly digest: string | null };
  /** What a person settled about the reading of the surveys. */
  readonly reading: ReadingSettled;
  readonly surveys: readonly SurveyShown[];
  /** Files left out on the user's word, with the reason. */
  readonly skipped: readonly { readonly file: string; readonly text: string }[];
  readonly models: readonly ModelShown[];
  readonly tables: readonly TableShown[];
  readonly rules: readonly RuleShown[];
  readonly groups: readonly never[];
  readonly cautions: readonly string[];
}

/** Outcomes of one rule over all points. */
export interface RuleCounts {
  readonly rule: string;
  readonly pass: number;
  readonly warn: number;
  readonly fail: number;
  readonly undecided: number;
  readonly notApplicable: number;
  readonly noLimitInForce: number;
}

/** What stands after the points. */
export interface Summary {
  readonly points: number;
  readonly pass: number;
  readonly warn: number;
  readonly fail: number;
  /** Points that warn only because something is undecided. */
  readonly warnOnlyUndecided: number;
  readonly problems: number;
  readonly byRule: readonly RuleCounts[];
  /** Facts that stand in the way, with the number of points that each leaves open; most first. */
  readonly toMeasure: readonly { readonly fact: string; readonly points: number }[];
  /** What to fetch one after the other, each step the facts that settle the most further points per fact. */
  readonly settling: readonly SettlingStep[];
  readonly openPoints: OpenPoints;
  /** For points that do not pass: by another method than the proposed one, how many would pass or come closest. */
  readonly otherMethods: readonly OtherMethod[];
}

/** One step in settling what is open. */
export interface SettlingStep {
  readonly facts: readonly string[];
  /** Points whose verdict is settled by this step, with what was fetched before. */
  readonly points: number;
  readonly pointsSoFar: number;
}

/** Points with something undecided. */
export interface OpenPoints {
  /** The verdict is open, and facts would settle it. */
  readonly toSettle: number;
  /** They fail whatever the missing facts are, so that their verdict is settled. */
  readonly failAnyway: number;
  /** No fact would settle them: no limit is in force on the day. */
  readonly notByFacts: number;
}

/** How often another method than the proposed one is advised. */
export interface OtherMethod {
  readonly method: string;
  readonly wouldPass: number;
  readonly closest: number;
}

/** A screening run: the head, the points as they are judged (iterate once), and the summary when all are done. */
export interface Screening {
  readonly head: ResultHead;
  points(): IterableIterator<PointResult>;
  /** @throws Error before all points have been iterated */
  summary(): Summary;
}
