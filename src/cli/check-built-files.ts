import { utcDay } from "../base/index.js";
import { type BuiltCheck, checkBuilt, type IssuedResult } from "../built/index.js";
import type { SiteStatements } from "../facts/index.js";
import type { Survey } from "../records/index.js";
import type { FileFinding } from "../rulebook/index.js";
import { DEFAULT_LIMITS } from "../workbook/index.js";
import { builtReading, CHECK_BUILT_CALL } from "./check-built-options.js";
import { programIdentity } from "./identity.js";
import { openIssued } from "./open-issued.js";
import { type OpenedReading, openReading } from "./open-reading.js";
import { openRulebook, openSiteFile } from "./open-rulebook.js";
import { givenTwice, openSurveys } from "./open-surveys.js";
import type { ScreenFilesOptions } from "./screen-files.js";
import { optionMistakes, readingChosen } from "./screen-options.js";

/** How proposal and built survey are compared by one call; all of it may be left out. */
export interface CheckBuiltFilesOptions extends Omit<ScreenFilesOptions, "stage" | "allFindings"> {
  /** Surveys of what was built; left out: the proposed surveys hold it, too. */
  readonly built?: readonly string[];
  /** Column file for the built surveys, instead of that of the proposed ones. */
  readonly builtColumns?: string;
  /** Result document under which orders were issued; left out: the proposal as it is judged now. */
  readonly issued?: string;
}

/** The comparison, or why there is none: mistakes in files that people write, and files that cannot be read. */
export type CheckBuiltFilesResult =
  | { readonly ok: true; readonly check: BuiltCheck }
  | {
      readonly ok: false;
      readonly findings: readonly FileFinding[];
      readonly unreadable: readonly { readonly file: string; readonly text: string }[];
    };

type Failed = Extract<CheckBuiltFilesResult, { ok: false }>;

/**
 * Compares what was built with what was proposed, from survey files on the disk.
 *
 * @param proposed - surveys of the proposed points (.xlsx, .csv)
 * @throws RangeError for an option that cannot be meant (a day or set that does not exist), or a file given twice on
 *   one side
 */
export async function checkBuiltFiles(
  proposed: readonly string[],
  options: CheckBuiltFilesOptions = {},
): Promise<CheckBuiltFilesResult> {
  const checked = CHECK_BUILT_CALL.safeParse(options);
  if (!checked.success) throw new RangeError(optionMistakes(checked.error).trimEnd());
  const { built, builtColumns, issued, ...run } = checked.data;
  for (const side of [proposed, built ?? []]) {
    const twice = givenTwice(side);
    if (twice !== undefined) throw new RangeError(`${twice}: the file is given twice on one side`);
  }
  const loading = await openRulebook(options.rules ?? null, options.over, options.trust);
  if (!loading.ok) return failed(loading.findings);
  const { rulebook } = loading;
  const chosen = readingChosen(run);
  const asOf = options.asOf ?? utcDay(new Date());
  const reading = await openReading(chosen, rulebook, asOf);
  if (!reading.ok) return failed(reading.findings);
  const ofBuilt = await openReading(builtReading(chosen, builtColumns), rulebook, asOf);
  if (!ofBuilt.ok) return failed(ofBuilt.findings);
  const stated = options.siteFile === undefined ? null : await openSiteFile(options.siteFile, rulebook, asOf);
  if (stated && !stated.ok) return failed(stated.findings);
  const site = stated?.statements ?? null;
  const orders = await issuedIn(issued, options);
  if (orders !== null && "ok" in orders) return orders;
  const then = await surveysIn(proposed, reading.reading, site, options);
  if ("ok" in then) return then;
  const now = built === undefined ? null : await surveysIn(built, ofBuilt.reading, site, options);
  if (now !== null && "ok" in now) return now;
  const check = checkBuilt({
    program: programIdentity(),
    rulebook,
    proposed: then.surveys,
    built: now?.surveys ?? null,
    site,
    issued: orders,
    options: {
      set: options.set ?? rulebook.defaultSet,
      asOf,
      siteName: options.siteName ?? null,
      reading: reading.reading.settled,
      builtReading: ofBuilt.reading.settled,
    },
  });
  return { ok: true, check };
}

function failed(findings: readonly FileFinding[], unreadable: Failed["unreadable"] = []): Failed {
  return { ok: false, findings, unreadable };
}

async function issuedIn(
  path: string | undefined,
  { reading }: CheckBuiltFilesOptions,
): Promise<IssuedResult | Failed | null> {
  if (path === undefined) return null;
  const opening = await openIssued(path, reading?.limits?.fileBytes ?? DEFAULT_LIMITS.fileBytes);
  return opening.ok
    ? opening.issued
    : failed(
        [],
        opening.problems.map((text) => ({ file: path, text })),
      );
}

async function surveysIn(
  paths: readonly string[],
  { words, guide, options: how }: OpenedReading,
  site: SiteStatements | null,
  { reading }: CheckBuiltFilesOptions,
): Promise<{ readonly surveys: readonly Survey[] } | Failed> {
  const options = { guide, reading: { ...reading, ...how }, keepCells: false, onProgress: () => {} };
  const { opened, unreadable } = await openSurveys(paths, { words }, site, options);
  return unreadable.length > 0 ? failed([], unreadable) : { surveys: opened.map(({ survey }) => survey) };
}
