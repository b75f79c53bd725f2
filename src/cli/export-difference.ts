import { sha256OfBytes, showText, windows1252Byte } from "../base/index.js";
import { readSurveyFile } from "../disk/index.js";
import {
  differenceSince,
  digestOfState,
  type ExportReceipt,
  type ExportSource,
  exportReceipt,
  type Filling,
  filesToSend,
  type TargetDifference,
} from "../handover/index.js";
import { differenceText } from "../outputs/index.js";
import type { ResultHead } from "../screening/index.js";
import { DEFAULT_LIMITS } from "../workbook/index.js";
import { stateAt } from "./open-exported.js";
import { shownFile } from "./open-surveys.js";
import type { ReadingChosen } from "./reading-options.js";
import { CannotRun, stop } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

/** What a receipt is called, in the folder of the files that it speaks of. */
export const RECEIPT_NAME = "export-receipt.json";

/** Options that decide what an export is made from. */
type SourceOptions = Pick<ReadingChosen, "columns" | "words"> & {
  readonly mapping: string;
  readonly since?: string | undefined;
  readonly siteFile?: string | undefined;
  readonly site?: string | undefined;
  readonly deviations?: string | undefined;
  readonly rules?: string | undefined;
  readonly over?: readonly string[] | undefined;
};

/** What is to be written of a filled mapping, and what is told of it. */
export interface ExportToWrite {
  readonly filling: Filling;
  /** Counts and remarks on the difference; empty where all rows are written. */
  readonly text: string;
  /** The receipt, once the digests of the written files are known. */
  receipt(files: ExportReceipt["files"]): ExportReceipt;
}

/**
 * Leaves of a filled mapping the rows that the other side does not have yet, where a state of accepted exports was given;
 * else all. What cannot be told is said, and ends the run.
 */
export async function exportToWrite(
  whole: Filling,
  head: ResultHead,
  options: SourceOptions,
  terminal: Terminal,
): Promise<ExportToWrite> {
  const state = options.since === undefined ? null : await stateAt(options.since, terminal);
  const source = await sourceOf(head, options, terminal);
  const files = whole.targets.map(({ mapped }) => mapped);
  const words = whole.targets.flatMap(({ target }) =>
    target.withdrawn === null ? [] : [[target.id, target.withdrawn] as const],
  );
  const found = differenceSince(files, state, source, new Map(words));
  const problems = found.ok ? found.targets.flatMap((one, i) => notInEncoding(one, whole.targets[i])) : found.problems;
  for (const problem of problems) terminal.err(`spotface: ${problem}\n`);
  if (!found.ok || problems.length > 0) throw new CannotRun();
  const sent = filesToSend(files, found.targets);
  const targets = whole.targets.map((filled, i) => ({ ...filled, mapped: sent[i] ?? filled.mapped }));
  const since =
    state === null || options.since === undefined
      ? null
      : { file: shownFile(options.since), digest: digestOfState(state) };
  return {
    filling: { ...whole, targets },
    text: since === null ? "" : differenceText(since.file, found),
    receipt: (written) => exportReceipt(found.targets, since, source, written),
  };
}

async function sourceOf(head: ResultHead, options: SourceOptions, terminal: Terminal): Promise<ExportSource> {
  const { asOf, stage, set, program, rulebook, reading, surveys } = head;
  const given = [
    ["site file", options.siteFile],
    ["deviations", options.deviations],
    ["column file", options.columns],
    ...options.words.map((path) => ["word file", path] as const),
    ["mapping", options.mapping],
  ] as const;
  const files: ExportSource["files"] = surveys.map(({ file, digest }) => ({ role: "survey", file, digest }));
  for (const [role, path] of given) {
    if (path === undefined) continue;
    const read = await readSurveyFile(path, DEFAULT_LIMITS.fileBytes);
    if (!read.ok) stop(terminal, `${read.error.path}: ${read.error.text}`);
    files.push({ role, file: shownFile(path), digest: sha256OfBytes(read.bytes) });
  }
  const { name, version, digest } = rulebook;
  return {
    program,
    asOf,
    stage,
    set,
    site: options.site ?? null,
    options: [...reading.options],
    rulebook: { name, version, digest, folder: options.rules ?? null, over: [...(options.over ?? [])] },
    files,
  };
}

/** The last values of withdrawn rows were held to the form of their own time. */
function notInEncoding(
  { target, rows }: TargetDifference,
  filled: Filling["targets"][number] | undefined,
): readonly string[] {
  if (filled?.target.form.encoding !== "windows-1252") return [];
  return rows.flatMap(({ change, values }) => {
    const strange = change === "withdrawn" ? [...values.join("")].find(isStrange) : undefined;
    return strange === undefined
      ? []
      : [`${target}: a row that is gone holds "${showText(strange)}", which windows-1252 does not have; write utf-8`];
  });
}

function isStrange(sign: string): boolean {
  return windows1252Byte(sign.codePointAt(0) ?? 0) === null;
}
