import { Command } from "commander";
import { z } from "zod";
import { isPlainDay, utcDay } from "../base/index.js";
import { checkJson, checkMistakesText, checkSarif, checkText, countOf, type RulesCheck } from "../outputs/index.js";
import { checkRulebook } from "./check-rulebook.js";
import { programIdentity } from "./identity.js";
import { OVER, overOption } from "./over-option.js";
import { optionMistakes } from "./screen-options.js";
import type { Terminal } from "./terminal.js";
import { addTrustOption, TRUST_OPTION } from "./trusted-book.js";

const OPTIONS = z
  .object({
    coverage: z.boolean().default(false),
    altered: z.boolean().default(false),
    complete: z.boolean().default(false),
    over: OVER,
    since: z.string().optional(),
    ...TRUST_OPTION,
    asOf: z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" }).optional(),
    json: z.boolean().default(false),
    sarif: z.boolean().default(false),
  })
  .strict();

/** `spotface check-rules`: loads a rulebook as a screening would, runs every case, and says what the cases prove. */
export function checkRulesCommand(terminal: Terminal): Command {
  const command = new Command("check-rules")
    .description("check a rulebook: form, facts, units, dates, citations, and every case written beside a rule")
    .argument("[folder]", "rulebook folder (default: the one that comes with the program)")
    .addOption(overOption())
    .option("--coverage", "say which outcomes, limits, missing facts, dates and citations no case shows")
    .option("--altered", "alter every limit, operator, condition and date in turn, and say what no case notices")
    .option("--complete", "both, and exit code 1 if anything is not shown or not noticed")
    .option(
      "--since <folder>",
      "older rulebook or overlay, FOLDER or FOLDER@COMMIT: what changed must be versioned and recorded",
    )
    .option("--as-of <day>", "day for which reviews are due, YYYY-MM-DD (default: today in UTC)")
    .option("--json", "print the check as one JSON document")
    .option("--sarif", "print it as SARIF 2.1.0, which code hosts show beside the lines of a change");
  return addTrustOption(command).action(async (folder: string | undefined, raw: unknown) => {
    const options = OPTIONS.safeParse(raw);
    if (!options.success) {
      terminal.err(optionMistakes(options.error));
      terminal.setExitCode(2);
      return;
    }
    const { json, sarif, complete } = options.data;
    if (json && sarif) {
      terminal.err("spotface: --json and --sarif both take the output; choose one\n");
      terminal.setExitCode(2);
      return;
    }
    const check = await checkRulebook(folder ?? null, {
      over: options.data.over,
      coverage: options.data.coverage || complete,
      alterations: options.data.altered || complete,
      since: options.data.since ?? null,
      trust: options.data.trust,
      asOf: options.data.asOf ?? utcDay(terminal.now()),
    });
    if (sarif) await terminal.out(checkSarif(check, programIdentity()));
    else if (json) await terminal.out(checkJson(check));
    else {
      terminal.err(checkMistakesText(check));
      await terminal.out(checkText(check));
    }
    if (check.rulebook === null) {
      terminal.err(`spotface: ${countOf(check.mistakes.length, "mistake")}; nothing was run\n`);
    }
    terminal.setExitCode(exitCodeOf(check, complete));
  });
}

function exitCodeOf({ rulebook, mistakes, cases, coverage, alterations }: RulesCheck, complete: boolean): 0 | 1 | 2 {
  if (rulebook === null || cases === null) return 2;
  if (cases.wrong.length > 0 || mistakes.length > 0) return 1;
  if (!complete) return 0;
  const isShort = coverage?.items.some(({ isShown }) => !isShown) ?? false;
  const isBlind = alterations?.unnoticed.some(({ suggestion }) => suggestion !== null) ?? false;
  return isShort || isBlind ? 1 : 0;
}
