import { Command, Option } from "commander";
import { z } from "zod";
import { STAGES } from "../base/index.js";
import { changesJson, changesText } from "../outputs/index.js";
import type { ScreeningInput } from "../screening/index.js";
import { changesBetween } from "./changes-between.js";
import { StoredMistake } from "./open-stored.js";
import { OVER, overOption } from "./over-option.js";
import { addReadingOptions } from "./reading-options.js";
import { CannotRun } from "./screen-inputs.js";
import { optionMistakes, SCREEN_OPTIONS } from "./screen-options.js";
import type { Terminal } from "./terminal.js";
import { addTrustOption } from "./trusted-book.js";

const OWN = z.object({
  before: z.string().optional(),
  after: z.string().optional(),
  beforeOver: OVER,
  afterOver: OVER,
  failOnChange: z.boolean().default(false),
});

/** `spotface what-changes`: which points of surveys would turn under another rulebook, or did since a stored result. */
export function whatChangesCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("what-changes")
    .description(
      "compare two rulebooks on surveys: what is different in them, and which points would turn; " +
        "a stored result can stand for either of them",
    )
    .argument("[file...]", "survey files; none where both sides are stored results")
    .option(
      "--before <older>",
      "older rulebook: FOLDER, or FOLDER@COMMIT, or a stored result document (default: the rulebook with the program)",
    )
    .option("--after <newer>", "newer rulebook or stored result, in the same way")
    .addOption(overOption("--over", "over both rulebooks"))
    .addOption(overOption("--before-over", "over the older rulebook alone"))
    .addOption(overOption("--after-over", "over the newer rulebook alone"))
    .option("--set <name>", "set of rules to apply (default: that of a stored result, or the newer rulebook's)")
    .addOption(
      new Option("--stage <stage>", "whether points are proposed or built (default: proposed)").choices(STAGES),
    )
    .option(
      "--as-of <day>",
      "day the limits are looked up for, YYYY-MM-DD (default: that of a stored result, or today)",
    )
    .option("--site <name>", "name of the site, part of every point id (default: that of a stored result)")
    .option("--site-file <file>", "what holds for the whole site, for types of machine and for single machines")
    .option("--json", "print it as one JSON document")
    .option("--fail-on-change", "end with exit code 1 if any point would turn");
  return addReadingOptions(addTrustOption(command)).action(async (files: string[], raw: Record<string, unknown>) => {
    const { before, after, beforeOver, afterOver, failOnChange, ...shared } = raw;
    const own = OWN.safeParse({ before, after, beforeOver, afterOver, failOnChange });
    const options = SCREEN_OPTIONS.safeParse(shared);
    if (!own.success || !options.success) {
      for (const { error } of [own, options]) if (error) terminal.err(optionMistakes(error));
      terminal.setExitCode(2);
      return;
    }
    try {
      const said = { ...options.data, stage: raw.stage === undefined ? undefined : options.data.stage };
      const shown = await changesBetween(files, said, own.data, terminal, program);
      await terminal.out(said.json ? changesJson(shown) : changesText(shown));
      terminal.setExitCode(own.data.failOnChange && shown.turned.turned.length > 0 ? 1 : 0);
    } catch (error) {
      sayWhy(error, terminal);
      terminal.setExitCode(2);
    }
  });
}

/** Of a run that could not be made the reasons were said, but for those of a stored result. */
function sayWhy(error: unknown, terminal: Terminal): void {
  if (error instanceof CannotRun) return;
  if (!(error instanceof StoredMistake)) throw error;
  for (const problem of error.problems) terminal.err(`spotface: ${problem}\n`);
}
