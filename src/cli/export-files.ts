import { type ExportReceipt, type Filling, fillMapping } from "../handover/index.js";
import { type HandoverFile, handoverFiles, handoverGroup, pointWording } from "../outputs/index.js";
import type { FileFinding } from "../rulebook/index.js";
import { type ExportToWrite, exportToWrite } from "./export-difference.js";
import { openMapping } from "./open-mapping.js";
import { openRulebook } from "./open-rulebook.js";
import { type ScreenFilesOptions, screenFiles } from "./screen-files.js";

/** A filled mapping with its files, or why there is none: mistakes in files that people write, unreadable surveys. */
export type ExportFilesResult =
  | {
      readonly ok: true;
      /** With the rows that are written; where it has problems, `files` gives none. */
      readonly filling: Filling;
      /** The files in the order in which they are to be loaded, made when asked for. */
      files(): AsyncIterable<HandoverFile>;
      /** What changed since the state that was given; null where all rows are written. */
      readonly difference: ExportToWrite["difference"];
      /** The receipt, once the digests (SHA-256) of the written files are known. */
      receipt(files: ExportReceipt["files"]): ExportReceipt;
    }
  | {
      readonly ok: false;
      readonly findings: readonly FileFinding[];
      readonly unreadable: readonly { readonly file: string; readonly text: string }[];
    };

/** How files are screened and made by one call; all of it may be left out. */
export interface ExportFilesOptions extends ScreenFilesOptions {
  /** State of accepted exports: only what changed since is written. */
  readonly since?: string;
}

/**
 * Screens survey files and makes the files that a mapping describes, without writing any.
 *
 * @param mapping - path of the mapping file
 * @throws RangeError for an option that cannot be meant, or a file given twice
 */
export async function exportFiles(
  paths: readonly string[],
  mapping: string,
  { since, ...options }: ExportFilesOptions = {},
): Promise<ExportFilesResult> {
  const run = await screenFiles(paths, options);
  if (!run.ok) return run;
  const loading = await openRulebook(options.rules ?? null, options.over, options.trust);
  if (!loading.ok) return { ok: false, findings: loading.findings, unreadable: [] };
  const opening = await openMapping(mapping, loading.rulebook);
  if (!opening.ok) return { ok: false, findings: opening.findings, unreadable: [] };
  const { screening } = run;
  const { asOf, program } = screening.head;
  const whole = fillMapping(opening.mapping, screening, pointWording(screening.head), loading.rulebook);
  if (whole.problemCount > 0) return { ok: true, filling: whole, files: noFiles, difference: null, receipt: noReceipt };
  const { siteName: site, words = [], ...given } = options;
  const toWrite = await exportToWrite(whole, screening.head, { ...given, site, words, mapping, since });
  if (!toWrite.ok) {
    const unreadable = toWrite.troubles.map(({ file, text }) => ({ file: file ?? mapping, text }));
    return { ok: false, findings: [], unreadable };
  }
  const { filling, difference, receipt } = toWrite;
  return {
    ok: true,
    filling,
    difference,
    receipt,
    files: async function* () {
      const { mapping, targets } = filling;
      for (const filled of targets) yield* handoverFiles({ mapping, ...filled, asOf, program: program.name });
      const group = handoverGroup({ mapping, targets, asOf, isWhole: difference === null });
      if (group !== null) yield group;
    },
  };
}

async function* noFiles(): AsyncIterableIterator<HandoverFile> {}

function noReceipt(): never {
  throw new Error("a mapping that has problems writes nothing, and so has no receipt");
}
