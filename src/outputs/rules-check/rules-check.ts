import type { PlainDay, Stage, TextPlace } from "../../base/index.js";
import type { AlterationReport, CoverageReport } from "../../proving/index.js";
import type { FileFinding } from "../../rulebook/index.js";

/** A mistake in a rulebook with the line in which it stands; null where there is no such line. */
export interface Mistake extends FileFinding {
  readonly lineText: string | null;
}

/** A case that did not come out as it expects. */
export interface WrongCase {
  readonly rule: string;
  readonly name: string;
  readonly stage: Stage;
  readonly difference: string;
  readonly at: TextPlace;
}

/** A limit in force whose day of review has passed; it still holds. */
export interface ReviewDue {
  readonly rule: string;
  readonly reviewBy: PlainDay;
  readonly at: TextPlace;
}

/** What checking a rulebook showed. Nothing else is there while a mistake keeps it from loading. */
export interface RulesCheck {
  readonly mistakes: readonly Mistake[];
  readonly rulebook: {
    readonly name: string;
    readonly version: string;
    readonly digest: string;
    /** What lies over it, the lowest first. */
    readonly overlays: readonly { readonly name: string; readonly version: string; readonly digest: string }[];
    readonly switchedOff: readonly string[];
    readonly rules: number;
    readonly models: number;
    readonly tables: number;
  } | null;
  readonly cases: { readonly runs: number; readonly wrong: readonly WrongCase[] } | null;
  readonly reviewsDue: readonly ReviewDue[];
  /** Null where it was not asked for. */
  readonly coverage: CoverageReport | null;
  readonly alterations: AlterationReport | null;
}
