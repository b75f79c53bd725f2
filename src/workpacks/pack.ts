import type { Outcome, PlainDay, Verdict } from "../base/index.js";
import type { Accepted, FactShown, ResultHead } from "../screening/index.js";
import type { HeldBack } from "./release.js";

/** How far a value may lie off the plan without any rule saying worse of the point; an end is null where none is near. */
export interface AllowedBand {
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly unit: string | null;
  /** Rules that set the lower end, and what they say beyond it. */
  readonly lowestBy: readonly BandRule[];
  readonly highestBy: readonly BandRule[];
}

export interface BandRule {
  readonly rule: string;
  readonly outcome: Outcome;
}

/** A value of a job with where it comes from. One that is not known is a box to be filled in. */
export interface JobValue {
  /** What it is, in words. */
  readonly name: string;
  readonly fact: FactShown;
  readonly band: AllowedBand | null;
}

/** One thing to do, with the values it takes. */
export interface JobLine {
  readonly text: string;
  readonly values: readonly JobValue[];
  /** Nobody goes on before this is signed off. */
  readonly hold: boolean;
}

/** The parts of a job in the order of the work. */
export type JobPart = "place" | "seat" | "hole" | "bond" | "fit" | "cable" | "supply";

export interface JobSection {
  readonly part: JobPart;
  readonly title: string;
  readonly lines: readonly JobLine[];
}

/** Something to measure or to check, and to write down; read back as the fact at the stage installed. */
export interface JobRecord {
  readonly fact: string;
  readonly name: string;
  readonly unit: string | null;
  /** To be taken once the machine runs again, warm and steady. */
  readonly whenRunning: boolean;
  /** What is planned or to be expected; null where nothing is. */
  readonly expected: JobValue | null;
}

/** A permit, or a point of the work at which somebody has to sign before it goes on. */
export interface HoldPoint {
  readonly kind: "permit" | "hold";
  readonly text: string;
  /** What the survey says of it, with the names of the points of which it says so. */
  readonly stated: readonly { readonly points: readonly string[]; readonly values: readonly JobValue[] }[];
}

/** A tool or a material; amounts of the same thing can be added up. */
export interface SupplyItem {
  readonly kind: "tool" | "material";
  readonly name: string;
  /** Of a tool null: it is used again. */
  readonly amount: number | null;
  /** "pieces" or "m"; null for a tool. */
  readonly unit: string | null;
  /** Points that need it, but do not say how much. */
  readonly notKnown: number;
}

/** The verdict and the files that a release rests on. */
export interface PackBasis {
  readonly program: ResultHead["program"];
  /** Digest of the run. */
  readonly run: string;
  readonly asOf: PlainDay;
  readonly set: string;
  readonly rulebook: ResultHead["rulebook"];
  readonly site: string | null;
  readonly surveys: readonly { readonly file: string; readonly digest: string }[];
  /** File of accepted deviations; null where none was given. */
  readonly deviations: { readonly file: string; readonly digest: string } | null;
}

/** A finding that somebody has accepted. */
export interface AcceptedOnPoint extends Accepted {
  readonly rule: string;
  readonly outcome: Outcome;
  readonly message: string;
}

/** The work at one point. */
export interface PointJob {
  readonly id: string;
  /** As the survey names it. */
  readonly point: string;
  /** Where on the machine, in words. */
  readonly place: string;
  readonly assetTag: string | null;
  readonly component: string | null;
  readonly bearingPosition: string | null;
  readonly direction: string | null;
  /** Name of the site where the row states it itself. */
  readonly siteStated: string | null;
  /** The point's own id in the survey; null where its name is made of its parts. */
  readonly pointId: string | null;
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly verdict: Verdict;
  readonly accepted: readonly AcceptedOnPoint[];
  readonly method: string | null;
  readonly sections: readonly JobSection[];
  readonly records: readonly JobRecord[];
  readonly supplies: readonly SupplyItem[];
}

/** The work on one machine in one outage. */
export interface WorkPack {
  /** The same for the same site, machine and outage; safe as a part of a file name. */
  readonly id: string;
  readonly machine: string;
  readonly assetTag: string | null;
  /** Where the machine stands, as far as the survey says. */
  readonly where: readonly JobValue[];
  /** First day of the outage; null where the survey states none. */
  readonly outage: PlainDay | null;
  readonly holdPoints: readonly HoldPoint[];
  readonly points: readonly PointJob[];
  readonly supplies: readonly SupplyItem[];
}

/** All that is needed in one outage. */
export interface OutageTotal {
  readonly outage: PlainDay | null;
  readonly packs: readonly string[];
  readonly points: number;
  readonly supplies: readonly SupplyItem[];
}

/** A point on which no work may be planned, and why. */
export interface HeldBackPoint {
  readonly id: string | null;
  readonly point: string;
  readonly machine: string | null;
  /** Component, bearing position and direction in words; the point's name where none is known. */
  readonly place: string;
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly verdict: Verdict;
  readonly reasons: readonly HeldBack[];
}

/** The work of a whole run. */
export interface WorkPacks {
  readonly basis: PackBasis;
  readonly cautions: readonly string[];
  /** What holds back every point, said once; null where nothing does. */
  readonly allHeldBack: HeldBack | null;
  readonly packs: readonly WorkPack[];
  readonly outages: readonly OutageTotal[];
  readonly heldBack: readonly HeldBackPoint[];
}
