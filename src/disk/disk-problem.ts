/** Why a file or folder could not be read or written; `text` is one sentence without the path, lower-case start. */
export interface DiskProblem {
  /** Path as the user gave it, with `/`. */
  readonly path: string;
  /** Kebab-case, for programs. */
  readonly code: string;
  readonly text: string;
}

/** What the errors of the operating system mean to the person at the desk. */
const MEANINGS: ReadonlyMap<string, readonly [code: string, text: string]> = new Map([
  ["ENOENT", ["not-found", "there is no such file or folder; check the path"]],
  ["ENOTDIR", ["not-found", "part of the path is a file, not a folder; check the path"]],
  ["EISDIR", ["is-folder", "it is a folder, not a file"]],
  ["EACCES", ["no-permission", "access is not permitted; check the rights on the file and its folder"]],
  ["EPERM", ["locked", "access is refused; if the file is open in a spreadsheet program, close it there"]],
  ["EBUSY", ["locked", "it is in use by another program; close it there"]],
  ["ETXTBSY", ["locked", "it is in use by another program; close it there"]],
  ["EROFS", ["read-only", "the disk or share is read-only; choose another folder"]],
  ["ENOSPC", ["disk-full", "the disk is full; make room or choose another folder"]],
  ["EDQUOT", ["disk-full", "the space allowed to you on this disk is used up; make room or choose another folder"]],
  ["EFBIG", ["file-too-large", "the file would be larger than this disk allows"]],
  ["EMFILE", ["too-many-open", "too many files are open; try again"]],
  ["ENFILE", ["too-many-open", "too many files are open; try again"]],
  ["ENAMETOOLONG", ["name-too-long", "the name is longer than the disk allows; choose a shorter one"]],
  ["ELOOP", ["link-loop", "the path runs in circles through links; check the path"]],
  ["EINVAL", ["bad-path", "the path is not one that this system can use; check the path"]],
  ["ERR_INVALID_ARG_VALUE", ["bad-path", "the path is not one that this system can use; check the path"]],
  ["EIO", ["disk-error", "the disk reports an error; copy the file to another disk and try again"]],
]);

/** A path with `/` between its steps, as messages and results show it. */
export function shownPath(path: string): string {
  return path.replace(/\\/g, "/");
}

/** The problem with these words. */
export function diskProblem(path: string, code: string, text: string): DiskProblem {
  return { path: shownPath(path), code, text };
}

/**
 * What an error of the operating system means.
 *
 * @throws the error itself if it does not come from the operating system: then it is a mistake of ours
 */
export function problemOf(path: string, error: unknown): DiskProblem {
  const cause = error instanceof Error && "code" in error ? String(error.code) : null;
  if (cause === null) throw error;
  const [code, text] = MEANINGS.get(cause) ?? ["disk-error", `the system reports ${cause}`];
  return diskProblem(path, code, text);
}
