import { sha256OfBytes, showText, windows1252Byte } from "../base/index.js";
import { type AsRead, type DiskProblem, readSurveyFile } from "../disk/index.js";
import {
  type DifferenceFound,
  differenceSince,
  digestOfState,
  type ExportReceipt,
  type ExportSource,
  exportReceipt,
  type Filling,
  filesToSend,
  type TargetDifference,
} from "../handover/index.js";
import type { ResultHead } from "../screening/index.js";
import { DEFAULT_LIMITS } from "../workbook/index.js";
import { openExportedState } from "./open-exported.js";
import { shownFile } from "./open-surveys.js";

/** What a receipt is called, in the folder of the files that it speaks of. */
export const RECEIPT_NAME = "export-receipt.json";

/** Options that decide what an export is made from. */
type SourceOptions = {
  readonly columns?: string | undefined;
  readonly words: readonly string[];
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
  /** What changed since the state that was given; null where all rows are written. */
  readonly difference: Extract<DifferenceFound, { ok: true }> | null;
  /** The state as it was read; empty where there was none. */
  readonly asRead: readonly AsRead[];
  /** The receipt, once the digests of the written files are known. */
  receipt(files: ExportReceipt["files"]): ExportReceipt;
}

/** Why nothing can be written; `file` is null where it is told of rows. */
export interface ExportTrouble {
  readonly file: string | null;
  readonly text: string;
}

/**
 * Leaves of a filled mapping the rows that the other side does not have yet, where a state of accepted exports was given;
 * else all.
 */
export async function exportToWrite(
  whole: Filling,
  head: ResultHead,
  options: SourceOptions,
): Promise<
  ({ readonly ok: true } & ExportToWrite) | { readonly ok: false; readonly troubles: readonly ExportTrouble[] }
> {
  const opening = options.since === undefined ? null : await openExportedState(options.since);
  if (opening?.ok === false) return failed(opening.problems, shownFile(options.since ?? ""));
  const state = opening?.stored ?? null;
  const sources = await sourceOf(head, options);
  if (!sources.ok) return failed([sources.error.text], sources.error.path);
  const { source } = sources;
  const files = whole.targets.map(({ mapped }) => mapped);
  const words = whole.targets.flatMap(({ target }) =>
    target.withdrawn === null ? [] : [[target.id, target.withdrawn] as const],
  );
  const found = differenceSince(files, state, source, new Map(words));
  if (!found.ok) return failed(found.problems, null);
  const problems = found.targets.flatMap((one, i) => notInEncoding(one, whole.targets[i]));
  if (problems.length > 0) return failed(problems, null);
  const sent = filesToSend(files, found.targets);
  const targets = whole.targets.map((filled, i) => ({ ...filled, mapped: sent[i] ?? filled.mapped }));
  const since =
    state === null || options.since === undefined
      ? null
      : { file: shownFile(options.since), digest: digestOfState(state) };
  return {
    ok: true,
    filling: { ...whole, targets },
    difference: state === null ? null : found,
    asRead: opening === null ? [] : [opening.asRead],
    receipt: (written) => exportReceipt(found.targets, since, source, written),
  };
}

function failed(problems: readonly string[], file: string | null): { ok: false; troubles: readonly ExportTrouble[] } {
  return { ok: false, troubles: problems.map((text) => ({ file, text })) };
}

async function sourceOf(
  head: ResultHead,
  options: SourceOptions,
): Promise<{ ok: true; source: ExportSource } | { ok: false; error: DiskProblem }> {
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
    if (!read.ok) return read;
    files.push({ role, file: shownFile(path), digest: sha256OfBytes(read.bytes) });
  }
  const { name, version, digest } = rulebook;
  const source: ExportSource = {
    program,
    asOf,
    stage,
    set,
    site: options.site ?? null,
    options: [...reading.options],
    rulebook: { name, version, digest, folder: options.rules ?? null, over: [...(options.over ?? [])] },
    files,
  };
  return { ok: true, source };
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
