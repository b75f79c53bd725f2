import { Command, Option } from "commander";
import { z } from "zod";
import { STAGES, utcDay } from "../base/index.js";
import { compareResults, rulebookChanges } from "../comparing/index.js";
import { changesJson, changesText } from "../outputs/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { type Screening, type ScreeningInput, screen } from "../screening/index.js";
import { addReadingOptions } from "./reading-options.js";
import { CannotRun, readingOf, rulebookOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import { optionMistakes, SCREEN_OPTIONS, type ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

const OWN = z.object({
  before: z.string().optional(),
  after: z.string().optional(),
  failOnChange: z.boolean().default(false),
});

/** `spotface what-changes`: which points of surveys would turn under another rulebook. */
export function whatChangesCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("what-changes")
    .description("compare two rulebooks on surveys: what is different in them, and which points would turn")
    .argument("<file...>", "survey files")
    .option("--before <folder>", "older rulebook: FOLDER, or FOLDER@COMMIT (default: the one with the program)")
    .option("--after <folder>", "newer rulebook: FOLDER, or FOLDER@COMMIT (default: the one with the program)")
    .option("--set <name>", "set of rules to apply (default: the one the newer rulebook names)")
    .addOption(
      new Option("--stage <stage>", "whether points are proposed or built").choices(STAGES).default("proposed"),
    )
    .option("--as-of <day>", "day the limits are looked up for, YYYY-MM-DD (default: today in UTC)")
    .option("--site <name>", "name of the site, part of every point id")
    .option("--site-file <file>", "what holds for the whole site, for types of machine and for single machines")
    .option("--json", "print it as one JSON document")
    .option("--fail-on-change", "end with exit code 1 if any point would turn");
  return addReadingOptions(command).action(async (files: string[], raw: Record<string, unknown>) => {
    const { before: _, after: __, failOnChange: ___, ...shared } = raw;
    const own = OWN.safeParse({ before: raw.before, after: raw.after, failOnChange: raw.failOnChange });
    const options = SCREEN_OPTIONS.safeParse(shared);
    if (!own.success || !options.success) {
      for (const { error } of [own, options]) if (error) terminal.err(optionMistakes(error));
      terminal.setExitCode(2);
      return;
    }
    try {
      const turned = await tell(files, options.data, own.data, terminal, program);
      terminal.setExitCode(turned && own.data.failOnChange ? 1 : 0);
    } catch (error) {
      if (!(error instanceof CannotRun)) throw error;
      terminal.setExitCode(2);
    }
  });
}

async function tell(
  files: readonly string[],
  options: ScreenOptions,
  sides: { readonly before?: string | undefined; readonly after?: string | undefined },
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<boolean> {
  if (sides.before === sides.after) {
    stop(terminal, "--before and --after are one rulebook; give another FOLDER or FOLDER@COMMIT for one of them");
  }
  const older = await rulebookOf({ rules: sides.before }, terminal);
  const newer = await rulebookOf({ rules: sides.after }, terminal);
  const set = options.set ?? newer.defaultSet;
  for (const { sets, name } of [older, newer]) {
    if (!sets.includes(set)) stop(terminal, `--set: "${name}" has no set "${set}"; it has ${sets.join(", ")}`);
  }
  const asOf = options.asOf ?? utcDay(terminal.now());
  const screened = async (rulebook: Rulebook): Promise<Screening> => {
    const site = await siteOf(options, rulebook, terminal);
    const reading = await readingOf(options, rulebook, terminal);
    const surveys = await surveysOf(files, options, reading, site, terminal, false);
    const { stage } = options;
    return screen({
      program,
      rulebook,
      surveys: surveys.opened.map(({ survey }) => survey),
      skipped: surveys.unreadable,
      site,
      options: { set, stage, asOf, siteName: options.site ?? null, reading: reading.settled, allFindings: false },
    });
  };
  const [before, after] = [await screened(older), await screened(newer)];
  const shown = {
    before: before.head.rulebook,
    after: after.head.rulebook,
    things: rulebookChanges(older, newer),
    turned: compareResults(before.points(), after.points()),
  };
  await terminal.out(options.json ? changesJson(shown) : changesText(shown));
  return shown.turned.turned.length > 0;
}
