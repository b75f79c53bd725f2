import type { TextFile } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";
import {
  CHANGE_SCHEMA,
  CONDITION_SCHEMA,
  GROUP_SCHEMA,
  type JsonSchema,
  MEASURING_SCHEMA,
  MODEL_SCHEMA,
  OVERLAY_SCHEMA,
  RULE_SCHEMA,
  RULEBOOK_SCHEMA,
  TABLE_SCHEMA,
  WORDS_SCHEMA,
} from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import type { FileLimits } from "../text/file-limits.js";
import type { FileRole, RoledFile, RoleMistake } from "../text/file-roles.js";
import type { LoadedFile } from "../text/loaded-file.js";
import { checkQuotes, OVERLAY_FREE_TEXT } from "../text/quotes.js";
import { readYaml } from "../text/read-yaml.js";
import { Report } from "../text/source.js";

const SCHEMAS: Readonly<Record<FileRole, JsonSchema>> = {
  manifest: RULEBOOK_SCHEMA,
  rule: RULE_SCHEMA,
  condition: CONDITION_SCHEMA,
  model: MODEL_SCHEMA,
  table: TABLE_SCHEMA,
  group: GROUP_SCHEMA,
  words: WORDS_SCHEMA,
  measuring: MEASURING_SCHEMA,
  overlay: OVERLAY_SCHEMA,
  change: CHANGE_SCHEMA,
};

/** The folder of a book: its files, and what is looked at of them. */
export interface BookFolder {
  /** Folder that every path begins with. */
  readonly root: string;
  readonly files: readonly TextFile[];
  readonly limits: FileLimits;
  readonly roleOf: (file: TextFile, root: string) => RoledFile | RoleMistake | null;
}

/** The files of a folder, each with what it is, and what could be read of them. */
export interface LoadedFolder {
  readonly roled: readonly RoledFile[];
  readonly loaded: readonly LoadedFile[];
}

/**
 * Reads the files of a folder and checks their form, in the order of their paths.
 *
 * @param findings - the list to add mistakes to
 * @returns null where the folder has too many files for any to be read
 */
export function loadFolder({ root, files, limits, roleOf }: BookFolder, findings: FileFinding[]): LoadedFolder | null {
  if (files.length > limits.files) {
    const text = `the folder has ${files.length} files, at most ${limits.files} are allowed`;
    findings.push({ file: root, line: 1, column: 1, code: "too-many-files", text });
    return null;
  }
  const roled: RoledFile[] = [];
  for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))) {
    const role = roleOf(file, root);
    if (role === null) continue;
    if ("role" in role) roled.push(role);
    else findings.push({ file: file.path, line: 1, column: 1, ...role });
  }
  return { roled, loaded: roled.flatMap((file) => loadFile(file, limits, findings)) };
}

function loadFile(roled: RoledFile, limits: FileLimits, findings: FileFinding[]): LoadedFile[] {
  const reading = readYaml(roled.file, limits);
  if (!reading.ok) {
    findings.push(...reading.findings);
    return [];
  }
  const { role } = roled;
  const report = new Report(reading.source, findings);
  const fits = checkSchema(reading.source, SCHEMAS[role], report);
  if (fits && (role === "overlay" || role === "change")) checkQuotes(report, OVERLAY_FREE_TEXT);
  else if (fits && role !== "words") checkQuotes(report);
  return [{ ...roled, source: reading.source, report, fits }];
}
