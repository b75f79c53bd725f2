import { resolve } from "node:path";
import { sha256OfBytes } from "../base/index.js";
import { claim } from "./claim.js";
import { type DiskProblem, diskProblem } from "./disk-problem.js";
import { readSurveyFile } from "./read-bytes.js";

/** A file as a run has read it. */
export interface AsRead {
  readonly path: string;
  /** SHA-256 of its bytes; null where there was no such file. */
  readonly digest: string | null;
}

/**
 * Does something only if files are still as they were read. Those that are to be replaced are claimed meanwhile, so that of two
 * runs that have read the same, the second one finds what the first one has made of it.
 *
 * @param targets - paths of the files that are replaced
 * @returns why it was not done, or what it gave
 */
export async function unlessChanged(
  files: readonly AsRead[],
  targets: readonly string[],
  act: () => Promise<DiskProblem | null>,
): Promise<DiskProblem | null> {
  const replaced = new Set(targets.map((path) => resolve(path)));
  const releases: (() => Promise<void>)[] = [];
  try {
    for (const { path } of files) {
      if (!replaced.has(resolve(path))) continue;
      const claiming = await claim(path);
      if (!claiming.ok) return claiming.error;
      releases.push(() => claiming.release());
    }
    for (const file of files) {
      const problem = await changedSince(file);
      if (problem !== null) return problem;
    }
    return await act();
  } finally {
    for (const release of releases) await release();
  }
}

async function changedSince({ path, digest }: AsRead): Promise<DiskProblem | null> {
  const reading = await readSurveyFile(path, Number.MAX_SAFE_INTEGER);
  if (!reading.ok && reading.error.code !== "not-found") return reading.error;
  const now = reading.ok ? sha256OfBytes(reading.bytes) : null;
  if (now === digest) return null;
  const what = digest === null ? "made it" : now === null ? "removed it" : "changed it";
  return diskProblem(
    path,
    "changed",
    `another run has ${what} since this one looked at it; nothing is written, run again`,
  );
}
