import type { PlainDay, Stage } from "../base/index.js";
import type { SiteStatements } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { Rulebook } from "../rulebook/index.js";
import type { ResultHead } from "./result.js";

/** How a run is asked for. */
export interface ScreeningOptions {
  readonly set: string;
  readonly stage: Stage;
  readonly asOf: PlainDay;
  /** The site's name as the user gave it; null where it comes from the site file or a column. */
  readonly siteName: string | null;
  /** How text files were read where the user said so; it changes what is read. */
  readonly reading?: { readonly encoding: string | null; readonly separator: string | null };
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
  readonly options: ScreeningOptions;
}
