import type { TextFile } from "../base/index.js";

/** What a file of a rulebook folder is, by its path alone. */
export type FileRole = "manifest" | "rule" | "condition" | "model" | "table" | "group" | "words" | "measuring";

/** A file with its role and its path inside the folder. */
export interface RoledFile {
  readonly role: FileRole;
  readonly file: TextFile;
  /** Path inside the rulebook folder, with `/`. */
  readonly inside: string;
  /** Name without folders and ending; the id of what the file holds. */
  readonly name: string;
}

/** Why a file has no role. */
export interface RoleMistake {
  readonly code: string;
  readonly text: string;
}

const FOLDERS: ReadonlyMap<string, FileRole> = new Map([
  ["conditions", "condition"],
  ["models", "model"],
  ["tables", "table"],
  ["groups", "group"],
  ["words", "words"],
  ["measuring", "measuring"],
]);

const LATER: ReadonlyMap<string, string> = new Map([
  ["overlays", "overlays are"],
  ["overlay", "overlays are"],
]);

const ENDING = /\.(?:ya?ml|json)$/i;

/**
 * The role of a file, a mistake, or null for a file that is none of the rulebook's data (a text beside the rules).
 *
 * @param root - folder that every path begins with; empty where paths begin at the manifest
 */
export function roleOf(file: TextFile, root: string): RoledFile | RoleMistake | null {
  const prefix = root === "" || root.endsWith("/") ? root : `${root}/`;
  if (!file.path.startsWith(prefix)) {
    return { code: "outside-folder", text: `the file is not in the rulebook folder "${root}"; move it there` };
  }
  const inside = file.path.slice(prefix.length);
  if (!ENDING.test(inside)) return null;
  const steps = inside.split("/");
  const name = (steps.at(-1) ?? "").replace(ENDING, "");
  const [folder = ""] = steps;
  const later = LATER.get(steps.length === 1 ? name : folder);
  if (later) return { code: "not-supported", text: `${later} not supported by this version; leave the file out` };
  if (steps.includes("..") || steps.includes("") || steps.includes(".")) {
    return { code: "bad-path", text: "the path is not a plain path inside the rulebook folder" };
  }
  if (steps.length === 1) {
    if (name === "rulebook") return { role: "manifest", file, inside, name };
    return { code: "no-topic", text: "only rulebook.yaml stands here; put a rule into a folder named after its topic" };
  }
  if (steps.length > 2) {
    return {
      code: "nested-folder",
      text: "folders inside topic folders are not read; put the file into its topic folder",
    };
  }
  return { role: FOLDERS.get(folder) ?? "rule", file, inside, name };
}

/** Whether a path inside a rulebook folder is one at which a rule is read. */
export function isRulePath(inside: string): boolean {
  const role = roleOf({ path: inside, text: "" }, "");
  return role !== null && "role" in role && role.role === "rule";
}
