import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { PlainDay, TextFile } from "../base/index.js";
import { type DiskProblem, readFolderAtCommit, readTextFile, readTextFolder } from "../disk/index.js";
import type { Rulebook } from "../rulebook/index.js";
import {
  type FileFinding,
  type Overlay,
  type OverlayFiles,
  type RulebookLoading,
  readSiteFile,
  SIGNATURE_FILE,
  type SiteReading,
  waysOn,
} from "../rulebook/index.js";
import { loadRemembered } from "./remembered-books.js";
import { checkTrust, type SignatureText } from "./trusted-book.js";

const PACKAGE_ROOT = fileURLToPath(new URL("../../", import.meta.url));

const RULE_FILES = [".yaml", ".yml", ".json"];

/** Also what nobody means to leave out: loading says what is wrong with such names. */
const LOOKED_AT = [...RULE_FILES, ...RULE_FILES.map((ending) => `${ending}.txt`)];

/** The rulebook that comes with the program, by the name under which results speak of it. */
export const SHIPPED_RULES = "rules";

/** The files of a rulebook folder, under the names by which results and mistakes speak of them. */
export interface RulebookFiles {
  readonly root: string;
  readonly files: readonly TextFile[];
}

/**
 * Loads a rulebook folder, and checks its signature where somebody asks for one.
 *
 * @param folder - as the user gave it, or FOLDER@COMMIT for the folder as it stood then; null for the one that comes with the program, whose files are named from
 *   `rules/` on wherever the program is installed, so that results are the same on every machine
 * @param over - folders of sites to lay over it, in the same way, the lowest first
 * @param trust - files of public keys, of which one must have signed the rulebook, and one each overlay; none: no
 *   signature is asked for
 */
export async function openRulebook(
  folder: string | null,
  over: readonly string[] = [],
  trust: readonly string[] = [],
): Promise<RulebookLoading> {
  const read = await readBookFiles(folder, over);
  return read.ok ? loadTrusted(read, folder, { trust }) : read;
}

/** Loads a rulebook and its overlays from the files of their folders; see `openRulebook`. */
export async function loadTrusted(
  read: BookFiles,
  folder: string | null,
  { trust }: { readonly trust: readonly string[] },
): Promise<RulebookLoading> {
  const loading = loadRemembered(read);
  if (!loading.ok || trust.length === 0) return loading;
  // Each folder is signed for itself, so that a site signs its own and no more.
  const alone = read.over.length === 0 ? loading : loadRemembered({ ...read, over: [] });
  if (!alone.ok) return alone;
  const { rulebook } = loading;
  const book = await checkTrust(alone.rulebook, await signatureOf(folder, read.root), trust);
  if (!book.ok) return book;
  const overlays: Overlay[] = [];
  for (const [index, overlay] of rulebook.overlays.entries()) {
    const file = await signatureOf(read.over[index]?.folder ?? null, read.over[index]?.root ?? "");
    const checked = await checkTrust(overlay, file, trust);
    if (!checked.ok) return checked;
    overlays.push({ ...overlay, signedBy: checked.signedBy });
  }
  return { ok: true, rulebook: { ...rulebook, signedBy: book.signedBy, overlays } };
}

async function signatureOf(folder: string | null, root: string): Promise<SignatureText> {
  return { path: `${root}/${SIGNATURE_FILE}`, text: await readBeside(folder, SIGNATURE_FILE) };
}

/** A rulebook folder and the folders laid over it, read and not looked into. */
type BookFiles = RulebookFiles & { readonly over: readonly OverlayFolder[] };

/** Reads the files of a rulebook folder and of the overlays over it without looking into them; see `openRulebook`. */
export async function readBookFiles(
  folder: string | null,
  over: readonly string[],
): Promise<({ readonly ok: true } & BookFiles) | Unread> {
  const book = await readRulebookFiles(folder);
  if (!book.ok) return book;
  const overlays: OverlayFolder[] = [];
  for (const one of over) {
    const read = await readRulebookFiles(one);
    if (!read.ok) return read;
    overlays.push({ folder: one, root: read.root, files: read.files });
  }
  return { ...book, over: overlays };
}

/** The files of an overlay, with the folder as the user gave it. */
export interface OverlayFolder extends OverlayFiles {
  readonly folder: string;
}

type Unread = Extract<RulebookLoading, { ok: false }>;

/** Reads the files of a folder without looking into them; see `openRulebook`. */
export async function readRulebookFiles(
  folder: string | null,
): Promise<({ readonly ok: true } & RulebookFiles) | Unread> {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  const { files, problems } = await (commit === null
    ? readTextFolder(start, LOOKED_AT)
    : readFolderAtCommit(start, commit, LOOKED_AT));
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
  return (await readBeside(folder, "CHANGES.md")) ?? "";
}

/** The path of the change record of a rulebook folder, whether it is there or not; none where it is read from a commit. */
export function changesPath(folder: string | null): readonly string[] {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  return commit === null ? [`${start.replace(/\/+$/, "")}/CHANGES.md`] : [];
}

/** A text that stands beside the rules; null where there is none that can be read. */
async function readBeside(folder: string | null, name: string): Promise<string | null> {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  const path = `${start.replace(/\/+$/, "")}/${name}`;
  if (commit !== null) {
    const { files } = await readFolderAtCommit(start, commit, [name.toLowerCase()]);
    return files.find((file) => file.path === path)?.text ?? null;
  }
  const reading = await readTextFile(path);
  return reading.ok ? reading.file.text : null;
}

/** The paths of all files that a rulebook and overlays are read from, with their signatures; none of what is read from a commit. */
export async function rulebookPaths(folder: string | null, over: readonly string[]): Promise<readonly string[]> {
  const paths: string[] = [];
  for (const one of [folder, ...over]) paths.push(...(await pathsOf(one)));
  return paths;
}

async function pathsOf(folder: string | null): Promise<readonly string[]> {
  const [start, commit] = folder === null ? [`${PACKAGE_ROOT}rules`, null] : atCommit(folder);
  if (commit !== null) return [];
  const { files } = await readTextFolder(start, RULE_FILES);
  return files.length === 0 ? [] : [...files.map(({ path }) => path), `${start.replace(/\/+$/, "")}/${SIGNATURE_FILE}`];
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
