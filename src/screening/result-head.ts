import type { CellPlace, PlainDay, Stage } from "../base/index.js";
import type { ColumnReading, ImportProblem, SheetReading } from "../records/index.js";
import type { BandKind, Citation } from "../rulebook/index.js";
import type { DeviationsShown } from "./deviations/deviation-shown.js";
import type { Finding } from "./finding.js";
import type { ChangedBy, RulebookShown } from "./rulebook-shown.js";

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
  /** `never`: no deviation from it is accepted, because somebody can be hurt. */
  readonly releases: "never" | null;
  /** The fact its limits speak of at the stage of the run, or null. */
  readonly judged: string | null;
  /** When it applies, in words; null: always. */
  readonly appliesWhen: string | null;
  readonly limits: readonly LimitShown[];
  readonly citations: readonly Citation[];
  /** The date to review its limit has passed. */
  readonly reviewOverdue: boolean;
  readonly remedy: string;
  /** Name of the overlay that added it; null for a rule of the rulebook. */
  readonly addedBy: string | null;
  /** The overlays that changed it, the lowest first; mostly none. */
  readonly changedBy: readonly ChangedBy[];
}

/** A row of a group. */
export interface GroupRow {
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  /** The point as the survey names it, or null. */
  readonly point: string | null;
}

/** A fact that the rows of a group ought to state alike and do not. */
export interface Disagreement {
  readonly fact: string;
  /** Each value in words with the number of rows that state it, and the cells of the first of them. */
  readonly values: readonly {
    readonly value: string;
    readonly rows: number;
    readonly cells: readonly (CellPlace & { readonly file: string })[];
  }[];
}

/** Rows that share a key, judged as a whole; every finding counts in the verdict of each row. */
export interface GroupShown {
  /** Kind and key ("supply: PSU 1"); the same whatever the order of rows and files. */
  readonly id: string;
  /** Id of the group file. */
  readonly kind: string;
  /** What the rows have in common, in words. */
  readonly title: string;
  /** Facts and values that the rows share; the site only where a row states it. */
  readonly key: readonly { readonly fact: string; readonly value: string }[];
  readonly rows: readonly GroupRow[];
  readonly disagreements: readonly Disagreement[];
  /** Findings like those of points, without cells. */
  readonly findings: readonly Finding[];
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
  /** SHA-256 over program version, rulebook, surveys, site file, deviations, column file, word files and options. */
  readonly digest: string;
  readonly asOf: PlainDay;
  readonly stage: Stage;
  readonly set: string;
  readonly rulebook: RulebookShown;
  readonly site: { readonly name: string | null; readonly file: string | null; readonly digest: string | null };
  /** What a person settled about the reading of the surveys. */
  readonly reading: ReadingSettled;
  /** Accepted deviations and how they stand; null where none were handed in. */
  readonly deviations: DeviationsShown | null;
  readonly surveys: readonly SurveyShown[];
  /** Files left out on the user's word, with the reason. */
  readonly skipped: readonly { readonly file: string; readonly text: string }[];
  readonly models: readonly ModelShown[];
  readonly tables: readonly TableShown[];
  readonly rules: readonly RuleShown[];
  /** Rows that share a key, where a rule of groups has something to list; of a kind in the order of their ids. */
  readonly groups: readonly GroupShown[];
  readonly cautions: readonly string[];
}
