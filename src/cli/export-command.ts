import { Command } from "commander";
import { z } from "zod";
import { fillMapping } from "../handover/index.js";
import { countOf, differenceText, exportText, mappingProblemsText, pointWording } from "../outputs/index.js";
import { type ScreeningInput, screen } from "../screening/index.js";
import { exportToWrite } from "./export-difference.js";
import { deviationsOf } from "./open-deviations.js";
import { mappingOf } from "./open-mapping.js";
import { inputPaths } from "./open-reading.js";
import { READING_OPTIONS } from "./reading-options.js";
import { addDeviationsOption, addRunOptions, checkedAction } from "./run-options.js";
import { CannotRun, dayOf, readingOf, rulebookOf, setOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import { SCREEN_OPTIONS } from "./screen-options.js";
import type { Terminal } from "./terminal.js";
import { writeExport } from "./write-export.js";

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
    checkedAction(terminal, EXPORT_OPTIONS, (files: readonly string[], options) =>
      runExport(files, options, terminal, program),
    ),
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
  const written = options.dryRun ? null : await writeExport(toWrite, head, options, inputs, terminal);
  await terminal.out(
    (toWrite.difference === null ? "" : differenceText(options.since ?? "", toWrite.difference)) +
      exportText(toWrite.filling, head, written),
  );
  terminal.setExitCode(0);
}
