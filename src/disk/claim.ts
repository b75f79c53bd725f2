import { randomInt } from "node:crypto";
import { open, readdir, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { sha256OfBytes } from "../base/index.js";
import { type DiskProblem, diskProblem, problemOf } from "./disk-problem.js";
import { hasEnded, ownerOf, type TemporaryOwner, temporaryName } from "./left-behind.js";

/** What is done under a claim takes milliseconds; a claim as old as this is of a run that was killed, on whatever machine. */
const LONGEST_CLAIM_MS = 120_000;
const TRIES = 40;
const WAIT_MS = [20, 120] as const;

/** A claim that stands until it is released, or why there is none. */
export type Claiming =
  | { readonly ok: true; release(): Promise<void> }
  | { readonly ok: false; readonly error: DiskProblem };

/**
 * Claims a file for a moment, so that of several runs only one looks at it and replaces it at a time. Each run first puts up a
 * claim under a name of its own, then looks for those of others: so at least one of two sees the other, and nobody ever
 * takes away a claim of a run that goes on. Claims of runs that were killed do not count: the process is no more, or the claim
 * is older than any can be, by the clock of the disk.
 *
 * @param path - the file; it need not be there
 */
export async function claim(path: string): Promise<Claiming> {
  const folder = dirname(resolve(path));
  // Names that differ in case alone are one file on many disks.
  const place = sha256OfBytes(new TextEncoder().encode(basename(path).toLowerCase())).slice(0, 8);
  for (let attempt = 1; ; attempt++) {
    const own = temporaryName(place);
    const release = (): Promise<void> => rm(join(folder, own), { force: true }).catch(() => {});
    try {
      await (await open(join(folder, own), "wx")).close();
      const other = await otherClaim(folder, own, place);
      if (other === null) return { ok: true, release };
      await release();
      if (attempt === TRIES) return { ok: false, error: isBusy(path, other) };
    } catch (error) {
      await release();
      return { ok: false, error: problemOf(path, error) };
    }
    // Two that have seen each other must not meet again.
    await wait(randomInt(...WAIT_MS));
  }
}

/** The claim of another run that goes on. */
async function otherClaim(folder: string, own: string, place: string): Promise<TemporaryOwner | null> {
  const { mtimeMs: now } = await stat(join(folder, own));
  for (const name of await readdir(folder)) {
    const owner = ownerOf(name);
    if (owner?.claimOn !== place || name === own || hasEnded(owner)) continue;
    // One that is gone meanwhile was released.
    const since = await stat(join(folder, name)).catch(() => null);
    if (since !== null && now - since.mtimeMs < LONGEST_CLAIM_MS) return owner;
  }
  return null;
}

function isBusy(path: string, { isOfThisMachine, process: owner }: TemporaryOwner): DiskProblem {
  const who = `process ${owner} on ${isOfThisMachine ? "this" : "another"} machine`;
  return diskProblem(
    path,
    "busy",
    `another run (${who}) is replacing it at this moment; run again when that one is done`,
  );
}
