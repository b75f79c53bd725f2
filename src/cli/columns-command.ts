import { Command } from "commander";
import { z } from "zod";
import { checkWritable, OutputBatch } from "../disk/index.js";
import { columnsJson, columnsReport } from "../outputs/index.js";
import { inputPaths } from "./open-reading.js";
import { understandSurvey } from "./open-surveys.js";
import { OVER, overOption } from "./over-option.js";
import { addReadingOptions, READING_OPTIONS } from "./reading-options.js";
import { checkedAction } from "./run-options.js";
import { CannotRun, readingOf, rulebookOf, stop } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";
import { triedDraft } from "./tried-draft.js";
import { addTrustOption, TRUST_OPTION } from "./trusted-book.js";

const OPTIONS = z
  .object({
    ...READING_OPTIONS,
    json: z.boolean().default(false),
    write: z.string().optional(),
    overwrite: z.boolean().default(false),
    rules: z.string().optional(),
    over: OVER,
    ...TRUST_OPTION,
  })
  .strict();

type ColumnsOptions = z.infer<typeof OPTIONS>;

/** `spotface columns`: how a survey is understood, column by column, and a draft of a column file. */
export function columnsCommand(terminal: Terminal): Command {
  const command = new Command("columns")
    .description(
      "show how a survey is understood, column by column, and draft a column file for surveys that come again",
    )
    .argument("<file>", "survey file (.xlsx, .csv)")
    .option("--write <file>", "write a draft of a column file (.yaml), to be handed in again with --columns")
    .option("--overwrite", "replace the draft if it is there already")
    .option("--json", "print it as one JSON document")
    .option("--rules <folder>", "rulebook whose words are known (default: the one that comes with the program)")
    .addOption(overOption());
  return addReadingOptions(addTrustOption(command)).action(
    checkedAction(terminal, OPTIONS, async (file: string, options) => {
      terminal.setExitCode(await showColumns(file, options, terminal));
    }),
  );
}

/** Shows how the survey is understood; 1 where no points come of it, or where the draft does not give the same reading. */
async function showColumns(file: string, options: ColumnsOptions, terminal: Terminal): Promise<0 | 1> {
  const rulebook = await rulebookOf(options, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const inputs = [file, ...(await inputPaths(options))];
  const { write } = options;
  if (write !== undefined) await refuse(write, inputs, options.overwrite, terminal);
  const opened = await understandSurvey(file, reading);
  if (!opened.ok) stop(terminal, `${opened.file}: ${opened.text}`);
  const { understood, again } = opened;
  await terminal.out(options.json ? columnsJson(understood) : columnsReport(understood));
  const read = understood.reading.ok;
  if (!read) terminal.err("spotface: no points come of this survey as it is understood\n");
  if (write === undefined) return read ? 0 : 1;
  const draft = triedDraft(understood, reading.words, again);
  await writeDraft(write, draft.text, inputs, options.overwrite, terminal);
  terminal.err(`Written: draft of a column file: ${write}\n`);
  if (draft.same) return read ? 0 : 1;
  terminal.err(
    `spotface: ${write}: the draft does not give quite the same reading; compare the two with spotface columns\n`,
  );
  return 1;
}

async function refuse(path: string, inputs: readonly string[], overwrite: boolean, terminal: Terminal): Promise<void> {
  if (!/\.ya?ml$/i.test(path)) stop(terminal, `${path}: a column file is YAML; choose a name that ends in .yaml`);
  const problems = await checkWritable([path], inputs, overwrite);
  for (const problem of problems) terminal.err(`spotface: ${problem.path}: ${problem.text}\n`);
  if (problems.length > 0) throw new CannotRun();
}

async function writeDraft(
  path: string,
  text: string,
  inputs: readonly string[],
  overwrite: boolean,
  terminal: Terminal,
): Promise<void> {
  const started = await OutputBatch.start([path], { inputs, overwrite });
  if (!started.ok) stop(terminal, started.problems.map((problem) => `${problem.path}: ${problem.text}`).join("; "));
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  try {
    await batch.write(path, text);
    const done = await batch.finish();
    if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
}
