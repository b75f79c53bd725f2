import { Command, Option } from "commander";
import { z } from "zod";
import { STAGES, type Stage } from "../base/index.js";
import { OutputBatch } from "../disk/index.js";
import { LANGUAGES, type Language } from "../facts/index.js";
import { type BlankSurveyInput, blankSurvey, countOf } from "../outputs/index.js";
import { findingLine, openRulebook } from "./open-rulebook.js";
import { OVER, overOption } from "./over-option.js";
import type { Terminal } from "./terminal.js";
import { addTrustOption, isAboutTrust, TRUST_OPTION } from "./trusted-book.js";

const OPTIONS = z.object({
  language: z.enum(LANGUAGES as [Language, ...Language[]]),
  stage: z.enum(STAGES as [Stage, ...Stage[]]),
  rules: z.string().optional(),
  over: OVER,
  ...TRUST_OPTION,
  set: z.string().optional(),
  overwrite: z.boolean().default(false),
});

/** `spotface blank-survey`: a workbook to be filled in on site, made from the rulebook. */
export function blankSurveyCommand(terminal: Terminal, program: BlankSurveyInput["program"]): Command {
  const command = new Command("blank-survey")
    .description("write an empty survey workbook to fill in, with drop-down lists, checks and advice on every cell")
    .argument("<file>", "workbook to write (.xlsx)")
    .addOption(
      new Option("--language <language>", "language of headings, words and advice").choices(LANGUAGES).default("en"),
    )
    .addOption(
      new Option("--stage <stage>", "whether points are proposed or built").choices(STAGES).default("proposed"),
    )
    .option("--rules <folder>", "rulebook whose rules say what is asked (default: the one that comes with the program)")
    .addOption(overOption())
    .option("--set <name>", "set of rules that say what is asked (default: the one that the rulebook names)")
    .option("--overwrite", "replace the file if it is there already");
  return addTrustOption(command).action(async (file: string, raw: unknown) => {
    const done = await writeBlankSurvey(file, OPTIONS.parse(raw), terminal, program);
    terminal.setExitCode(done ? 0 : 2);
  });
}

async function writeBlankSurvey(
  file: string,
  options: z.infer<typeof OPTIONS>,
  terminal: Terminal,
  program: BlankSurveyInput["program"],
): Promise<boolean> {
  const refuse = (text: string): false => {
    terminal.err(`spotface: ${text}\n`);
    return false;
  };
  if (!/\.xlsx$/i.test(file)) return refuse(`${file}: a blank survey is a workbook; choose a name that ends in .xlsx`);
  const loading = await openRulebook(options.rules ?? null, options.over, options.trust);
  if (!loading.ok) {
    for (const finding of loading.findings) terminal.err(findingLine(finding));
    if (isAboutTrust(loading.findings)) return refuse("the rulebook is not trusted; nothing was written");
    return refuse(`the rulebook has ${countOf(loading.findings.length, "mistake")}; correct it and run again`);
  }
  const { rulebook } = loading;
  const set = options.set ?? rulebook.defaultSet;
  if (!rulebook.sets.includes(set)) {
    return refuse(`--set: the rulebook has no set "${set}"; it has ${rulebook.sets.join(", ")}`);
  }
  const rules = rulebook.rules.filter((rule) => rule.sets.includes(set));
  const started = await OutputBatch.start([file], { inputs: [], overwrite: options.overwrite });
  if (!started.ok) {
    for (const { path, text } of started.problems) refuse(`${path}: ${text}`);
    return false;
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  try {
    const survey = await blankSurvey({
      rulebook: { ...rulebook, rules },
      language: options.language,
      stage: options.stage,
      program,
    });
    await batch.write(file, survey.bytes);
    const result = await batch.finish();
    if (!result.ok) return refuse(`${result.error.path}: ${result.error.text}`);
    for (const name of survey.leftOut)
      terminal.err(`spotface: no column for ${name}: no listed heading names it alone\n`);
    await terminal.out(`Written: blank survey with ${countOf(survey.columns.length, "column")}: ${file}\n`);
    return true;
  } finally {
    takeBack();
    await batch.abandon();
  }
}
