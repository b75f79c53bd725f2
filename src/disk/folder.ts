import { mkdir, readdir } from "node:fs/promises";
import { type DiskProblem, diskProblem, problemOf } from "./disk-problem.js";

const A_FILE = "it is a file, or part of its path is; name a folder";

/** Makes a folder with all that lead to it, where they are not there yet; null, or why it cannot be. */
export async function makeFolder(path: string): Promise<DiskProblem | null> {
  try {
    await mkdir(path, { recursive: true });
    return null;
  } catch (error) {
    return folderProblem(path, error);
  }
}

/** The names of what stands in a folder, none where there is no such folder, or why it cannot be looked into. */
export async function namesInFolder(
  path: string,
): Promise<
  { readonly ok: true; readonly names: readonly string[] } | { readonly ok: false; readonly error: DiskProblem }
> {
  try {
    return { ok: true, names: await readdir(path) };
  } catch (error) {
    const problem = folderProblem(path, error);
    return problem.code === "not-found" ? { ok: true, names: [] } : { ok: false, error: problem };
  }
}

function folderProblem(path: string, error: unknown): DiskProblem {
  const problem = problemOf(path, error);
  const cause = error instanceof Error && "code" in error ? error.code : null;
  if (cause === "EEXIST" || cause === "ENOTDIR") return diskProblem(path, "not-a-folder", A_FILE);
  return problem.code === "no-permission"
    ? { ...problem, text: "it may not be made or looked into; choose another folder" }
    : problem;
}
