import { randomUUID } from "node:crypto";
import { readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { join } from "node:path";
import { sha256OfBytes } from "../base/index.js";

/** Temporary files of this program alone: the machine, the process, and a random part. */
const TEMPORARY = /^\.spotface-([0-9a-f]{8})-([1-9]\d{0,9})-[0-9a-f-]{36}\.tmp$/;
/** No run takes as long; what is older was left behind on whatever machine. */
const LONGEST_RUN_MS = 86_400_000;

const THIS_MACHINE = sha256OfBytes(new TextEncoder().encode(hostname())).slice(0, 8);

/** A name for a temporary file by which a later run knows whose it was. */
export function temporaryName(): string {
  return `.spotface-${THIS_MACHINE}-${process.pid}-${randomUUID()}.tmp`;
}

/**
 * Removes the temporary files that runs of this program left in a folder when they were killed. Files of runs that
 * may still go on stay, as does every other file.
 */
export async function removeLeftBehind(folder: string): Promise<void> {
  // Best effort throughout: a leftover harms no one, and whether the folder can be used is found out by using it.
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const [, machine, owner] = TEMPORARY.exec(name) ?? [];
    if (machine === undefined) continue;
    const path = join(folder, name);
    const isOver = machine === THIS_MACHINE && !isRunning(Number(owner));
    if (isOver || (await isOld(path))) await rm(path, { force: true }).catch(() => {});
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
