import { utcDay } from "../base/index.js";
import {
  compareResults,
  type RunCompared,
  rulebookChanges,
  runDifferences,
  surveysByDigest,
} from "../comparing/index.js";
import type { ChangesShown } from "../outputs/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { type ScreeningInput, screen } from "../screening/index.js";
import { DEFAULT_LIMITS } from "../workbook/index.js";
import { type ComparedSide, isStoredResult, type StoredSide, screenedSide, storedSide } from "./compared-sides.js";
import { readingOf, rulebookOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import type { ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

/** What a run of now takes over from a stored result where the user says nothing else. */
type Settled = Pick<ScreenOptions, "set" | "asOf" | "site" | "stage">;

/** The options as they were said, so that a stored result can settle what was not. */
export type Said = Omit<ScreenOptions, "stage"> & { readonly stage: ScreenOptions["stage"] | undefined };

/** What is compared: rulebooks or stored results; left out: the rulebook that comes with the program. */
export interface Sides {
  readonly before?: string | undefined;
  readonly after?: string | undefined;
  /** Overlays over one side alone, above those that are given for both. */
  readonly beforeOver: readonly string[];
  readonly afterOver: readonly string[];
}

/**
 * Compares two rulebooks on surveys, or results with them or with one another.
 *
 * @param files - surveys; none where both sides are stored
 * @throws CannotRun after the reason was said
 * @throws StoredMistake where a stored result is not what it should be
 */
export async function changesBetween(
  files: readonly string[],
  said: Said,
  sides: Sides,
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<ChangesShown> {
  const { before, after, beforeOver, afterOver } = sides;
  if (before === after && beforeOver.join("\n") === afterOver.join("\n")) {
    stop(terminal, "--before and --after are one rulebook, or one result; give another one for one of them");
  }
  const older = await storedIn(before, said);
  const newer = await storedIn(after, said);
  for (const [option, over, stored] of [
    ["--before-over", beforeOver, older],
    ["--after-over", afterOver, newer],
  ] as const) {
    if (over.length === 0 || stored === null) continue;
    stop(
      terminal,
      `${option}: ${stored.run.stored?.file} is a stored result, with what lay over its rulebook; leave it out`,
    );
  }
  return older !== null && newer !== null
    ? compared(asStored([older, newer], files, said, terminal), null)
    : await screened(files, said, sides, { older, newer }, terminal, program);
}

async function storedIn(path: string | undefined, { limit }: Said): Promise<StoredSide | null> {
  if (path === undefined || !isStoredResult(path)) return null;
  return storedSide(path, Object.fromEntries(limit).fileBytes ?? DEFAULT_LIMITS.fileBytes);
}

/** Two stored results: nothing is screened, so that nothing can be said of how. */
function asStored(
  [before, after]: readonly [StoredSide, StoredSide],
  files: readonly string[],
  said: Said,
  terminal: Terminal,
): readonly [ComparedSide, ComparedSide] {
  const [file] = files;
  if (file !== undefined) stop(terminal, `${file}: both sides are stored results, so no survey is read; leave it out`);
  const { set, asOf, site, siteFile, stage, over } = said;
  const settings = {
    "--set": set,
    "--as-of": asOf,
    "--site": site,
    "--site-file": siteFile,
    "--stage": stage,
    "--over": over[0],
  };
  const [given] = Object.entries(settings).find(([, value]) => value !== undefined) ?? [];
  if (given) stop(terminal, `${given}: both sides are stored results, so nothing is screened; leave it out`);
  oneStage(before.run, after.run.stage, terminal);
  return [before, after];
}

/** At least one side is screened now, in the way of the stored result where there is one. */
async function screened(
  files: readonly string[],
  said: Said,
  sides: Sides,
  stored: { readonly older: StoredSide | null; readonly newer: StoredSide | null },
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<ChangesShown> {
  if (files.length === 0) stop(terminal, "give the survey files that a rulebook is to be tried on");
  const bookOf = (rules: string | undefined, over: readonly string[]): Promise<Rulebook> =>
    rulebookOf({ rules, over: [...said.over, ...over], trust: said.trust }, terminal);
  const books = {
    older: stored.older ? null : await bookOf(sides.before, sides.beforeOver),
    newer: stored.newer ? null : await bookOf(sides.after, sides.afterOver),
  };
  const settled = settledBy(stored.older ?? stored.newer, said, terminal);
  const set = settled.set ?? books.newer?.defaultSet ?? books.older?.defaultSet ?? "";
  for (const book of [books.older, books.newer]) {
    if (book && !book.sets.includes(set)) {
      stop(terminal, `--set: "${book.name}" has no set "${set}"; it has ${book.sets.join(", ")}`);
    }
  }
  const screenedBy = async (rulebook: Rulebook): Promise<ComparedSide> => {
    const site = await siteOf(said, rulebook, terminal);
    const reading = await readingOf(said, rulebook, terminal);
    const surveys = await surveysOf(files, said, reading, site, terminal, false);
    const { stage, asOf = utcDay(terminal.now()), site: siteName = null } = settled;
    const options = { set, stage, asOf, siteName, reading: reading.settled, allFindings: false };
    return screenedSide(
      screen({
        program,
        rulebook,
        surveys: surveys.opened.map(({ survey }) => survey),
        skipped: surveys.unreadable,
        site,
        options,
      }),
    );
  };
  const before = stored.older ?? (books.older && (await screenedBy(books.older)));
  const after = stored.newer ?? (books.newer && (await screenedBy(books.newer)));
  if (!before || !after) throw new Error("a side is neither stored nor screened");
  return compared([before, after], books.older && books.newer ? [books.older, books.newer] : null);
}

/** A stored result settles what the user does not say, so that like is compared with like. */
function settledBy(stored: StoredSide | null, said: Said, terminal: Terminal): Settled {
  const { set, asOf, site, siteFile, stage } = said;
  if (stored === null) return { set, asOf, site, stage: stage ?? "proposed" };
  const { run } = stored;
  if (stage !== undefined) oneStage(run, stage, terminal);
  if (stored.siteFile !== null && siteFile === undefined) {
    terminal.err(`spotface: the stored result rests on the site file ${stored.siteFile}; give it with --site-file\n`);
  }
  const siteName = site ?? (siteFile === undefined ? (run.site ?? undefined) : undefined);
  return { set: set ?? run.set, asOf: asOf ?? run.asOf, site: siteName, stage: run.stage };
}

function oneStage({ stage, stored }: RunCompared, other: RunCompared["stage"], terminal: Terminal): void {
  if (stage === other) return;
  stop(terminal, `${stored?.file}: it judges points ${stage}, the other side points ${other}; compare one stage only`);
}

/** @param books - both rulebooks, where neither side is stored */
function compared(
  [before, after]: readonly [ComparedSide, ComparedSide],
  books: readonly [Rulebook, Rulebook] | null,
): ChangesShown {
  const named = { before: surveysByDigest(before.run), after: surveysByDigest(after.run) };
  return {
    before: before.run,
    after: after.run,
    differences: runDifferences(before.run, after.run),
    things: books && rulebookChanges(...books),
    turned: compareResults(before.points(), after.points(), named),
  };
}
