import { Command, Option } from "commander";
import { utcDay } from "../base/index.js";
import { type BuiltCheck, type BuiltPoint, checkBuilt, type IssuedResult } from "../built/index.js";
import { checkWritable, OutputBatch } from "../disk/index.js";
import {
  BuiltReport,
  builtCsv,
  builtDocument,
  countOf,
  isRecalledOrUncovered,
  type WrittenFile,
} from "../outputs/index.js";
import type { ScreeningInput } from "../screening/index.js";
import { DEFAULT_LIMITS } from "../workbook/index.js";
import { builtReading, CHECK_BUILT_OPTIONS, type CheckBuiltOptions } from "./check-built-options.js";
import { openIssued } from "./open-issued.js";
import { inputPaths } from "./open-reading.js";
import { overOption } from "./over-option.js";
import { printPieces, writePieces } from "./pieces.js";
import { addReadingOptions } from "./reading-options.js";
import { checkedAction } from "./run-options.js";
import { CannotRun, readingOf, rulebookOf, setOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";
import { addTrustOption } from "./trusted-book.js";

/** `spotface check-built`: what was built beside what was proposed, and the orders that are to be called back. */
export function checkBuiltCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("check-built")
    .description(
      "compare what was built with what was proposed, judge it by the same rules, and list the orders to be recalled",
    )
    .argument("<proposed...>", "surveys of the proposed points")
    .option("--built <file...>", "surveys of what was built (default: the proposed surveys hold it, too)")
    .option("--built-columns <file>", "column file for the built surveys, instead of the one given with --columns")
    .option("--issued <file>", "result document under which orders were issued (default: the proposal, judged now)")
    .option("--json", "print the comparison as one JSON document")
    .option("--csv <file>", "write a table with a row per point")
    .option("--result <file>", "write the comparison as one JSON document")
    .option("--overwrite", "replace files that are there already")
    .option("--set <name>", "set of rules to apply (default: the one the rulebook names)")
    .option("--as-of <day>", "day the limits are looked up for, YYYY-MM-DD (default: today in UTC)")
    .option("--site <name>", "name of the site, part of every point id")
    .option("--site-file <file>", "what holds for the whole site, for types of machine and for single machines")
    .option("--rules <folder>", "rulebook to use (default: the one that comes with the program)")
    .addOption(overOption())
    .addOption(
      new Option(
        "--fail-on <level>",
        "end with exit code 1 if an order is recalled or a point was built without a verdict that covers it or " +
          "against it; with difference, also if anything was built otherwise than proposed",
      ).choices(["recall", "difference"]),
    );
  return addReadingOptions(addTrustOption(command)).action(
    checkedAction(terminal, CHECK_BUILT_OPTIONS, (files: readonly string[], options) =>
      runCheckBuilt(files, options, terminal, program),
    ),
  );
}

async function runCheckBuilt(
  files: readonly string[],
  options: CheckBuiltOptions,
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<void> {
  const rulebook = await rulebookOf(options, terminal);
  const set = setOf(options, rulebook, terminal);
  const site = await siteOf(options, rulebook, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const ofBuilt = await readingOf(builtReading(options, options.builtColumns), rulebook, terminal);
  const targets = [options.csv, options.result].filter((path) => path !== undefined);
  const inputs = await inputsOf(files, options);
  const problems = await checkWritable(targets, inputs, options.overwrite);
  for (const { path, text } of problems) terminal.err(`spotface: ${path}: ${text}\n`);
  if (problems.length > 0) throw new CannotRun();
  const issued = await issuedOf(options, terminal);
  const whole = { skipUnreadable: false };
  const proposed = await surveysOf(files, whole, reading, site, terminal, false);
  const built = options.built && (await surveysOf(options.built, whole, ofBuilt, site, terminal, false));
  const check = checkBuilt({
    program,
    rulebook,
    proposed: proposed.opened.map(({ survey }) => survey),
    built: built?.opened.map(({ survey }) => survey) ?? null,
    site,
    issued,
    options: {
      set,
      asOf: options.asOf ?? utcDay(terminal.now()),
      siteName: options.site ?? null,
      reading: reading.settled,
      ...(built === undefined ? {} : { builtReading: ofBuilt.settled }),
    },
  });
  await giveOut(check, options, inputs, terminal);
}

/** Writes and prints all that is asked for; the exit code says whether the level of `--fail-on` was reached. */
async function giveOut(
  check: BuiltCheck,
  options: CheckBuiltOptions,
  inputs: readonly string[],
  terminal: Terminal,
): Promise<void> {
  const report = new BuiltReport();
  let reached = (check.head.issued?.gone.length ?? 0) > 0;
  for (const point of check.points()) {
    report.see(point);
    reached ||= reaches(point, options.failOn);
  }
  const written = await writeAll(check, options, inputs, terminal);
  const summary = check.summary();
  if (options.json) {
    await printPieces(builtDocument(check), terminal);
    terminal.err(
      `spotface: ${countOf(summary.points, "point")}: ${summary.recalled} to be recalled, ` +
        `${summary.needsNewVerdict} built without a verdict that covers it, ${summary.notBuilt} not built yet\n`,
    );
  } else {
    await terminal.out(report.text(check.head, summary, written));
  }
  terminal.setExitCode(reached && options.failOn !== undefined ? 1 : 0);
}

function reaches(point: BuiltPoint, level: CheckBuiltOptions["failOn"]): boolean {
  return isRecalledOrUncovered(point) || (level === "difference" && point.differences.length > 0);
}

async function writeAll(
  check: BuiltCheck,
  { csv, result, overwrite }: CheckBuiltOptions,
  inputs: readonly string[],
  terminal: Terminal,
): Promise<readonly WrittenFile[]> {
  const targets = [csv, result].filter((path) => path !== undefined);
  if (targets.length === 0) return [];
  const started = await OutputBatch.start(targets, { inputs, overwrite });
  if (!started.ok) {
    for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
    throw new CannotRun();
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  try {
    if (csv !== undefined) await writePieces(batch, csv, builtCsv(check.head, check.points()));
    if (result !== undefined) await writePieces(batch, result, builtDocument(check));
    const done = await batch.finish();
    if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
  return [
    ...(csv === undefined ? [] : [{ what: "table of points", file: csv, note: null }]),
    ...(result === undefined ? [] : [{ what: "comparison", file: result, note: null }]),
  ];
}

async function issuedOf({ issued, limit }: CheckBuiltOptions, terminal: Terminal): Promise<IssuedResult | null> {
  if (issued === undefined) return null;
  const opening = await openIssued(issued, Object.fromEntries(limit).fileBytes ?? DEFAULT_LIMITS.fileBytes);
  if (opening.ok) return opening.issued;
  for (const problem of opening.problems) terminal.err(`spotface: ${problem}\n`);
  throw new CannotRun();
}

/** Every file that the run reads; none is ever written over. */
async function inputsOf(files: readonly string[], options: CheckBuiltOptions): Promise<readonly string[]> {
  const { built = [], builtColumns, issued } = options;
  const given = [...files, ...built, builtColumns, issued].filter((path) => path !== undefined);
  return [...given, ...(await inputPaths(options))];
}
