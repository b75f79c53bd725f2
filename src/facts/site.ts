import type { StatedAccuracy } from "./accuracy.js";
import type { KnownFact } from "./state.js";

/** Facts stated once, by id, each with the file and line where it stands. */
export type StatedFacts = ReadonlyMap<string, KnownFact>;

/** Mounting methods that a site allows, and the line that says so. */
export interface MethodsAllowed {
  readonly methods: readonly string[];
  readonly file: string;
  readonly line: number;
}

/** What a site file says of the methods it allows; the narrower list stands in for the wider one as a whole. */
export interface MethodStatements {
  readonly wholeSite: MethodsAllowed | null;
  readonly byMachineType: ReadonlyMap<string, MethodsAllowed>;
  readonly byMachine: ReadonlyMap<string, MethodsAllowed>;
}

/** By fact: the accuracy of the way in which it is measured there. */
export type StatedWays = ReadonlyMap<string, StatedAccuracy>;

/**
 * What a site file states for the whole site, for a type of machine, and for single machines (by asset tag).
 * The narrower statement wins over the wider one; a filled cell of the survey wins over all three.
 */
export interface SiteStatements {
  readonly file: string;
  /** SHA-256 of the canonical JSON of the file's data. */
  readonly digest: string;
  /** The site's name, part of every point id; null where the file does not name it. */
  readonly siteName: string | null;
  readonly wholeSite: StatedFacts;
  readonly byMachineType: ReadonlyMap<string, StatedFacts>;
  readonly byMachine: ReadonlyMap<string, StatedFacts>;
  /** Mounting methods allowed; left out where the file says nothing of them. */
  readonly methodsAllowed?: MethodStatements;
  /** How facts are measured, in the same order; left out where nothing is said of it. */
  readonly measuredBy?: {
    readonly wholeSite: StatedWays;
    readonly byMachineType: ReadonlyMap<string, StatedWays>;
    readonly byMachine: ReadonlyMap<string, StatedWays>;
  };
}
