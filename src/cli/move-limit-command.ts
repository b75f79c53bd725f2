import { Command } from "commander";
import { didYouMean, foldText, formatNumber, utcDay } from "../base/index.js";
import { checkWritable, OutputBatch } from "../disk/index.js";
import { type LimitMoved, type MoveAsked, moveLimit, type NumberPlace, placesIn } from "../moving/index.js";
import { movingChart, movingCsv, movingJson, movingText } from "../outputs/index.js";
import type { Rule, Rulebook } from "../rulebook/index.js";
import type { ScreeningInput } from "../screening/index.js";
import { MOVE_LIMIT_OPTIONS, type MoveLimitOptions, placeNumber } from "./move-limit-options.js";
import { inputPaths } from "./open-reading.js";
import { writePieces } from "./pieces.js";
import { addRunOptions, checkedAction } from "./run-options.js";
import { CannotRun, readingOf, rulebookOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

/** `spotface move-limit`: how the counts move as one limit moves. */
export function moveLimitCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("move-limit")
    .description("move one number of one rule over a range, and count what comes out at each value")
    .argument("<file...>", "survey files")
    .requiredOption("--rule <id>", "the rule")
    .option(
      "--bound <name>",
      'which of its numbers, such as "fail below" (default: the only one; else they are listed)',
    )
    .option("--model <id>", "sensor model whose value moves, where the number is one (default: the only one named)")
    .option("--from <value>", "first value, in the unit of the limit (default: the lowest near the limit)")
    .option("--to <value>", "last value (default: the highest near the limit)")
    .option("--step <value>", "from one value to the next (default: about 20 round steps)")
    .option("--at-changes", "list every value at which a count moves, instead of steps")
    .option("--chart <file>", "write a chart as an SVG file")
    .option("--csv <file>", "write a table with a row per step")
    .option("--json", "print it as one JSON document")
    .option("--overwrite", "replace files that are there already");
  return addRunOptions(command).action(
    checkedAction(terminal, MOVE_LIMIT_OPTIONS, async (files: readonly string[], options) => {
      await tell(files, options, terminal, program);
      terminal.setExitCode(0);
    }),
  );
}

async function tell(
  files: readonly string[],
  options: MoveLimitOptions,
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<void> {
  const rulebook = await rulebookOf(options, terminal);
  const asOf = options.asOf ?? utcDay(terminal.now());
  const set = options.set ?? rulebook.defaultSet;
  const asked = askedIn(options, rulebook, set, asOf, terminal);
  const site = await siteOf(options, rulebook, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const targets = [options.csv, options.chart].filter((path) => path !== undefined);
  const inputs = [...files, ...(await inputPaths(options))];
  const problems = await checkWritable(targets, inputs, options.overwrite);
  for (const { path, text } of problems) terminal.err(`spotface: ${path}: ${text}\n`);
  if (problems.length > 0) throw new CannotRun();
  const surveys = await surveysOf(files, { skipUnreadable: false }, reading, site, terminal, false);
  const input: ScreeningInput = {
    program,
    rulebook,
    surveys: surveys.opened.map(({ survey }) => survey),
    skipped: surveys.unreadable,
    site,
    options: {
      set,
      stage: options.stage,
      asOf,
      siteName: options.site ?? null,
      reading: reading.settled,
      allFindings: false,
    },
  };
  const moved = moveLimit(input, asked);
  if (typeof moved === "string") stop(terminal, moved);
  await writeAll(moved, options, inputs, terminal);
  await terminal.out(options.json ? movingJson(moved) : movingText(moved, options.atChanges ? "changes" : "steps"));
  for (const path of targets) terminal.err(`spotface: written: ${path}\n`);
}

function askedIn(
  options: MoveLimitOptions,
  rulebook: Rulebook,
  set: string,
  asOf: string,
  terminal: Terminal,
): MoveAsked {
  if (!rulebook.sets.includes(set)) {
    stop(terminal, `--set: the rulebook has no set "${set}"; it has ${rulebook.sets.join(", ")}`);
  }
  const rule = rulebook.rules.find(({ id }) => id === options.rule);
  if (!rule) {
    const near = didYouMean(
      options.rule,
      rulebook.rules.map(({ id }) => id),
    );
    return stop(terminal, `--rule: the rulebook has no rule "${options.rule}"${near}`);
  }
  if (!rule.sets.includes(set)) {
    stop(terminal, `--rule: "${rule.id}" is not in the set "${set}"; give --set ${rule.sets.join(" or --set ")}`);
  }
  const place = placeOf(rule, options, asOf, terminal);
  const number = (option: "from" | "to" | "step"): number | null => {
    const value = placeNumber(option, options[option], place);
    return typeof value === "string" ? stop(terminal, value) : value;
  };
  const model = options.model ?? null;
  if (model !== null && place.moves !== "model value") {
    stop(terminal, `--model: "${place.name}" is no value of a sensor model; leave --model out`);
  }
  return { rule, place, model, from: number("from"), to: number("to"), step: number("step") };
}

/** The number meant; where that is not clear, the run ends with those there are. */
function placeOf(rule: Rule, { stage, bound }: MoveLimitOptions, asOf: string, terminal: Terminal): NumberPlace {
  const found = placesIn(rule, { stage, asOf });
  if (!found) return stop(terminal, `--rule: "${rule.id}" has no limit in force at the stage ${stage} on ${asOf}`);
  const { places } = found;
  const names = places.map(placeInWords).join(", ");
  const [first] = places;
  if (!first) return stop(terminal, `--rule: "${rule.id}" compares nothing with a number, so there is none to move`);
  if (bound === undefined) {
    // What else of a bound can be moved is named after it, behind a comma.
    if (places.every(({ name }) => name === first.name || name.startsWith(`${first.name},`))) return first;
    return stop(terminal, `--bound: "${rule.id}" has more than one number; say which of ${names}`);
  }
  const meant = places.find(({ name }) => foldText(name) === foldText(bound));
  return meant ?? stop(terminal, `--bound: "${rule.id}" has no number "${bound}"; it has ${names}`);
}

function placeInWords({ name, value, unit }: NumberPlace): string {
  return value === null ? `"${name}"` : `"${name}" (${formatNumber(value, unit)})`;
}

async function writeAll(
  moved: LimitMoved,
  { csv, chart, overwrite }: MoveLimitOptions,
  inputs: readonly string[],
  terminal: Terminal,
): Promise<void> {
  const targets = [csv, chart].filter((path) => path !== undefined);
  if (targets.length === 0) return;
  const started = await OutputBatch.start(targets, { inputs, overwrite });
  if (!started.ok) {
    for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
    throw new CannotRun();
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  try {
    if (csv !== undefined) await writePieces(batch, csv, movingCsv(moved));
    if (chart !== undefined) await writePieces(batch, chart, [movingChart(moved)]);
    const done = await batch.finish();
    if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
}
