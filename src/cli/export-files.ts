import { type Filling, fillMapping } from "../handover/index.js";
import { type HandoverFile, handoverFiles, pointWording } from "../outputs/index.js";
import type { FileFinding } from "../rulebook/index.js";
import { openMapping } from "./open-mapping.js";
import { openRulebook } from "./open-rulebook.js";
import { type ScreenFilesOptions, screenFiles } from "./screen-files.js";

/** A filled mapping with its files, or why there is none: mistakes in files that people write, unreadable surveys. */
export type ExportFilesResult =
  | {
      readonly ok: true;
      /** Where it has problems, `files` gives none. */
      readonly filling: Filling;
      /** The files in the order in which they are to be loaded, made when asked for. */
      files(): AsyncIterable<HandoverFile>;
    }
  | {
      readonly ok: false;
      readonly findings: readonly FileFinding[];
      readonly unreadable: readonly { readonly file: string; readonly text: string }[];
    };

/**
 * Screens survey files and makes the files that a mapping describes, without writing any.
 *
 * @param mapping - path of the mapping file
 * @throws RangeError for an option that cannot be meant, or a file given twice
 */
export async function exportFiles(
  paths: readonly string[],
  mapping: string,
  options: ScreenFilesOptions = {},
): Promise<ExportFilesResult> {
  const run = await screenFiles(paths, options);
  if (!run.ok) return run;
  const loading = await openRulebook(options.rules ?? null, options.over, options.trust);
  if (!loading.ok) return { ok: false, findings: loading.findings, unreadable: [] };
  const opening = await openMapping(mapping, loading.rulebook);
  if (!opening.ok) return { ok: false, findings: opening.findings, unreadable: [] };
  const { screening } = run;
  const { asOf, program } = screening.head;
  const filling = fillMapping(opening.mapping, screening, pointWording(screening.head), loading.rulebook);
  return {
    ok: true,
    filling,
    files: async function* () {
      if (filling.problemCount > 0) return;
      for (const { target, mapped } of filling.targets) {
        yield* handoverFiles({ mapping: filling.mapping, target, mapped, asOf, program: program.name });
      }
    },
  };
}
