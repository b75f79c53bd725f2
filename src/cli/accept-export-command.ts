import { Command } from "commander";
import { z } from "zod";
import { showText } from "../base/index.js";
import { writeTogether } from "../disk/index.js";
import {
  acceptExport,
  type ExportReceipt,
  exportedStateText,
  type RefusedRow,
  type ReturnedLine,
  refusedRows,
} from "../handover/index.js";
import { countOf } from "../outputs/index.js";
import { receiptAt, stateIfAny } from "./open-exported.js";

import { shownFile } from "./open-surveys.js";
import { openReturned } from "./returned-list.js";
import { checkedAction } from "./run-options.js";
import { CannotRun, stop } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

const OPTIONS = z
  .object({
    state: z.string(),
    refused: z.string().optional(),
    key: z.array(z.string().trim().min(1, "a heading cannot be empty")).default([]),
    target: z.string().optional(),
    encoding: z.string().optional(),
    separator: z.string().optional(),
  })
  .strict()
  .refine(({ refused, key }) => (refused === undefined) === (key.length === 0), {
    path: ["refused"],
    message: "--refused and --key belong together: the list, and the heading of the column that names the refused rows",
  });

type Options = z.infer<typeof OPTIONS>;

/** `spotface accept-export`: what the other side took counts as told, what it refused comes again. */
export function acceptExportCommand(terminal: Terminal): Command {
  return new Command("accept-export")
    .description("say that an export was taken: the state moves on, and rows that came back refused are sent again")
    .argument("<receipt>", "receipt of the export")
    .requiredOption("--state <file>", "state of accepted exports; made anew for the first one")
    .option("--refused <file>", "list (.csv, .xlsx) of the rows that were not taken")
    .option("--key <heading...>", "heading of the column of that list that names the row by its key, or by its id")
    .option("--target <name>", "target that the list speaks of (default: whichever has the key)")
    .option("--encoding <name>", "encoding of the list, where it is a text table that says nothing of it")
    .option("--separator <sign>", "separator of the list, where it is a text table")
    .action(checkedAction(terminal, OPTIONS, (path: string, options) => runAccept(path, options, terminal)));
}

async function runAccept(path: string, options: Options, terminal: Terminal): Promise<void> {
  const receipt = await receiptAt(path, terminal);
  const { stored: state, asRead } = await stateIfAny(options.state, terminal);
  const refused = await refusedOf(receipt, options, terminal);
  const byTarget = new Map<string, Set<string>>();
  for (const { target, id } of refused) byTarget.set(target, (byTarget.get(target) ?? new Set()).add(id));
  const accepting = acceptExport(state, receipt, byTarget);
  if (!accepting.ok) stop(terminal, `${shownFile(path)}: ${accepting.text}`);
  const inputs = [path, ...(options.refused === undefined ? [] : [options.refused])];
  const data = [...exportedStateText(accepting.state)].join("");
  // The state is read and written, and replaced only by one that follows it.
  const rules = { inputs, overwrite: state !== null, asRead: [asRead] };
  const done = await writeTogether([{ path: options.state, data }], rules);
  if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  await terminal.out(report(receipt, refused, options.state));
}

async function refusedOf(
  receipt: ExportReceipt,
  { refused, key, target, encoding, separator }: Options,
  terminal: Terminal,
): Promise<readonly RefusedRow[]> {
  if (refused === undefined) return [];
  const returned = await openReturned(refused, key, { encoding, separator });
  if (!returned.ok) stop(terminal, `${shownFile(refused)}: ${returned.text}`);
  const found = refusedRows(receipt, returned.lines, target ?? null);
  if (found.ok) return found.rows;
  for (const problem of found.problems) terminal.err(`spotface: ${shownFile(refused)}: ${problem}\n`);
  terminal.err("spotface: the state stays as it was\n");
  throw new CannotRun();
}

function report({ targets }: ExportReceipt, refused: readonly RefusedRow[], state: string): string {
  const sent = targets.reduce((sum, { rows }) => sum + rows.length, 0);
  const back = new Set(refused.map(({ target, id }) => JSON.stringify([target, id]))).size;
  const lines = new Set(refused.map(({ target, line }) => `  ${showText(target)}: ${keyText(line)}`));
  return (
    `Accepted: ${countOf(sent - back, "row")} of ${sent}\n` +
    (back === 0
      ? ""
      : `Refused, and sent again with the next export: ${countOf(back, "row")}\n${[...lines].join("\n")}\n`) +
    `Written: state of accepted exports: ${shownFile(state)}\n`
  );
}

function keyText({ key }: ReturnedLine): string {
  return key.map((part) => showText(part)).join(", ");
}
