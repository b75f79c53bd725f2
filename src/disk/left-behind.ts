import { randomUUID } from "node:crypto";
import { readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { join } from "node:path";
import { sha256OfBytes } from "../base/index.js";

/** Temporary files of this program alone: the machine, the process, a random part, and what a claim is on. */
const TEMPORARY = /^\.spotface-([0-9a-f]{8})-([1-9]\d{0,9})-[0-9a-f-]{36}(?:-([0-9a-f]{8}))?\.tmp$/;
/** No run takes as long; what is older was left behind on whatever machine. */
const LONGEST_RUN_MS = 86_400_000;

const THIS_MACHINE = sha256OfBytes(new TextEncoder().encode(hostname())).slice(0, 8);

/** Whose a temporary file is. */
export interface TemporaryOwner {
  readonly isOfThisMachine: boolean;
  readonly process: number;
  /** What the claim is on; null where it is no claim but a file that is being written. */
  readonly claimOn: string | null;
}

/**
 * A name for a temporary file by which a later run knows whose it was.
 *
 * @param claimOn - 8 hexadecimal digits: what it is a claim on; left out for a file that is being written
 */
export function temporaryName(claimOn?: string): string {
  return `.spotface-${THIS_MACHINE}-${process.pid}-${randomUUID()}${claimOn === undefined ? "" : `-${claimOn}`}.tmp`;
}

/** Whose a file of this name is; null where it is no temporary file of this program. */
export function ownerOf(name: string): TemporaryOwner | null {
  const [, machine, owner, claimOn = null] = TEMPORARY.exec(name) ?? [];
  return machine === undefined ? null : { isOfThisMachine: machine === THIS_MACHINE, process: Number(owner), claimOn };
}

/** Whether the run that the file was of is known to have ended. */
export function hasEnded({ isOfThisMachine, process: owner }: TemporaryOwner): boolean {
  return isOfThisMachine && !isRunning(owner);
}

/**
 * Removes the temporary files that runs of this program left in a folder when they were killed. Files of runs that
 * may still go on stay, as does every other file.
 */
export async function removeLeftBehind(folder: string): Promise<void> {
  // Best effort throughout: a leftover harms no one, and whether the folder can be used is found out by using it.
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const owner = ownerOf(name);
    if (owner === null) continue;
    const path = join(folder, name);
    if (hasEnded(owner) || (await isOld(path))) await rm(path, { force: true }).catch(() => {});
  }
}

function isRunning(id: number): boolean {
  try {
    return process.kill(id, 0);
  } catch (error) {
    // A process of another user is there, though it may not be asked.
    return !(error instanceof Error && "code" in error && error.code === "ESRCH");
  }
}

async function isOld(path: string): Promise<boolean> {
  const age = await stat(path).then(
    ({ mtimeMs }) => Date.now() - mtimeMs,
    () => 0,
  );
  return age > LONGEST_RUN_MS;
}
