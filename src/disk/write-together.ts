import { type FileHandle, link, lstat, open, rename, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { checkWritable } from "./check-writable.js";
import { type DiskProblem, diskProblem, problemOf, shownPath } from "./disk-problem.js";
import { removeLeftBehind, temporaryName } from "./left-behind.js";
import { ReusedEncoding } from "./reused-encoding.js";
import { type AsRead, unlessChanged } from "./unless-changed.js";

/** What a set of outputs may and may not touch. */
export interface WritingRules {
  /** Paths of everything the run reads; none is ever written over. */
  readonly inputs: readonly string[];
  /** Whether existing files may be replaced. */
  readonly overwrite: boolean;
  /** Files that must still be as this run has read them when its outputs are put in place; else nothing is. */
  readonly asRead?: readonly AsRead[];
}

/** All outputs are in place, or why not; `inPlace` names those that already were when it failed. */
export type WritingResult =
  | { readonly ok: true }
  | { readonly ok: false; readonly error: DiskProblem; readonly inPlace: readonly string[] };

interface OpenOutput {
  readonly target: string;
  readonly temporary: string;
  /** Null where there are so many that each is open only while it is written to. */
  readonly file: FileHandle | null;
  readonly encoding: ReusedEncoding;
}

/** Files that a run keeps open at most; some systems allow 256 in all. */
const MOST_OPEN = 64;

/**
 * Several outputs written as one: each goes into a temporary file beside its target, and only when all are
 * complete and safe on the disk are they put in place, in the order of the targets. Until then, and after any
 * failure, an old file stays as it was.
 */
export class OutputBatch {
  readonly #outputs = new Map<string, OpenOutput>();
  readonly #overwrite: boolean;
  readonly #asRead: readonly AsRead[];
  #failed: DiskProblem | null = null;

  private constructor({ overwrite, asRead = [] }: WritingRules) {
    this.#overwrite = overwrite;
    this.#asRead = asRead;
  }

  /**
   * Checks all targets and opens their temporary files; nothing is left behind if one is refused, and what a killed
   * run left behind beside the targets is removed.
   *
   * @returns the batch, or every problem that was found
   */
  static async start(
    targets: readonly string[],
    rules: WritingRules,
  ): Promise<{ ok: true; batch: OutputBatch } | { ok: false; problems: readonly DiskProblem[] }> {
    const problems = await checkWritable(targets, rules.inputs, rules.overwrite);
    if (problems.length > 0) return { ok: false, problems };
    for (const folder of foldersOf(targets)) await removeLeftBehind(folder);
    const batch = new OutputBatch(rules);
    for (const target of targets) {
      const problem = await batch.#open(target, targets.length <= MOST_OPEN);
      if (problem === null) continue;
      await batch.abandon();
      return { ok: false, problems: [problem] };
    }
    return { ok: true, batch };
  }

  /**
   * Adds to one output. After a failure nothing more is written; `finish` says why.
   *
   * @param target - one of the targets, as given to `start`
   * @returns false once writing has failed, so that the caller can stop early
   * @throws RangeError if the target is none of the batch
   */
  async write(target: string, data: Uint8Array | string): Promise<boolean> {
    const output = this.#outputs.get(target);
    if (!output) throw new RangeError(`"${target}" is no output of this batch`);
    if (this.#failed) return false;
    const isText = typeof data === "string";
    try {
      const bytes = isText ? output.encoding.encode(data) : data;
      if (output.file !== null) await writeAll(output.file, bytes);
      else await appendTo(output.temporary, bytes);
      return true;
    } catch (error) {
      this.#failed = problemOf(target, error);
      return false;
    } finally {
      if (isText) output.encoding.release();
    }
  }

  /** Puts all outputs in place; after a failure removes what is not. The batch is over either way. */
  async finish(): Promise<WritingResult> {
    const outputs = [...this.#outputs.values()];
    const inPlace: string[] = [];
    let current = outputs[0]?.target ?? "";
    try {
      if (this.#failed === null) {
        for (const { target, file } of outputs) {
          current = target;
          await file?.sync();
          await file?.close();
        }
        const targets = outputs.map(({ target }) => target);
        this.#failed = await unlessChanged(this.#asRead, targets, async () => {
          for (const output of outputs) {
            current = output.target;
            const problem = await this.#putInPlace(output);
            if (problem !== null) return problem;
            inPlace.push(shownPath(output.target));
            this.#outputs.delete(output.target);
          }
          return null;
        });
      }
    } catch (error) {
      this.#failed = problemOf(current, error);
    }
    await this.abandon();
    for (const folder of foldersOf(outputs.map(({ target }) => target))) await syncFolder(folder);
    return this.#failed ? { ok: false, error: this.#failed, inPlace } : { ok: true };
  }

  /** Gives up: removes every temporary file that is still there. */
  async abandon(): Promise<void> {
    for (const { file, temporary } of this.#outputs.values()) {
      // Best effort: the file may be closed already, and a leftover harms no one.
      await file?.close().catch(() => {});
      await rm(temporary, { force: true }).catch(() => {});
    }
    this.#outputs.clear();
  }

  async #open(target: string, isKeptOpen: boolean): Promise<DiskProblem | null> {
    const temporary = join(dirname(target), temporaryName());
    try {
      const old = await stat(target).catch(() => null);
      const file = await open(temporary, "wx", old === null ? 0o666 : old.mode & 0o777);
      if (!isKeptOpen) await file.close();
      this.#outputs.set(target, { target, temporary, file: isKeptOpen ? file : null, encoding: new ReusedEncoding() });
      return null;
    } catch (error) {
      return problemOf(target, error);
    }
  }

  async #putInPlace({ target, temporary }: OpenOutput): Promise<DiskProblem | null> {
    if (!this.#overwrite) return putWhereNothingIs(target, temporary);
    const existing = await lstat(target).catch(() => null);
    if (existing?.isSymbolicLink()) return diskProblem(target, "is-link", "it became a link while the run went on");
    await rename(temporary, target);
    return null;
  }
}

