import { constants } from "node:fs";
import { access, lstat, realpath, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { type DiskProblem, diskProblem, problemOf } from "./disk-problem.js";

/**
 * Looks, before a run, whether each output could be written, so that nothing is written when one is refused.
 *
 * @param targets - paths of all outputs of the run
 * @param inputs - paths of everything the run reads; none of them may be written over, by whatever name
 * @param overwrite - whether an existing file may be replaced
 * @returns one problem per refused target, in the order of the targets; empty if all may be written
 */
export async function checkWritable(
  targets: readonly string[],
  inputs: readonly string[],
  overwrite: boolean,
): Promise<readonly DiskProblem[]> {
  const guarded = new Set(await Promise.all(inputs.map(realOrAbsolute)));
  const taken = new Set<string>();
  const problems: DiskProblem[] = [];
  for (const target of targets) {
    const problem = await checkTarget(target, guarded, taken, overwrite);
    if (problem) problems.push(problem);
  }
  return problems;
}

async function checkTarget(
  target: string,
  guarded: ReadonlySet<string>,
  taken: Set<string>,
  overwrite: boolean,
): Promise<DiskProblem | null> {
  try {
    const folder = await realpath(dirname(resolve(target)));
    const real = join(folder, basename(resolve(target)));
    // Names that differ in case alone are one file on many disks; refused everywhere, so that all machines agree.
    const name = real.toLowerCase();
    if (taken.has(name))
      return diskProblem(target, "named-twice", "two outputs have this name; choose another for one");
    taken.add(name);
    const folderStats = await stat(folder);
    if (!folderStats.isDirectory()) return diskProblem(target, "not-a-folder", "its folder is a file");
    const existing = await lstat(real).catch(absentAsNull);
    const refusal = existing && (await checkExisting(target, real, existing, guarded, overwrite));
    if (refusal) return refusal;
    await access(folder, constants.W_OK | constants.X_OK);
    return null;
  } catch (error) {
    return folderProblem(target, error);
  }
}

async function checkExisting(
  target: string,
  real: string,
  existing: { isSymbolicLink(): boolean; isDirectory(): boolean; isFile(): boolean },
  guarded: ReadonlySet<string>,
  overwrite: boolean,
): Promise<DiskProblem | null> {
  if (existing.isSymbolicLink()) {
    return diskProblem(
      target,
      "is-link",
      "it is a link to another file, which is not written through; choose another name",
    );
  }
  if (existing.isDirectory()) return diskProblem(target, "is-folder", "it is a folder; name a file");
  if (!existing.isFile()) return diskProblem(target, "not-a-file", "it is a device or a pipe; name a file");
  if (guarded.has(real) || (await isSameFile(real, guarded))) {
    return diskProblem(
      target,
      "is-input",
      "it is a file that this run reads, which is never written over; choose another name",
    );
  }
  if (!overwrite) return diskProblem(target, "exists", "it exists already; choose another name or ask to overwrite it");
  const writable = await access(real, constants.W_OK).then(
    () => true,
    () => false,
  );
  return writable ? null : diskProblem(target, "read-only", "it is marked as read-only; choose another name");
}

/** Two names of one file (hard links, another spelling on a disk that ignores case) lead to the same place. */
async function isSameFile(real: string, guarded: ReadonlySet<string>): Promise<boolean> {
  const own = await stat(real, { bigint: true });
  for (const path of guarded) {
    const other = await stat(path, { bigint: true }).catch(absentAsNull);
    if (other && other.ino === own.ino && other.dev === own.dev) return true;
  }
  return false;
}

async function realOrAbsolute(path: string): Promise<string> {
  return realpath(path).catch(() => resolve(path));
}

function absentAsNull(error: unknown): null {
  if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
  throw error;
}

/** A missing folder is named as such: it is not the file that is missing. */
function folderProblem(target: string, error: unknown): DiskProblem {
  const problem = problemOf(target, error);
  if (problem.code === "not-found") return { ...problem, text: "its folder does not exist; make it first" };
  if (problem.code === "no-permission") return { ...problem, text: "its folder may not be written to; choose another" };
  return problem;
}
