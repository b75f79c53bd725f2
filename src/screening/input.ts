import type { PlainDay, Stage } from "../base/index.js";
import type { SiteStatements } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { Deviations, Rulebook } from "../rulebook/index.js";
import type { ReadingSettled, ResultHead } from "./result.js";

/** Nothing is settled. */
export const NOTHING_SETTLED: ReadingSettled = { columnFile: null, wordFiles: [], options: [] };

/** Days ahead in which the end of an accepted deviation is told of, unless said otherwise. */
export const ENDING_WITHIN = 30;

/** How a run is asked for. */
export interface ScreeningOptions {
  readonly set: string;
  readonly stage: Stage;
  readonly asOf: PlainDay;
  /** The site's name as the user gave it; null where it comes from the site file or a column. */
  readonly siteName: string | null;
  /** What was settled about the reading; left out: nothing. */
  readonly reading?: ReadingSettled;
  /** Days ahead in which the end of an accepted deviation is told of; 30 if left out. */
  readonly endingWithin?: number;
  /** List pass and not-applicable too. */
  readonly allFindings: boolean;
}

/** All that a run is made from. */
export interface ScreeningInput {
  readonly program: ResultHead["program"];
  readonly rulebook: Rulebook;
  readonly surveys: readonly Survey[];
  readonly skipped: ResultHead["skipped"];
  readonly site: SiteStatements | null;
  /** Accepted deviations; left out: none. */
  readonly deviations?: Deviations | null;
  readonly options: ScreeningOptions;
}
