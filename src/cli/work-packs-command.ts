import { existsSync } from "node:fs";
import { join } from "node:path";
import { Command } from "commander";
import { checkWritable, makeFolder, namesInFolder, OutputBatch } from "../disk/index.js";
import {
  AS_BUILT_WORKBOOK,
  asBuiltWorkbook,
  countOf,
  isPackFile,
  workPackFiles,
  workPacksJson,
} from "../outputs/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { type ScreeningInput, screen } from "../screening/index.js";
import { type WorkPacks, workPacks } from "../workpacks/index.js";
import { deviationsOf } from "./open-deviations.js";
import { inputPaths } from "./open-reading.js";
import { addBookOptions, addDeviationsOption, checkedAction } from "./run-options.js";
import { CannotRun, dayOf, readingOf, rulebookOf, setOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import { SCREEN_OPTIONS, type ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

/** `spotface work-packs`: the work on released points, per machine and outage, and what is held back. */
export function workPacksCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("work-packs")
    .description(
      "write work packs for released points, per machine and outage, a workbook for what is built, and what is held back",
    )
    .argument("<file...>", "survey files")
    .option("--out <folder>", "folder for the pages, the workbook and the JSON document")
    .option("--json", "print everything as one JSON document")
    .option("--overwrite", "replace files that are there already")
    .option("--set <name>", "set of rules to apply; it has to ask what can hurt somebody (default: the rulebook's own)")
    .option("--skip-unreadable", "leave out files that cannot be read, instead of ending the run");
  return addBookOptions(addDeviationsOption(command)).action(
    checkedAction(terminal, SCREEN_OPTIONS, (files: readonly string[], options) =>
      runWorkPacks(files, options, terminal, program),
    ),
  );
}

async function runWorkPacks(
  files: readonly string[],
  options: ScreenOptions,
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<void> {
  const { out, json } = options;
  if (out === undefined && !json) stop(terminal, "say where to: --out FOLDER, or --json");
  const rulebook = await rulebookOf(options, terminal);
  const set = setOf(options, rulebook, terminal);
  const site = await siteOf(options, rulebook, terminal);
  const deviations = await deviationsOf(options, rulebook, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const surveys = await surveysOf(files, options, reading, site, terminal, false);
  const packs = workPacks(
    screen({
      program,
      rulebook,
      surveys: surveys.opened.map(({ survey }) => survey),
      skipped: surveys.unreadable,
      site,
      deviations,
      options: {
        set,
        stage: "proposed",
        asOf: dayOf(options, terminal),
        siteName: options.site ?? null,
        reading: reading.settled,
        allFindings: false,
      },
    }),
    rulebook,
  );
  const { allHeldBack } = packs;
  if (allHeldBack !== null) stop(terminal, `no point can be released: ${allHeldBack.text}; ${allHeldBack.remedy}`);
  const inputs = [...files, ...(await inputPaths(options))];
  const written =
    out === undefined ? [] : await writePacks(packs, rulebook, { out, inputs, overwrite: options.overwrite }, terminal);
  if (json) await terminal.out(workPacksJson(packs));
  else await terminal.out(reportOf(packs, written));
  terminal.setExitCode(surveys.unreadable.length > 0 ? 1 : 0);
}

interface Where {
  readonly out: string;
  readonly inputs: readonly string[];
  readonly overwrite: boolean;
}

async function writePacks(
  packs: WorkPacks,
  rulebook: Rulebook,
  { out, inputs, overwrite }: Where,
  terminal: Terminal,
): Promise<readonly string[]> {
  const files = workPackFiles(packs);
  const workbook = join(out, AS_BUILT_WORKBOOK);
  // Without a released point there is nothing that could be built.
  const isBuilt = packs.packs.length > 0;
  const targets = [...files.map(({ name }) => join(out, name)), ...(isBuilt ? [workbook] : [])];
  if (existsSync(out)) {
    await refuseOldPacks(
      out,
      files.map(({ name }) => name),
      terminal,
    );
    const problems = await checkWritable(targets, inputs, overwrite);
    for (const { path, text } of problems) terminal.err(`spotface: ${path}: ${text}\n`);
    if (problems.length > 0) throw new CannotRun();
  }
  const unmade = await makeFolder(out);
  if (unmade !== null) stop(terminal, `${unmade.path}: ${unmade.text}`);
  const started = await OutputBatch.start(targets, { inputs, overwrite });
  if (!started.ok) {
    for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
    throw new CannotRun();
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  try {
    for (const { name, text } of files) await batch.write(join(out, name), text());
    if (isBuilt) await batch.write(workbook, await asBuiltWorkbook(packs, rulebook));
    const done = await batch.finish();
    if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
  return targets;
}

/** A pack of an earlier run in the folder could be taken for one of this run, though its points are released no more. */
async function refuseOldPacks(out: string, ours: readonly string[], terminal: Terminal): Promise<void> {
  const names = new Set(ours);
  const there = await namesInFolder(out);
  if (!there.ok) return stop(terminal, `${there.error.path}: ${there.error.text}`);
  const old = there.names.filter((name) => isPackFile(name) && !names.has(name)).toSorted();
  if (old.length === 0) return;
  const shown = old.slice(0, 3).join(", ");
  const more = old.length > 3 ? ` and ${old.length - 3} more` : "";
  stop(
    terminal,
    `${out}: holds work packs that this run does not give (${shown}${more}): what stands in them may not be released any ` +
      "more; move them away, or choose another folder",
  );
}

function reportOf({ packs, outages, heldBack }: WorkPacks, written: readonly string[]): string {
  const points = packs.reduce((sum, pack) => sum + pack.points.length, 0);
  const lines = [
    `Released: ${countOf(points, "point")} in ${countOf(packs.length, "work pack")}, one per machine and outage`,
    ...outages.map(
      (one) =>
        `  outage ${one.outage ?? "without a day"}: ${countOf(one.packs.length, "machine")}, ${countOf(one.points, "point")}`,
    ),
    `Held back: ${countOf(heldBack.length, "point")}`,
    "A verdict is a screening, not a permission.",
    "",
    ...written.map((file) => `Written: ${file}`),
  ];
  return `${lines.join("\n")}\n`;
}
