import type { Dirent } from "node:fs";
import { readdir, realpath, stat } from "node:fs/promises";
import { sep } from "node:path";
import type { TextFile } from "../base/index.js";
import { type DiskProblem, diskProblem, problemOf, shownPath } from "./disk-problem.js";
import { MOST_TEXT_BYTES, readTextFile } from "./read-text.js";

/** The text files of a folder that could be read, and what stood in the way of the others. */
export interface FolderReading {
  /** In the order of their paths by code unit, the same on every machine. */
  readonly files: readonly TextFile[];
  readonly problems: readonly DiskProblem[];
}

/** Bounds of what is taken from a folder. */
export interface FolderLimits {
  readonly files: number;
  readonly fileBytes: number;
  readonly totalBytes: number;
  readonly depth: number;
}

/** Far above any rulebook, far below what would strain a machine. */
export const DEFAULT_FOLDER_LIMITS: FolderLimits = {
  files: 10_000,
  fileBytes: MOST_TEXT_BYTES,
  totalBytes: 67_108_864,
  depth: 16,
};

/**
 * Reads all text files of a folder and the folders in it. Names that begin with a dot are left out. A link that
 * leads out of the folder is a problem, never followed.
 *
 * @param folder - as the user gave it; the paths of the files begin with it
 * @param extensions - endings of the names that count, with their dot, in lower case (".yaml")
 */
export async function readTextFolder(
  folder: string,
  extensions: readonly string[],
  limits: FolderLimits = DEFAULT_FOLDER_LIMITS,
): Promise<FolderReading> {
  const start = shownPath(folder).replace(/(?<=.)\/+$/, "");
  const problems: DiskProblem[] = [];
  const paths: string[] = [];
  try {
    const root = await realpath(start);
    if (!(await stat(root)).isDirectory()) {
      return { files: [], problems: [diskProblem(start, "not-a-folder", "it is a file, not a folder")] };
    }
    const walk: Walk = { root, extensions, limits, problems, paths, entered: new Set([root]) };
    await gather(start, 0, walk);
  } catch (error) {
    return { files: [], problems: [problemOf(start, error)] };
  }
  paths.sort(byCodeUnit);
  return { files: await readAll(start, paths, limits, problems), problems };
}

interface Walk {
  readonly root: string;
  readonly extensions: readonly string[];
  readonly limits: FolderLimits;
  readonly problems: DiskProblem[];
  readonly paths: string[];
  /** Folders already entered, by real path, so that a link cannot lead in circles. */
  readonly entered: Set<string>;
}

async function gather(folder: string, depth: number, walk: Walk): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true });
  entries.sort((a, b) => byCodeUnit(a.name, b.name));
  for (const entry of entries) {
    if (entry.name.startsWith(".") || walk.paths.length > walk.limits.files) continue;
    const path = folder === "/" ? `/${entry.name}` : `${folder}/${entry.name}`;
    try {
      await gatherEntry(entry, path, depth, walk);
    } catch (error) {
      walk.problems.push(problemOf(path, error));
    }
  }
}

async function gatherEntry(entry: Dirent, path: string, depth: number, walk: Walk): Promise<void> {
  const wanted = walk.extensions.some((extension) => entry.name.toLowerCase().endsWith(extension));
  if (entry.isFile()) {
    if (wanted) walk.paths.push(path);
    return;
  }
  if (!entry.isDirectory() && !entry.isSymbolicLink()) return;
  const real = await realpath(path);
  if (real !== walk.root && !real.startsWith(walk.root.endsWith(sep) ? walk.root : walk.root + sep)) {
    walk.problems.push(diskProblem(path, "link-out", "it is a link that leads out of the folder; it was not followed"));
    return;
  }
  const target = await stat(real);
  if (target.isFile()) {
    if (wanted) walk.paths.push(path);
    return;
  }
  if (!target.isDirectory() || walk.entered.has(real)) return;
  if (depth >= walk.limits.depth) {
    walk.problems.push(diskProblem(path, "too-deep", `folders nest more than ${walk.limits.depth} deep here`));
    return;
  }
  walk.entered.add(real);
  await gather(path, depth + 1, walk);
}

async function readAll(
  folder: string,
  paths: readonly string[],
  limits: FolderLimits,
  problems: DiskProblem[],
): Promise<readonly TextFile[]> {
  if (paths.length > limits.files) {
    problems.push(diskProblem(folder, "too-many-files", `it holds more than ${limits.files} files, the limit`));
    return [];
  }
  const files: TextFile[] = [];
  let total = 0;
  for (const path of paths) {
    const reading = await readTextFile(path, limits.fileBytes);
    if (!reading.ok) {
      problems.push(reading.error);
      continue;
    }
    total += reading.file.text.length;
    if (total > limits.totalBytes) {
      problems.push(
        diskProblem(
          folder,
          "too-large",
          `its files hold more than ${limits.totalBytes} characters together, the limit`,
        ),
      );
      return files;
    }
    files.push(reading.file);
  }
  return files;
}

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
