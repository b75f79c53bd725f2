import type { TextFile } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";

/** What a file of a rulebook folder or (the last two) of an overlay is, by its path alone. */
export type FileRole =
  | "manifest"
  | "rule"
  | "condition"
  | "model"
  | "table"
  | "group"
  | "words"
  | "measuring"
  | "overlay"
  | "change";

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

/** Names that only an overlay has: its manifest and its change files; and the folder where somebody keeps overlays. */
const OF_OVERLAYS: ReadonlySet<string> = new Set(["overlay", "overlays", "changes"]);

const ENDING = /\.(?:ya?ml|json)$/i;

/** Where a text editor has put an ending of its own behind the name, which some systems do not show. */
const MISNAMED = /\.(?:ya?ml|json)\.txt$/i;

/** The manifest at the top of a folder: of a rulebook, or of an overlay; null where there is none of that kind. */
export function manifestIn(files: readonly TextFile[], root: string, kind: "rulebook" | "overlay"): TextFile | null {
  const isIt = (file: TextFile): boolean => {
    const found = stepsInside(file, root);
    return found !== null && "steps" in found && found.steps.length === 1 && found.name === kind;
  };
  return files.find(isIt) ?? null;
}

/** The finding about a folder that holds a rulebook further down, and none itself; null where that is not so. */
export function manifestBelow(files: readonly TextFile[], root: string): FileFinding | null {
  if (manifestIn(files, root, "rulebook")) return null;
  const places = files.filter(({ path }) => /\/rulebook\.(?:ya?ml|json)$/i.test(path));
  const [first, ...others] = places.map(({ path }) => path.slice(0, path.lastIndexOf("/")));
  if (first === undefined) return null;
  const them = others.length > 0 ? `one of ${[first, ...others].join(", ")}` : first;
  const text = `there is no manifest rulebook.yaml here, but a rulebook further down; name ${them}`;
  return { file: root, line: 1, column: 1, code: "no-manifest", text };
}

/** The path of a file inside its folder. */
export interface StepsInside {
  /** With `/`. */
  readonly inside: string;
  readonly steps: readonly string[];
  /** Name without folders and ending. */
  readonly name: string;
}

/** The role of files in a folder of that name, where its name says it. */
export function roleInFolder(folder: string): FileRole | undefined {
  return FOLDERS.get(folder);
}

/**
 * The steps of a path below its folder, a mistake, or null for a file with another ending than data have.
 *
 * @param root - folder that the path must begin with; empty where paths begin inside it
 */
export function stepsInside(file: TextFile, root: string): StepsInside | RoleMistake | null {
  const prefix = root === "" || root.endsWith("/") ? root : `${root}/`;
  if (!file.path.startsWith(prefix)) {
    return { code: "outside-folder", text: `the file is not in the rulebook folder "${root}"; move it there` };
  }
  const inside = file.path.slice(prefix.length);
  if (MISNAMED.test(inside)) {
    const text = "a name that ends so is not read as part of the rulebook; take .txt off, or move the file elsewhere";
    return { code: "not-read", text };
  }
  if (!ENDING.test(inside)) return null;
  const steps = inside.split("/");
  if (steps.includes("..") || steps.includes("") || steps.includes(".")) {
    return { code: "bad-path", text: "the path is not a plain path inside the rulebook folder" };
  }
  return { inside, steps, name: (steps.at(-1) ?? "").replace(ENDING, "") };
}

/**
 * The role of a file, a mistake, or null for a file that is none of the rulebook's data (a text beside the rules).
 *
 * @param root - folder that every path begins with; empty where paths begin at the manifest
 */
export function roleOf(file: TextFile, root: string): RoledFile | RoleMistake | null {
  const found = stepsInside(file, root);
  if (found === null || "code" in found) return found;
  const { inside, steps, name } = found;
  const [folder = ""] = steps;
  if (OF_OVERLAYS.has(steps.length === 1 ? name : folder)) {
    const text = "this is part of an overlay; keep overlays in folders of their own, and give them with --over";
    return { code: "overlay-in-rulebook", text };
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
  return { role: roleInFolder(folder) ?? "rule", file, inside, name };
}

/** Whether a path inside a rulebook folder is one at which a rule is read. */
export function isRulePath(inside: string): boolean {
  const role = roleOf({ path: inside, text: "" }, "");
  return role !== null && "role" in role && role.role === "rule";
}
