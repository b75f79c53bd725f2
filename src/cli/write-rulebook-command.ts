import { resolve } from "node:path";
import { Command, Option } from "commander";
import { z } from "zod";
import { isPlainDay, utcDay } from "../base/index.js";
import { OutputBatch } from "../disk/index.js";
import { countOf, type RulebookDocumentInput, rulebookHtml, rulebookMarkdown, rulesIndex } from "../outputs/index.js";
import { type Rulebook, runCase } from "../rulebook/index.js";
import { changesPath, readChanges, rulebookPaths } from "./open-rulebook.js";
import { OVER, overOption } from "./over-option.js";
import { checkedAction } from "./run-options.js";
import { CannotRun, rulebookOf, stop } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";
import { addTrustOption, TRUST_OPTION } from "./trusted-book.js";

const CASES = ["folded", "open", "none"] as const;

const OPTIONS = z
  .object({
    html: z.string().optional(),
    markdown: z.string().optional(),
    index: z.string().optional(),
    over: OVER,
    ...TRUST_OPTION,
    set: z.string().optional(),
    asOf: z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" }).optional(),
    cases: z.enum(CASES),
    overwrite: z.boolean().default(false),
  })
  .strict();

type WriteOptions = z.infer<typeof OPTIONS>;

/** `spotface write-rulebook`: the rulebook as a document that people read. */
export function writeRulebookCommand(terminal: Terminal, program: RulebookDocumentInput["program"]): Command {
  const command = new Command("write-rulebook")
    .description(
      "write the rulebook as a standard to read and print: scope, terms, rules with limits, reasons and sources",
    )
    .argument("[folder]", "rulebook folder (default: the one that comes with the program)")
    .option("--html <file>", "write it as one HTML file that needs nothing else, for a screen and for paper")
    .option("--markdown <file>", "write it as Markdown")
    .option("--index <file>", "write a list of the rule files, as Markdown, into the rulebook folder")
    .addOption(overOption())
    .option("--set <name>", "only the rules of one set (default: all rules)")
    .option("--as-of <day>", "day for which it says what is in force, YYYY-MM-DD (default: today in UTC)")
    .addOption(
      new Option("--cases <how>", "cases of the rules: folded away on a screen and printed, open, or none")
        .choices(CASES)
        .default("folded"),
    )
    .option("--overwrite", "replace files that are there already");
  return addTrustOption(command).action(
    checkedAction(terminal, OPTIONS, async (folder: string | undefined, options) => {
      await write(folder ?? null, options, terminal, program);
      terminal.setExitCode(0);
    }),
  );
}

async function write(
  folder: string | null,
  options: WriteOptions,
  terminal: Terminal,
  program: RulebookDocumentInput["program"],
): Promise<void> {
  const { html, markdown, index, set = null, cases, over, trust } = options;
  const targets = [html, markdown, index].filter((path) => path !== undefined);
  if (targets.length === 0) {
    stop(terminal, "nothing to write; say where: --html FILE, --markdown FILE or --index FILE");
  }
  if (index !== undefined) checkIndex(index, folder, over, terminal);
  const rulebook = await rulebookOf({ rules: folder ?? undefined, over, trust }, terminal);
  if (set !== null && !rulebook.sets.includes(set)) {
    stop(terminal, `--set: the rulebook has no set "${set}"; it has ${rulebook.sets.join(", ")}`);
  }
  checkCases(rulebook, terminal);
  const asOf = options.asOf ?? utcDay(terminal.now());
  const folders = [folder, ...over];
  const changes: string[] = [];
  for (const one of folders) changes.push(await readChanges(one));
  const input = { rulebook, set, asOf, changes, cases, program };
  const inputs = [...(await rulebookPaths(folder, over)), ...folders.flatMap(changesPath)];
  const started = await OutputBatch.start(targets, { inputs, overwrite: options.overwrite });
  if (!started.ok) {
    for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
    throw new CannotRun();
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  try {
    if (html !== undefined) await batch.write(html, rulebookHtml(input));
    if (markdown !== undefined) await batch.write(markdown, rulebookMarkdown(input));
    if (index !== undefined) await batch.write(index, rulesIndex(rulebook));
    const result = await batch.finish();
    if (!result.ok) stop(terminal, `${result.error.path}: ${result.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
  for (const path of targets) await terminal.out(`Written: ${path}\n`);
}

/** The list leads to the files of the folder that it lies in. */
function checkIndex(index: string, folder: string | null, over: readonly string[], terminal: Terminal): void {
  if (over.length > 0) stop(terminal, "--index: the list is of one folder; leave --over out");
  if (folder === null) stop(terminal, "--index: name the rulebook folder, into which the list is written");
  else if (resolve(index, "..") !== resolve(folder)) {
    stop(
      terminal,
      `--index: the list leads to the files beside it; write it to ${folder.replace(/[/\\]+$/, "")}/README.md`,
    );
  }
}

/** A standard is not to state cases that do not come out so. */
function checkCases(rulebook: Rulebook, terminal: Terminal): void {
  const wrong = rulebook.rules.flatMap((rule) =>
    rule.cases.flatMap((one) => {
      const differences = runCase(rule, one, rulebook).flatMap(({ difference }) => difference ?? []);
      return differences.map((difference) => `${one.at.file}:${one.at.line}: case "${one.name}": ${difference}`);
    }),
  );
  for (const line of wrong) terminal.err(`${line}\n`);
  if (wrong.length > 0)
    stop(terminal, `${countOf(wrong.length, "case")} of the rulebook came out otherwise; nothing was written`);
}
