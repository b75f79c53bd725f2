import { existsSync } from "node:fs";
import { Command, Option } from "commander";
import { checkWritable, makeFolder, OutputBatch } from "../disk/index.js";
import { countOf, terminalReport } from "../outputs/index.js";
import {
  ENDING_WITHIN,
  type PointResult,
  reachesLevel,
  type Screening,
  type ScreeningInput,
  screen,
} from "../screening/index.js";
import { deviationsOf } from "./open-deviations.js";
import { inputPaths } from "./open-reading.js";
import type { OpenedSurvey } from "./open-surveys.js";
import { progressOf } from "./progress.js";
import { addDeviationsOption, addRunOptions, checkedAction } from "./run-options.js";
import { printResult, writeFiles } from "./run-outputs.js";
import { audit, CannotRun, dayOf, readingOf, rulebookOf, setOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import { SCREEN_OPTIONS, type ScreenOptions } from "./screen-options.js";
import { type Targets, targetPaths, targetsFor, targetsOf } from "./targets.js";
import type { Terminal } from "./terminal.js";

/** `spotface screen`: survey files in, verdicts with reasons out. */
export function screenCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("screen")
    .description("screen survey files (.xlsx, .csv) with a rulebook: a verdict with reasons for every point")
    .argument("<file...>", "survey files")
    .option("--json", "print the result as one JSON document")
    .option("--ndjson", "print the result as lines of JSON: a head, a line per point, a closing line")
    .option("--all-findings", "list passed rules and rules that do not apply too")
    .option("--out <folder>", "write screened workbook, tables, result and report into this folder")
    .option("--workbook <file>", "write the screened workbook (.xlsx)")
    .option("--csv <file>", "write a table with a row per point")
    .option("--findings <file>", "write a table with a row per warn, fail and undecided finding")
    .option("--result <file>", "write the result as one JSON document")
    .option("--report <file>", "write the report for people, one HTML file")
    .option("--overwrite", "replace files that are there already")
    .option("--ending-within <days>", `tell of deviations that end within so many days (default: ${ENDING_WITHIN})`)
    .option("--audit", "compare every finding with json-rules-engine before anything is written")
    .addOption(
      new Option("--fail-on <level>", "end with exit code 1 if a point reaches this level").choices([
        "fail",
        "warn",
        "undecided",
      ]),
    )
    .option("--skip-unreadable", "leave out files that cannot be read, instead of ending the run");
  return addRunOptions(addDeviationsOption(command)).action(
    checkedAction(terminal, SCREEN_OPTIONS, (files: readonly string[], options) =>
      runScreen(files, options, terminal, program),
    ),
  );
}

