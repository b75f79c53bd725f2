import { existsSync, realpathSync } from "node:fs";
import { sep } from "node:path";
import { sha256OfBytes } from "../base/index.js";
import { nodeInflating, readSurveyFile } from "../disk/index.js";
import type { ColumnGuide, SiteStatements } from "../facts/index.js";
import { type Survey, type SurveyReader, type SurveyUnderstood, surveyReader } from "../records/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { DEFAULT_LIMITS, type RawWorkbook, type ReadingOptions, readWorkbook } from "../workbook/index.js";
import type { OpenedReading } from "./open-reading.js";

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
  /** What a person has settled about the reading. */
  readonly guide?: ColumnGuide;
  readonly keepCells: boolean;
  readonly onProgress: (done: number) => void;
}

/**
 * Reads all survey files of a run, in the order given.
 *
 * @param rulebook - the rulebook, or whatever else holds the words by which surveys are understood
 */
export async function openSurveys(
  paths: readonly string[],
  rulebook: Pick<Rulebook, "words">,
  site: SiteStatements | null,
  options: OpenOptions,
): Promise<OpenedSurveys> {
  const reader = surveyReader(rulebook.words, site, options.guide ?? null);
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

/** A survey as it is understood, with the means to read it once more in another way. */
export type SurveyExplained =
  | {
      readonly ok: true;
      readonly understood: SurveyUnderstood;
      readonly again: (reader: SurveyReader) => SurveyUnderstood["reading"];
    }
  | { readonly ok: false; readonly file: string; readonly text: string };

/** Reads one survey file and says how it is understood. */
export async function understandSurvey(
  path: string,
  { words, guide, options }: OpenedReading,
): Promise<SurveyExplained> {
  const file = shownFile(path);
  const cells = await openCells(path, options);
  if (typeof cells === "string") return { ok: false, file, text: cells };
  const { workbook, digest } = cells;
  return {
    ok: true,
    understood: surveyReader(words, null, guide).understand(workbook, file, digest),
    again: (reader) => reader.read(workbook, file, digest),
  };
}

async function openOne(
  path: string,
  file: string,
  reader: ReturnType<typeof surveyReader>,
  options: ReadingOptions,
): Promise<OpenedSurvey | string> {
  const cells = await openCells(path, options);
  if (typeof cells === "string") return cells;
  const { workbook, digest, bytes } = cells;
  const survey = reader.read(workbook, file, digest);
  return survey.ok ? { survey: survey.survey, workbook, bytes } : survey.text;
}

async function openCells(
  path: string,
  options: ReadingOptions,
): Promise<{ workbook: RawWorkbook; digest: string; bytes: Uint8Array } | string> {
  const read = await readSurveyFile(path, options.limits?.fileBytes ?? DEFAULT_LIMITS.fileBytes);
  if (!read.ok) return read.error.text;
  const { bytes } = read;
  const reading = await readWorkbook(bytes, nodeInflating, options);
  return reading.ok ? { workbook: reading.workbook, digest: sha256OfBytes(bytes), bytes } : reading.error.text;
}
