import { type Stage, utcDay } from "../base/index.js";
import type { DecimalSign, Language } from "../facts/index.js";
import type { FileFinding } from "../rulebook/index.js";
import { type Screening, type ScreeningInput, screen, UnclearDeviations } from "../screening/index.js";
import type { ReadingOptions } from "../workbook/index.js";
import { programIdentity } from "./identity.js";
import { openDeviations } from "./open-deviations.js";
import { openReading } from "./open-reading.js";
import { openRulebook, openSiteFile } from "./open-rulebook.js";
import { givenTwice, openSurveys } from "./open-surveys.js";
import { optionMistakes, RUN_OPTIONS, readingChosen } from "./screen-options.js";

/** How files are screened by one call; all of it may be left out. */
export interface ScreenFilesOptions {
  /** Rulebook folder; the one that comes with the program if left out. */
  readonly rules?: string;
  /** Folders of sites to lay over the rulebook, the lowest first. */
  readonly over?: readonly string[];
  /** Files of public keys (PEM), of which one must have signed the rulebook. */
  readonly trust?: readonly string[];
  /** Set of rules; the one the rulebook names if left out. */
  readonly set?: string;
  readonly stage?: Stage;
  /** Day the limits are looked up for, YYYY-MM-DD; today in UTC if left out. */
  readonly asOf?: string;
  /** Name of the site, part of every point id. */
  readonly siteName?: string;
  readonly siteFile?: string;
  /** File of accepted deviations. */
  readonly deviations?: string;
  /** Days ahead in which the end of an accepted deviation is told of; 30 if left out. */
  readonly endingWithin?: number;
  /** List passed rules and rules that do not apply too. */
  readonly allFindings?: boolean;
  /** Column file: which heading means what. */
  readonly columns?: string;
  /** Word files of the site. */
  readonly words?: readonly string[];
  /** Language of the surveys; found by evidence if left out. */
  readonly language?: Language;
  /** Decimal sign of the surveys; found by evidence if left out. */
  readonly decimal?: DecimalSign;
  /** What single columns are read for: `HEADING=fact`, `HEADING=fact unit` or `HEADING=ignore`. */
  readonly column?: readonly string[];
  readonly reading?: ReadingOptions;
}

/** The screening, or why there is none: mistakes in rulebook, site file or deviations, and files that cannot be read. */
export type ScreenFilesResult =
  | { readonly ok: true; readonly screening: Screening }
  | {
      readonly ok: false;
      readonly findings: readonly FileFinding[];
      readonly unreadable: readonly { readonly file: string; readonly text: string }[];
    };

/**
 * Reads and screens survey files from the disk.
 *
 * @param paths - survey files (.xlsx, .csv), in the order in which the result lists them
 * @throws RangeError for an option that cannot be meant (a stage, day or set that does not exist), or a file given twice
 */
export async function screenFiles(
  paths: readonly string[],
  options: ScreenFilesOptions = {},
): Promise<ScreenFilesResult> {
  const checked = RUN_OPTIONS.safeParse(options);
  if (!checked.success) throw new RangeError(optionMistakes(checked.error).trimEnd());
  const twice = givenTwice(paths);
  if (twice !== undefined)
    throw new RangeError(`${twice}: the file is given twice; every point in it would stand twice`);
  const loading = await openRulebook(options.rules ?? null, options.over, options.trust);
  if (!loading.ok) return { ok: false, findings: loading.findings, unreadable: [] };
  const { rulebook } = loading;
  const asOf = options.asOf ?? utcDay(new Date());
  const opening = await openReading(readingChosen(checked.data), rulebook, asOf);
  if (!opening.ok) return { ok: false, findings: opening.findings, unreadable: [] };
  const { words, guide, options: how, settled } = opening.reading;
  const stated = options.siteFile === undefined ? null : await openSiteFile(options.siteFile, rulebook, asOf);
  if (stated && !stated.ok) return { ok: false, findings: stated.findings, unreadable: [] };
  const site = stated?.statements ?? null;
  const accepted = options.deviations === undefined ? null : await openDeviations(options.deviations, rulebook);
  if (accepted && !accepted.ok) return { ok: false, findings: accepted.findings, unreadable: [] };
  const surveys = await openSurveys(paths, { words }, site, {
    guide,
    reading: { ...options.reading, ...how },
    keepCells: false,
    onProgress: () => {},
  });
  if (surveys.unreadable.length > 0) return { ok: false, findings: [], unreadable: surveys.unreadable };
  const input: ScreeningInput = {
    program: programIdentity(),
    rulebook,
    surveys: surveys.opened.map(({ survey }) => survey),
    skipped: [],
    site,
    deviations: accepted?.deviations ?? null,
    options: {
      set: options.set ?? rulebook.defaultSet,
      stage: options.stage ?? "proposed",
      asOf,
      siteName: options.siteName ?? null,
      reading: settled,
      ...(options.endingWithin === undefined ? {} : { endingWithin: options.endingWithin }),
      allFindings: options.allFindings ?? false,
    },
  };
  try {
    return { ok: true, screening: screen(input) };
  } catch (error) {
    if (!(error instanceof UnclearDeviations)) throw error;
    return { ok: false, findings: error.findings, unreadable: [] };
  }
}
