import { existsSync, realpathSync } from "node:fs";
import { sep } from "node:path";
import { sha256OfBytes } from "../base/index.js";
import { nodeInflating, readSurveyFile } from "../disk/index.js";
import type { SiteStatements } from "../facts/index.js";
import { type Survey, surveyReader } from "../records/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { DEFAULT_LIMITS, type RawWorkbook, type ReadingOptions, readWorkbook } from "../workbook/index.js";

/** A survey file, read; its cells and bytes are kept only where a screened workbook is to be written. */
export interface OpenedSurvey {
  readonly survey: Survey;
  readonly workbook: RawWorkbook | null;
  readonly bytes: Uint8Array | null;
}

/** A path as results show it, with `/`. */
export function shownFile(path: string): string {
  return sep === "\\" ? path.replaceAll(sep, "/") : path;
}

/** The first file that is given twice, by whatever path, or undefined. */
export function givenTwice(paths: readonly string[]): string | undefined {
  const seen = new Set<string>();
  return paths.find((path) => {
    const real = existsSync(path) ? realpathSync(path) : path;
    if (seen.has(real)) return true;
    seen.add(real);
    return false;
  });
}

/** What became of the files of a run. */
export interface OpenedSurveys {
  readonly opened: readonly OpenedSurvey[];
  /** Files that could not be read, each with one sentence why. */
  readonly unreadable: readonly { readonly file: string; readonly text: string }[];
}

/** How the files are read, and who is told of the progress (files done, as a fraction of the whole). */
export interface OpenOptions {
  readonly reading: ReadingOptions;
  readonly keepCells: boolean;
  readonly onProgress: (done: number) => void;
}

/** Reads all survey files of a run, in the order given. */
export async function openSurveys(
  paths: readonly string[],
  rulebook: Rulebook,
  site: SiteStatements | null,
  options: OpenOptions,
): Promise<OpenedSurveys> {
  const reader = surveyReader(rulebook.words, site);
  const opened: OpenedSurvey[] = [];
  const unreadable: { file: string; text: string }[] = [];
  for (const [i, path] of paths.entries()) {
    const file = shownFile(path);
    const onProgress = (share: number): void => options.onProgress((i + share * 0.9) / paths.length);
    const one = await openOne(path, file, reader, { ...options.reading, onProgress });
    if (typeof one === "string") unreadable.push({ file, text: one });
    else opened.push(options.keepCells ? one : { survey: one.survey, workbook: null, bytes: null });
    options.onProgress((i + 1) / paths.length);
  }
  return { opened, unreadable };
}

async function openOne(
  path: string,
  file: string,
  reader: ReturnType<typeof surveyReader>,
  options: ReadingOptions,
): Promise<OpenedSurvey | string> {
  const bytes = await readSurveyFile(path, options.limits?.fileBytes ?? DEFAULT_LIMITS.fileBytes);
  if (!bytes.ok) return bytes.error.text;
  const reading = await readWorkbook(bytes.bytes, nodeInflating, options);
  if (!reading.ok) return reading.error.text;
  const survey = reader.read(reading.workbook, file, sha256OfBytes(bytes.bytes));
  return survey.ok ? { survey: survey.survey, workbook: reading.workbook, bytes: bytes.bytes } : survey.text;
}