async function runScreen(
  files: readonly string[],
  options: ScreenOptions,
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<void> {
  const rulebook = await rulebookOf(options, terminal);
  const set = setOf(options, rulebook, terminal);
  const site = await siteOf(options, rulebook, terminal);
  const deviations = await deviationsOf(options, rulebook, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const asked = targetsOf(options, files);
  await refuseTargets(files, options, asked, terminal);
  const surveys = await surveysOf(files, options, reading, site, terminal, asked.workbooks.length > 0);
  const targets = targetsFor(
    asked,
    surveys.opened.map(({ survey }) => survey.file),
  );
  const batch = await openTargets(files, options, targets, terminal);
  const takeBack = terminal.onInterrupt(async () => batch?.abandon());
  try {
    const input: ScreeningInput = {
      program,
      rulebook,
      surveys: surveys.opened.map(({ survey }) => survey),
      skipped: surveys.unreadable,
      site,
      deviations,
      options: {
        set,
        stage: options.stage,
        asOf: dayOf(options, terminal),
        siteName: options.site ?? null,
        reading: reading.settled,
        ...(options.endingWithin === undefined ? {} : { endingWithin: options.endingWithin }),
        allFindings: options.allFindings,
      },
    };
    if (options.audit) await audit(input, terminal);
    const reached = await judgeAndWrite(input, surveys.opened, options, targets, batch, terminal);
    terminal.setExitCode(reached || surveys.unreadable.length > 0 ? 1 : 0);
  } finally {
    takeBack();
    await batch?.abandon();
  }
}

async function judgeAndWrite(
  input: ScreeningInput,
  surveys: readonly OpenedSurvey[],
  options: ScreenOptions,
  targets: Targets,
  batch: OutputBatch | null,
  terminal: Terminal,
): Promise<boolean> {
  let reached = false;
  const watched = watching(screen(input), (point) => {
    reached ||= options.failOn !== undefined && reachesLevel(point, options.failOn);
  });
  const form = options.json ? "json" : options.ndjson ? "ndjson" : null;
  if (!batch && form) {
    await printResult(watched, form, terminal);
    terminal.err(closingLine(watched));
    return reached;
  }
  const done = batch ? await writeFiles(batch, targets, watched, surveys) : { ok: true as const, written: [] };
  if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  if (form) {
    await printResult(watched, form, terminal);
    terminal.err(closingLine(watched));
    return reached;
  }
  if (!batch) judgeAll(watched, input, terminal);
  await terminal.out(terminalReport(watched.head, watched.summary(), done.written));
  return reached;
}

/** Judges every point for the sake of the counts. */
function judgeAll(screening: Screening, input: ScreeningInput, terminal: Terminal): void {
  const progress = progressOf(terminal, "screening");
  const total = input.surveys.reduce((sum, survey) => sum + survey.records.length, 0);
  let judged = 0;
  for (const _ of screening.points()) {
    judged += 1;
    if (judged % 500 === 0) progress.at(judged / total);
  }
  progress.end();
}

/** A screening whose points are seen by someone else on their way. */
function watching(screening: Screening, see: (point: PointResult) => void): Screening {
  return {
    head: screening.head,
    summary: () => screening.summary(),
    points: function* () {
      for (const point of screening.points()) {
        see(point);
        yield point;
      }
    },
    pointsWithFacts: function* () {
      for (const known of screening.pointsWithFacts()) {
        see(known.point);
        yield known;
      }
    },
  };
}

function closingLine(screening: Screening): string {
  const { points, pass, warn, fail, accepted, problems } = screening.summary();
  const { head } = screening;
  return (
    `spotface: ${countOf(points, "point")} as of ${head.asOf}: ${pass} pass, ${warn} warn, ${fail} fail${head.deviations === null ? "" : `, ${accepted} accepted`}; ` +
    `${countOf(problems, "remark")} on reading\n`
  );
}

/** Refuses before the reading what can be refused then; a folder that is still to be made has nothing in it. */
async function refuseTargets(
  files: readonly string[],
  options: ScreenOptions,
  targets: Targets,
  terminal: Terminal,
): Promise<void> {
  if (options.out !== undefined && !existsSync(options.out)) return;
  const problems = await checkWritable(targetPaths(targets), await inputsOf(files, options), options.overwrite);
  for (const { path, text } of problems) terminal.err(`spotface: ${path}: ${text}\n`);
  if (problems.length > 0) throw new CannotRun();
}

/** Every file that the run reads; none is ever written over. */
async function inputsOf(files: readonly string[], options: ScreenOptions): Promise<readonly string[]> {
  return [...files, ...(await inputPaths(options))];
}

async function openTargets(
  files: readonly string[],
  options: ScreenOptions,
  targets: Targets,
  terminal: Terminal,
): Promise<OutputBatch | null> {
  const paths = targetPaths(targets);
  if (paths.length === 0) return null;
  const unmade = options.out === undefined ? null : await makeFolder(options.out);
  if (unmade !== null) stop(terminal, `${unmade.path}: ${unmade.text}`);
  const started = await OutputBatch.start(paths, {
    inputs: await inputsOf(files, options),
    overwrite: options.overwrite,
  });
  if (started.ok) return started.batch;
  for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
  throw new CannotRun();
}
