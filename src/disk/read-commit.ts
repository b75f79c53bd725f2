import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { diskProblem, shownPath } from "./disk-problem.js";
import { DEFAULT_FOLDER_LIMITS, type FolderLimits, type FolderReading } from "./read-folder.js";

const run = promisify(execFile);

/**
 * Reads the text files of a folder as they stood at a commit of the git repository that the folder lies in. Nothing
 * is checked out, and no filter or text converter of the repository runs.
 *
 * @param folder - as the user gave it; the paths of the files begin with it
 * @param commit - hash, tag or branch
 * @param extensions - endings of the names that count, with their dot, in lower case
 */
export async function readFolderAtCommit(
  folder: string,
  commit: string,
  extensions: readonly string[],
  limits: FolderLimits = DEFAULT_FOLDER_LIMITS,
): Promise<FolderReading> {
  const start = shownPath(folder).replace(/(?<=.)\/+$/, "");
  const refuse = (code: string, text: string): FolderReading => ({
    files: [],
    problems: [diskProblem(start, code, text)],
  });
  const git = async (...args: readonly string[]): Promise<string> => {
    const { stdout } = await run("git", ["-C", folder, ...args], { maxBuffer: limits.totalBytes, encoding: "utf8" });
    return stdout;
  };
  let hash: string;
  try {
    hash = (await git("rev-parse", "--verify", "--quiet", "--end-of-options", `${commit}^{commit}`)).trim();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") {
      return refuse("no-git", "git is needed to read a commit, and it was not found; give a folder instead");
    }
    return refuse("no-commit", `there is no commit "${commit}" of a repository that holds this folder`);
  }
  const names = (await git("ls-tree", "-r", "-z", "--name-only", hash, ".")).split("\0").sort();
  const meant = names.filter((name) => isMeant(name, extensions));
  if (meant.length === 0) return refuse("no-files", `at the commit "${commit}" the folder holds no rule files`);
  if (meant.length > limits.files) {
    return refuse("too-many-files", `at the commit "${commit}" the folder holds ${meant.length} files`);
  }
  const files = [];
  for (const name of meant) {
    const text = await git("cat-file", "blob", `${hash}:./${name}`);
    files.push({ path: `${start}/${name}`, text });
  }
  return { files, problems: [] };
}

function isMeant(name: string, extensions: readonly string[]): boolean {
  return (
    extensions.some((end) => name.toLowerCase().endsWith(end)) && !name.split("/").some((part) => part.startsWith("."))
  );
}
