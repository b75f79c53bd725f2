import { existsSync } from "node:fs";
import { mkdir, readdir } from "node:fs/promises";
import { join } from "node:path";
import { Command } from "commander";
import { z } from "zod";
import { sha256OfBytes } from "../base/index.js";
import { OutputBatch } from "../disk/index.js";
import { exportReceiptText, fillMapping, leftOverParts } from "../handover/index.js";
import {
  countOf,
  differenceText,
  exportText,
  handoverFileNames,
  handoverFiles,
  mappingProblemsText,
  pointWording,
  type WrittenFile,
} from "../outputs/index.js";
import { type ResultHead, type ScreeningInput, screen } from "../screening/index.js";
import { type ExportToWrite, exportToWrite, RECEIPT_NAME } from "./export-difference.js";
import { deviationsOf } from "./open-deviations.js";
import { mappingOf } from "./open-mapping.js";
import { inputPaths } from "./open-reading.js";
import { writePieces } from "./pieces.js";
import { READING_OPTIONS } from "./reading-options.js";
import { addDeviationsOption, addRunOptions, checkedAction } from "./run-options.js";
import { CannotRun, dayOf, readingOf, rulebookOf, setOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import { SCREEN_OPTIONS } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

const { set, stage, asOf, site, siteFile, deviations, rules, over, trust, overwrite } = SCREEN_OPTIONS.shape;

/** Options of `spotface export` as they come from the command line. */
const EXPORT_OPTIONS = z
  .object({
    ...READING_OPTIONS,
    ...{ set, stage, asOf, site, siteFile, deviations, rules, over, trust, overwrite },
    mapping: z.string(),
    out: z.string().optional(),
    dryRun: z.boolean().default(false),
    since: z.string().optional(),
  })
  .strict()
  .refine((options) => options.out !== undefined || options.dryRun, {
    path: ["out"],
    message: "name the folder to write into, or ask for a --dry-run",
  });
type ExportOptions = z.infer<typeof EXPORT_OPTIONS>;

/** `spotface export`: files for another system, as a mapping file describes them. */
export function exportCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("export")
    .description("write files for a maintenance system, as a mapping file describes them; all of them or none")
    .argument("<file...>", "survey files")
    .requiredOption("--mapping <file>", "which files to make, with which columns, values and form")
    .option("--out <folder>", "write into this folder")
    .option("--since <file>", "write only what changed since this state of accepted exports (spotface accept-export)")
    .option("--dry-run", "write nothing; show counts, remarks and the first rows")
    .option("--overwrite", "replace files that are there already");
  return addRunOptions(addDeviationsOption(command)).action(
    checkedAction(terminal, EXPORT_OPTIONS, (files, options) => runExport(files, options, terminal, program)),
  );
}

async function runExport(
  files: readonly string[],
  options: ExportOptions,
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<void> {
  const rulebook = await rulebookOf(options, terminal);
  const set = setOf(options, rulebook, terminal);
  const mapping = await mappingOf(options.mapping, rulebook, terminal);
  const site = await siteOf(options, rulebook, terminal);
  const deviations = await deviationsOf(options, rulebook, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const surveys = await surveysOf(files, { skipUnreadable: false }, reading, site, terminal, false);
  const screening = screen({
    program,
    rulebook,
    surveys: surveys.opened.map(({ survey }) => survey),
    skipped: [],
    site,
    deviations,
    options: {
      set,
      stage: options.stage,
      asOf: dayOf(options, terminal),
      siteName: options.site ?? null,
      reading: reading.settled,
      allFindings: false,
    },
  });
  const { head } = screening;
  const filling = fillMapping(mapping, screening, pointWording(head), rulebook);
  if (filling.problemCount > 0) {
    terminal.err(mappingProblemsText(filling));
    const count = countOf(filling.problemCount, "problem");
    stop(terminal, `${count} in what "${mapping.id}" would write; nothing is written`);
  }
  const given = [options.mapping, options.since].filter((path) => path !== undefined);
  const inputs = [...files, ...given, ...(await inputPaths(options))];
  const toWrite = await exportToWrite(filling, head, options);
  if (!toWrite.ok) {
    for (const { file, text } of toWrite.troubles)
      terminal.err(`spotface: ${file === null ? "" : `${file}: `}${text}\n`);
    throw new CannotRun();
  }
  const written = options.dryRun ? null : await writeFilling(toWrite, head, options, inputs, terminal);
  await terminal.out(
    (toWrite.difference === null ? "" : differenceText(options.since ?? "", toWrite.difference)) +
      exportText(toWrite.filling, head, written),
  );
  terminal.setExitCode(0);
}

/** Writes all files of a filled mapping together. */
async function writeFilling(
  { filling: { mapping, targets }, asRead, receipt }: ExportToWrite,
  head: ResultHead,
  { out = ".", overwrite }: ExportOptions,
  inputs: readonly string[],
  terminal: Terminal,
): Promise<readonly WrittenFile[]> {
  const { asOf, program } = head;
  const names = targets.flatMap((filled) => handoverFileNames({ ...filled, asOf }));
  const there = existsSync(out) ? await readdir(out) : [];
  const stale = leftOverParts(mapping.targets, asOf, there, names);
  for (const name of stale) {
    terminal.err(`spotface: ${join(out, name)}: a part of an earlier export that this one does not write; remove it\n`);
  }
  if (stale.length > 0) throw new CannotRun();
  await mkdir(out, { recursive: true });
  const started = await OutputBatch.start(
    // What makes the set complete is put in place last.
    [...names, RECEIPT_NAME].map((name) => join(out, name)),
    // Told against a state that has moved on, it could not be accepted.
    { inputs, overwrite, asRead },
  );
  if (!started.ok) {
    for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
    throw new CannotRun();
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  const written: WrittenFile[] = [];
  const digests: { file: string; digest: string }[] = [];
  try {
    for (const { target, mapped } of targets) {
      for await (const { name, what, bytes } of handoverFiles({
        mapping,
        target,
        mapped,
        asOf,
        program: program.name,
      })) {
        await batch.write(join(out, name), bytes);
        written.push({ what, file: join(out, name), note: null });
        digests.push({ file: name, digest: sha256OfBytes(bytes) });
      }
    }
    const path = join(out, RECEIPT_NAME);
    await writePieces(batch, path, exportReceiptText(receipt(digests)));
    written.push({ what: "receipt", file: path, note: null });
    const done = await batch.finish();
    if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
  return written;
}
