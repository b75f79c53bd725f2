import { type PlainDay, utcDay } from "../base/index.js";
import type { SiteStatements } from "../facts/index.js";
import { countOf } from "../outputs/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { auditScreening, type ScreeningInput } from "../screening/index.js";
import { type OpenedReading, openReading } from "./open-reading.js";
import { findingLine, openRulebook, openSiteFile } from "./open-rulebook.js";
import { givenTwice, openSurveys } from "./open-surveys.js";
import { progressOf } from "./progress.js";
import type { ReadingChosen } from "./reading-options.js";
import type { ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";
import { isAboutTrust } from "./trusted-book.js";

/** Ends a run before anything is written; the lines have been said. */
export class CannotRun extends Error {}

/** The rulebook of a run; its mistakes are said and end the run. */
export async function rulebookOf(
  options: Pick<ScreenOptions, "rules" | "over" | "trust">,
  terminal: Terminal,
): Promise<Rulebook> {
  const loading = await openRulebook(options.rules ?? null, options.over, options.trust);
  if (loading.ok) return loading.rulebook;
  for (const finding of loading.findings) terminal.err(findingLine(finding));
  if (isAboutTrust(loading.findings)) return stop(terminal, "the rulebook is not trusted; nothing was run");
  return stop(terminal, `the rulebook has ${countOf(loading.findings.length, "mistake")}; correct it and run again`);
}

/** The day of a run: the one asked for, else today in UTC. */
export function dayOf({ asOf }: Partial<Pick<ScreenOptions, "asOf">>, terminal: Terminal): PlainDay {
  return asOf ?? utcDay(terminal.now());
}

/** The set of rules of a run; one that the rulebook does not have ends it. */
export function setOf(options: Pick<ScreenOptions, "set">, rulebook: Rulebook, terminal: Terminal): string {
  const set = options.set ?? rulebook.defaultSet;
  if (rulebook.sets.includes(set)) return set;
  return stop(terminal, `--set: the rulebook has no set "${set}"; it has ${rulebook.sets.join(", ")}`);
}

/** What the site file of a run states, if one is given. */
export async function siteOf(
  options: Pick<ScreenOptions, "siteFile" | "asOf">,
  rulebook: Rulebook,
  terminal: Terminal,
): Promise<SiteStatements | null> {
  if (options.siteFile === undefined) return null;
  const reading = await openSiteFile(options.siteFile, rulebook, dayOf(options, terminal));
  if (reading.ok) return reading.statements;
  for (const finding of reading.findings) terminal.err(findingLine(finding));
  return stop(terminal, `the site file has ${countOf(reading.findings.length, "mistake")}; correct it and run again`);
}

/** What the surveys of a run are read with; mistakes in its files are said and end the run. */
export async function readingOf(
  options: ReadingChosen & Partial<Pick<ScreenOptions, "asOf">>,
  rulebook: Rulebook,
  terminal: Terminal,
): Promise<OpenedReading> {
  const opening = await openReading(options, rulebook, dayOf(options, terminal));
  if (opening.ok) return opening.reading;
  for (const finding of opening.findings) terminal.err(findingLine(finding));
  const count = countOf(opening.findings.length, "mistake");
  return stop(terminal, `${count} in column file and word files; correct and run again`);
}

/** The surveys of a run; a file that cannot be read ends it, unless the user said to leave such files out. */
export async function surveysOf(
  files: readonly string[],
  options: Pick<ScreenOptions, "skipUnreadable">,
  reading: OpenedReading,
  site: SiteStatements | null,
  terminal: Terminal,
  keepCells: boolean,
): Promise<Awaited<ReturnType<typeof openSurveys>>> {
  const twice = givenTwice(files);
  if (twice !== undefined) stop(terminal, `${twice}: the file is given twice; every point in it would stand twice`);
  const progress = progressOf(terminal, "reading");
  const { words, guide, options: how } = reading;
  const surveys = await openSurveys(files, { words }, site, {
    guide,
    reading: how,
    keepCells,
    onProgress: progress.at,
  });
  progress.end();
  for (const { file, text } of surveys.unreadable) {
    terminal.err(`spotface: ${file}: ${text}${options.skipUnreadable ? " (left out)" : ""}\n`);
  }
  const allowed = options.skipUnreadable && surveys.opened.length > 0;
  if (surveys.unreadable.length > 0 && !allowed) throw new CannotRun();
  return surveys;
}

/** Compares the run with the reference; a difference ends it before anything is written. */
export async function audit(input: ScreeningInput, terminal: Terminal): Promise<void> {
  const progress = progressOf(terminal, "audit");
  const report = await auditScreening(input, progress.at);
  progress.end();
  for (const difference of report.differences) terminal.err(`spotface: audit: ${difference}\n`);
  terminal.err(
    `spotface: audit: ${countOf(report.compared, "finding")} compared with json-rules-engine, ` +
      `${report.completed} decided ones on ${countOf(report.completions, "completion")}, ` +
      `${report.open} open ones claim nothing; ${countOf(report.differences.length, "difference")}\n`,
  );
  if (report.differences.length > 0) stop(terminal, "the two judges differ; nothing is written");
}

/** Says why the run ends before anything is written, and ends it. */
export function stop(terminal: Terminal, text: string): never {
  terminal.err(`spotface: ${text}\n`);
  throw new CannotRun();
}
