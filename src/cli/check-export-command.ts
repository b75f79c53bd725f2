import { dirname, join } from "node:path";
import { Command } from "commander";
import { sha256OfBytes, showText } from "../base/index.js";
import { readSurveyFile } from "../disk/index.js";
import { deviationsFromReceipt, type ExportNow, type ExportReceipt, type FoundNow } from "../handover/index.js";
import { countOf } from "../outputs/index.js";
import { endCommand } from "./open-deviations.js";
import { openExportedState, receiptAt } from "./open-exported.js";
import { openRulebook } from "./open-rulebook.js";
import type { Terminal } from "./terminal.js";

/** `spotface check-export`: whether an export, and all that it was made from, is still as its receipt says. */
export function checkExportCommand(terminal: Terminal, program: ExportNow["program"]): Command {
  return new Command("check-export")
    .description(
      "compare the files of an export, and all that it was made from, with its receipt; exit code 1 names each deviation",
    )
    .argument("<receipt>", "receipt of the export; its files are looked for beside it, inputs where they were")
    .action(async (path: string) => {
      try {
        const receipt = await receiptAt(path, terminal);
        const deviations = deviationsFromReceipt(receipt, await lookedUp(path, receipt, program));
        await terminal.out(report(receipt, deviations));
        terminal.setExitCode(deviations.length > 0 ? 1 : 0);
      } catch (error) {
        endCommand(error, terminal);
      }
    });
}

async function lookedUp(path: string, receipt: ExportReceipt, program: ExportNow["program"]): Promise<ExportNow> {
  const { source, files, since } = receipt;
  const now: FoundNow[] = [];
  for (const { file } of files) now.push(await digestAt(join(dirname(path), file)));
  const sources: FoundNow[] = [];
  for (const { file } of source.files) sources.push(await digestAt(file));
  const loading = await openRulebook(source.rulebook.folder, source.rulebook.over);
  const [mistake] = loading.ok ? [] : loading.findings;
  const rulebook = loading.ok
    ? { digest: loading.rulebook.digest }
    : { missing: `it does not load: ${mistake?.text ?? "no reason given"}` };
  return { program, rulebook, files: now, sources, since: since === null ? null : await stateNow(since.file) };
}

async function digestAt(path: string): Promise<FoundNow> {
  const read = await readSurveyFile(path, Number.MAX_SAFE_INTEGER);
  return read.ok ? { digest: sha256OfBytes(read.bytes) } : { missing: read.error.text };
}

async function stateNow(path: string): Promise<NonNullable<ExportNow["since"]>> {
  const reading = await openExportedState(path);
  return reading.ok ? { state: reading.stored } : { missing: reading.problems.join("; ") };
}

function report({ targets, files, source }: ExportReceipt, deviations: readonly string[]): string {
  const lines = targets.map(({ target, counts }) => {
    const { new: fresh, changed, withdrawn, unchanged } = counts;
    return `  ${showText(target)}: ${fresh} new, ${changed} changed, ${withdrawn} withdrawn; ${unchanged} not sent`;
  });
  const looked = `${countOf(files.length, "file")} written, ${countOf(source.files.length + 1, "input")}`;
  return (
    `Export as of ${source.asOf}\n${lines.join("\n")}\n` +
    (deviations.length === 0
      ? `All as the receipt says: ${looked}\n`
      : `Not as the receipt says:\n${deviations.map((text) => `  ${showText(text, 600)}\n`).join("")}`)
  );
}