/**
 * Writes several outputs as one; see `OutputBatch`.
 *
 * @param outputs - in the order in which they are put in place; what makes the set complete comes last
 */
export async function writeTogether(
  outputs: readonly { readonly path: string; readonly data: Uint8Array | string }[],
  rules: WritingRules,
): Promise<WritingResult> {
  const started = await OutputBatch.start(
    outputs.map(({ path }) => path),
    rules,
  );
  if (!started.ok) {
    const [error] = started.problems;
    if (!error) throw new Error("a refused batch must say why");
    return { ok: false, error, inPlace: [] };
  }
  for (const { path, data } of outputs) if (!(await started.batch.write(path, data))) break;
  return started.batch.finish();
}

async function writeAll(file: FileHandle, bytes: Uint8Array): Promise<void> {
  for (let from = 0; from < bytes.length; ) {
    const { bytesWritten } = await file.write(bytes, from, bytes.length - from);
    from += bytesWritten;
  }
}

/** What stands in the file is safe on the disk before it is closed. */
async function appendTo(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, "a");
  try {
    await writeAll(file, bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

function foldersOf(targets: readonly string[]): ReadonlySet<string> {
  return new Set(targets.map((target) => dirname(target)));
}

/** A hard link fails where a file has appeared meanwhile; a rename would silently replace it. */
async function putWhereNothingIs(target: string, temporary: string): Promise<DiskProblem | null> {
  try {
    await link(temporary, target);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    const exists = code === "EEXIST" || (await lstat(target).catch(() => null)) !== null;
    if (exists)
      return diskProblem(target, "exists", "it was made by someone else while the run went on; choose another name");
    // Disks without hard links.
    await rename(temporary, target);
    return null;
  }
  await rm(temporary, { force: true });
  return null;
}

/** Makes the new names survive a power cut where the system can do that; Windows cannot. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r").catch(() => null);
  await handle?.sync().catch(() => {});
  await handle?.close().catch(() => {});
}
