import { type Command, Option } from "commander";
import type { z } from "zod";
import { STAGES } from "../base/index.js";
import { endCommand } from "./open-deviations.js";
import { overOption } from "./over-option.js";
import { addReadingOptions } from "./reading-options.js";
import { optionMistakes } from "./screen-options.js";
import type { Terminal } from "./terminal.js";
import { addTrustOption } from "./trusted-book.js";

/** Adds how points are judged: set of rules, stage, day, site, rulebook and what lies over it, and how surveys are read. */
export function addRunOptions(command: Command): Command {
  command
    .option("--set <name>", "set of rules to apply (default: the one the rulebook names)")
    .addOption(
      new Option("--stage <stage>", "whether points are proposed or built").choices(STAGES).default("proposed"),
    );
  return addBookOptions(command);
}

/** The same for a command that settles set and stage by itself. */
export function addBookOptions(command: Command): Command {
  command
    .option("--as-of <day>", "day the limits are looked up for, YYYY-MM-DD (default: today in UTC)")
    .option("--site <name>", "name of the site, part of every point id")
    .option("--site-file <file>", "what holds for the whole site, for types of machine and for single machines")
    .option("--rules <folder>", "rulebook to use (default: the one that comes with the program)")
    .addOption(overOption());
  return addReadingOptions(addTrustOption(command));
}

/** Adds the file of what somebody has accepted. */
export function addDeviationsOption(command: Command): Command {
  return command.option(
    "--deviations <file>",
    "findings that somebody has accepted for a time; they stay, and are marked",
  );
}

/**
 * What a command does with its options, once they are checked.
 *
 * @param run - gets the argument of the command; may stop it by throwing `CannotRun`
 */
export function checkedAction<Given, Form extends z.ZodType>(
  terminal: Terminal,
  form: Form,
  run: (given: Given, options: z.output<Form>) => Promise<void>,
): (given: Given, raw: unknown) => Promise<void> {
  return async (given, raw) => {
    const options = form.safeParse(raw);
    if (!options.success) {
      terminal.err(optionMistakes(options.error));
      terminal.setExitCode(2);
      return;
    }
    try {
      await run(given, options.data);
    } catch (error) {
      endCommand(error, terminal);
    }
  };
}
