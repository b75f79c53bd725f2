import type { SiteStatements } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { Rulebook } from "../rulebook/index.js";
import type { ReadingSettled, ResultHead, ScreeningInput, ScreeningOptions } from "../screening/index.js";
import type { IssuedResult } from "./issued.js";

/** All that a comparison of proposal and built survey is made from. */
export interface BuiltInput {
  readonly program: ResultHead["program"];
  readonly rulebook: Rulebook;
  readonly proposed: readonly Survey[];
  /** Null where the proposed surveys hold what was built, too. */
  readonly built: readonly Survey[] | null;
  readonly site: SiteStatements | null;
  /** The result under which orders were issued; null: the proposal as it is judged now. */
  readonly issued: IssuedResult | null;
  readonly options: Pick<ScreeningOptions, "set" | "asOf" | "siteName" | "reading"> & {
    /** What was settled about the reading of the built surveys; left out: the same as of the proposal. */
    readonly builtReading?: ReadingSettled | undefined;
  };
}

/** The run over the surveys of one side. */
export function runOver(
  surveys: readonly Survey[],
  stage: ScreeningOptions["stage"],
  { program, rulebook, site, options }: BuiltInput,
): ScreeningInput {
  const { set, asOf, siteName, reading, builtReading } = options;
  const settled = stage === "installed" ? (builtReading ?? reading) : reading;
  return {
    program,
    rulebook,
    surveys,
    skipped: [],
    site,
    options: { set, stage, asOf, siteName, allFindings: false, ...(settled === undefined ? {} : { reading: settled }) },
  };
}
