import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { PlainDay, TextFile } from "../base/index.js";
import { type DiskProblem, readFolderAtCommit, readTextFile, readTextFolder } from "../disk/index.js";
import type { Rulebook } from "../rulebook/index.js";
import {
  type FileFinding,
  loadRulebook,
  type OverlayFiles,
  type RulebookLoading,
  readSiteFile,
  type SiteReading,
  waysOn,
} from "../rulebook/index.js";

const PACKAGE_ROOT = fileURLToPath(new URL("../../", import.meta.url));

const RULE_FILES = [".yaml", ".yml", ".json"];

/** The rulebook that comes with the program, by the name under which results speak of it. */
export const SHIPPED_RULES = "rules";

/** The files of a rulebook folder, under the names by which results and mistakes speak of them. */
export interface RulebookFiles {
  readonly root: string;
  readonly files: readonly TextFile[];
}

/**
 * Loads a rulebook folder.
 *
 * @param folder - as the user gave it, or FOLDER@COMMIT for the folder as it stood then; null for the one that comes with the program, whose files are named from
 *   `rules/` on wherever the program is installed, so that results are the same on every machine
 * @param over - folders of sites to lay over it, in the same way, the lowest first
 */
export async function openRulebook(folder: string | null, over: readonly string[] = []): Promise<RulebookLoading> {
  const read = await readBookFiles(folder, over);
  return read.ok ? loadRulebook(read.files, read) : read;
}

/** Reads the files of a rulebook folder and of the overlays over it without looking into them; see `openRulebook`. */
export async function readBookFiles(
  folder: string | null,
  over: readonly string[],
): Promise<({ readonly ok: true } & RulebookFiles & { readonly over: readonly OverlayFiles[] }) | Unread> {
  const book = await readRulebookFiles(folder);
  if (!book.ok) return book;
  const overlays: OverlayFiles[] = [];
  for (const one of over) {
    const read = await readRulebookFiles(one);
    if (!read.ok) return read;
    overlays.push({ root: read.root, files: read.files });
  }
  return { ...book, over: overlays };
}

type Unread = Extract<RulebookLoading, { ok: false }>;

async function readRulebookFiles(folder: string | null): Promise<({ readonly ok: true } & RulebookFiles) | Unread> {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  const { files, problems } = await (commit === null
    ? readTextFolder(start, RULE_FILES)
    : readFolderAtCommit(start, commit, RULE_FILES));
  if (problems.length > 0) return { ok: false, findings: problems.map(findingOf) };
  const cut = start.replace(/\/+$/, "").length;
  const root = folder === null ? SHIPPED_RULES : start.replaceAll("\\", "/").replace(/(?<=.)\/+$/, "");
  return { ok: true, root, files: files.map(({ path, text }) => ({ path: `${root}${path.slice(cut)}`, text })) };
}

/** FOLDER@COMMIT, unless a folder really has that name. */
function atCommit(folder: string): readonly [folder: string, commit: string | null] {
  const [, before, commit] = /^(.+)@([^@/\\]+)$/.exec(folder) ?? [];
  return before === undefined || commit === undefined || existsSync(folder) ? [folder, null] : [before, commit];
}

/** The change record of a rulebook folder; empty where there is none. */
export async function readChanges(folder: string | null): Promise<string> {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  if (commit !== null) {
    const { files } = await readFolderAtCommit(start, commit, ["changes.md"]);
    return files.find(({ path }) => path === `${start}/CHANGES.md`)?.text ?? "";
  }
  const [path = ""] = changesPath(folder);
  const reading = await readTextFile(path);
  return reading.ok ? reading.file.text : "";
}

/** The path of the change record of a rulebook folder, whether it is there or not; none where it is read from a commit. */
export function changesPath(folder: string | null): readonly string[] {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  return commit === null ? [`${start.replace(/\/+$/, "")}/CHANGES.md`] : [];
}

/** The paths of all files that a rulebook and overlays are read from; none of what is read from a commit. */
export async function rulebookPaths(folder: string | null, over: readonly string[]): Promise<readonly string[]> {
  const paths: string[] = [];
  for (const one of [folder, ...over]) paths.push(...(await pathsOf(one)));
  return paths;
}

async function pathsOf(folder: string | null): Promise<readonly string[]> {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  if (commit !== null) return [];
  const { files } = await readTextFolder(start, RULE_FILES);
  return files.map(({ path }) => path);
}

/**
 * Reads a site file.
 *
 * @param asOf - the day on which accuracies of ways of measuring are looked up
 */
export async function openSiteFile(path: string, rulebook: Rulebook, asOf: PlainDay): Promise<SiteReading> {
  const reading = await readTextFile(path);
  if (!reading.ok) return { ok: false, findings: [findingOf(reading.error)] };
  return readSiteFile(reading.file, rulebook.models, waysOn(rulebook.ways, asOf));
}

/** A trouble with a file of the disk as a finding about it. */
export function findingOf(problem: DiskProblem): FileFinding {
  return { file: problem.path, line: 1, column: 1, code: problem.code, text: problem.text };
}

/** A finding in one line, in the form that editors and shells can follow. */
export function findingLine(finding: FileFinding): string {
  return `${finding.file}:${finding.line}:${finding.column}: ${finding.text} [${finding.code}]\n`;
}
