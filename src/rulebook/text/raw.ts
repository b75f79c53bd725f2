import type { Outcome, Stage } from "../../base/index.js";
import type { CommonWords, DecimalSign, FieldWords, Language } from "../../facts/index.js";
import type { Acceptable } from "../book/deviation.js";
import type { ChangeableKind } from "../book/overlay.js";
import type { Basis, Operator } from "../book/rule.js";

/** Data of the files as the schemas let them through: form checked, meaning not yet. */

export type RawScalar = string | number | boolean;

export type RawCondition =
  | { readonly all: readonly RawCondition[] }
  | { readonly any: readonly RawCondition[] }
  | { readonly not: RawCondition }
  | { readonly condition: string }
  | RawComparison;

export interface RawComparison {
  readonly fact: string;
  readonly operator: Operator;
  readonly value: RawScalar | readonly RawScalar[] | { readonly fact: string };
}

export type RawBound =
  | string
  | number
  | { readonly fact: string; readonly times?: number; readonly plus?: string | number };

export interface RawBand {
  readonly below?: RawBound;
  readonly above?: RawBound;
  readonly atOrBelow?: RawBound;
  readonly atOrAbove?: RawBound;
  readonly outside?: readonly [RawBound, RawBound];
  readonly oneOf?: readonly string[];
  readonly noneOf?: readonly string[];
  readonly when?: RawCondition;
}

/** Something in force on [from, until). */
export interface RawDated {
  readonly from: string;
  readonly until: string | null;
  readonly cites: readonly string[];
}

export interface RawLimit extends RawDated {
  readonly reviewBy?: string | null;
  readonly fail?: RawBand | readonly RawBand[];
  readonly warn?: RawBand | readonly RawBand[];
}

export type RawCitations = Readonly<
  Record<
    string,
    {
      readonly basis: Basis;
      readonly says: string;
      readonly source?: string;
      readonly clause?: string;
      readonly readOn?: string;
    }
  >
>;

export interface RawCase {
  readonly name: string;
  readonly given: Readonly<Record<string, unknown>>;
  readonly expect: Outcome;
  readonly missing?: readonly string[];
}

export interface RawRule {
  readonly id: string;
  readonly title: string;
  readonly group?: string;
  readonly sets: readonly string[];
  readonly stages: readonly Stage[];
  readonly appliesWhen?: RawCondition;
  readonly judges?: string | Readonly<Partial<Record<Stage, string>>>;
  readonly limits: readonly RawLimit[];
  readonly citations: RawCitations;
  readonly messages: { readonly fail?: string; readonly warn?: string };
  readonly remedy: { readonly text: string; readonly change: readonly string[] };
  readonly undecided?: "warn" | "fail";
  readonly releases?: "never";
  readonly cases: readonly RawCase[];
  readonly casesGive?: Readonly<Record<string, unknown>>;
}

export interface RawConditionFile {
  readonly id: string;
  readonly title: string;
  readonly when: RawCondition;
}

export interface RawModel {
  readonly id: string;
  readonly title: string;
  readonly alsoWritten?: readonly string[];
  readonly forExamplesOnly?: boolean;
  readonly facts: Readonly<Record<string, readonly (RawDated & { readonly value: RawScalar })[]>>;
  readonly citations: RawCitations;
}

/** A row by fact id. */
export type RawTableRow = Readonly<Record<string, RawScalar | null>>;

export interface RawTable {
  readonly id: string;
  readonly title: string;
  readonly by: readonly string[];
  readonly gives: readonly string[];
  readonly entries: readonly (RawDated & {
    readonly reviewBy?: string | null;
    readonly rows: readonly RawTableRow[];
  })[];
  readonly citations: RawCitations;
}

export interface RawMember {
  readonly sum?: string;
  readonly minimum?: string;
  readonly maximum?: string;
  readonly distinct?: string;
  readonly same?: string;
  readonly count?: true | { readonly where: RawCondition };
  readonly where?: RawCondition;
}

export interface RawGroup {
  readonly id: string;
  readonly title: string;
  readonly key: readonly string[];
  readonly members: Readonly<Record<string, RawMember>>;
}

export interface RawManifest {
  readonly name: string;
  readonly version: string;
  readonly language: string;
  readonly sets: readonly string[];
  readonly defaultSet: string;
  readonly baselineModel: string;
  readonly methods?: {
    readonly lasting: readonly string[];
    readonly gates: readonly string[];
    readonly basis: Basis;
    readonly says: string;
  };
}

export interface RawOverlay {
  readonly name: string;
  readonly version: string;
  readonly over: { readonly name: string; readonly version: string };
}

/** A change file of an overlay. */
export interface RawChange {
  /** One kind, with the id of the thing. */
  readonly changes: Readonly<Partial<Record<ChangeableKind, string>>>;
  /** Whole keys of the file of the thing; null takes a key away. */
  readonly replaces?: Readonly<Record<string, unknown>>;
  readonly addsCases?: readonly RawCase[];
  readonly switchedOff?: true;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
}

export interface RawWords {
  readonly common?: CommonWords;
  readonly fields?: Readonly<Record<string, Partial<FieldWords>>>;
}

/** Facts by id, and beside them the methods that are allowed. */
export type RawStated = Readonly<Record<string, RawScalar | readonly string[]>>;
export interface RawWayAccuracy extends RawDated {
  readonly plusMinus?: string | number;
  readonly percent?: number | string;
}

export interface RawWay {
  readonly id: string;
  readonly title: string;
  readonly words?: Readonly<Partial<Record<Language, readonly string[]>>>;
  readonly only?: readonly string[];
  readonly measures: Readonly<Record<string, readonly RawWayAccuracy[]>>;
  readonly citations: RawCitations;
}

export type RawWaysNamed = Readonly<Record<string, string>>;

/** Statements of a type of machine, or of a machine, and how other facts are measured there. */
export interface RawNarrower {
  readonly measuredBy?: RawWaysNamed;
  readonly [fact: string]: RawScalar | readonly string[] | RawWaysNamed | undefined;
}

export interface RawSite {
  readonly site?: string;
  readonly states?: RawStated;
  readonly measuredBy?: RawWaysNamed;
  readonly machineTypes?: Readonly<Record<string, RawNarrower>>;
  readonly machines?: Readonly<Record<string, RawNarrower>>;
}

export interface RawColumn {
  readonly heading?: string;
  readonly column?: string;
  readonly fact: string;
  readonly unit?: string;
  readonly language?: Language;
  readonly decimalSign?: DecimalSign;
  readonly values?: Readonly<Record<string, string | boolean>>;
  readonly accuracy?: string | number;
  readonly measuredBy?: string;
}

export interface RawSheetWord {
  readonly language?: Language;
  readonly decimalSign?: DecimalSign;
  readonly headingRows?: readonly number[];
  readonly columns?: readonly RawColumn[] | null;
}

export interface RawColumnFile extends RawSheetWord {
  readonly sheets?: Readonly<Record<string, RawSheetWord | string | null>> | null;
}

export interface RawDeviation {
  readonly point: string;
  readonly rule: string;
  readonly outcome: Acceptable;
  readonly limit?: RawScalar | readonly string[];
  readonly value?: RawScalar;
  readonly reason: string;
  readonly acceptedBy: string;
  readonly from: string;
  readonly until: string;
}

export interface RawDeviations {
  readonly deviations: readonly RawDeviation[];
}
