import type { KnownFact } from "./state.js";

/** Facts stated once, by id, each with the file and line where it stands. */
export type StatedFacts = ReadonlyMap<string, KnownFact>;

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
}
