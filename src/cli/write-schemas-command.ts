import { statSync } from "node:fs";
import { dirname, join } from "node:path";
import { Command } from "commander";
import type { TextFile } from "../base/index.js";
import {
  checkWritable,
  type DiskProblem,
  makeFolder,
  readTextFile,
  readTextFolder,
  writeTogether,
} from "../disk/index.js";
import { countOf } from "../outputs/index.js";
import { SHIPPED_SCHEMAS, schemasOf } from "./editor-schemas.js";
import type { Terminal } from "./terminal.js";

/** `spotface write-schemas`: puts the schemas where the files of a copied rulebook say that editors find them. */
export function writeSchemasCommand(terminal: Terminal): Command {
  return new Command("write-schemas")
    .description("put the schemas for editors where the first lines of rule files, or of other YAML files, name them")
    .argument("<path...>", "rulebook folders, folders of sites, or single files")
    .option("--overwrite", "replace schemas that are there and differ, such as those of an older version")
    .action(async (paths: string[], options: { readonly overwrite?: true }) => {
      terminal.setExitCode((await writeSchemas(paths, options.overwrite === true, terminal)) ? 0 : 2);
    });
}

async function writeSchemas(paths: readonly string[], overwrite: boolean, terminal: Terminal): Promise<boolean> {
  const refuse = ({ path, text }: Pick<DiskProblem, "path" | "text">): false => {
    terminal.err(`spotface: ${path}: ${text}\n`);
    return false;
  };
  const { files, problems } = await filesOf(paths);
  for (const problem of problems) refuse(problem);
  if (problems.length > 0) return false;
  const named = schemasOf(files);
  for (const { path, schema } of named.foreign) {
    terminal.err(`spotface: ${path}: "${schema}" is no schema of this program; it is left as it is\n`);
  }
  if (named.wanted.length === 0) {
    const text =
      "no file here names a schema of this program in its first line, such as ../../schemas/rule.schema.json";
    return refuse({ path: paths.join(", "), text });
  }
  const outputs: { readonly path: string; readonly data: string }[] = [];
  for (const { path, name } of named.wanted) {
    const shipped = await readTextFile(join(SHIPPED_SCHEMAS, name));
    if (!shipped.ok) return refuse(shipped.error);
    const there = await readTextFile(path);
    if (there.ok && there.file.text === shipped.file.text) continue;
    outputs.push({ path, data: shipped.file.text });
  }
  for (const { path } of outputs) {
    const unmade = await makeFolder(dirname(path));
    if (unmade !== null) return refuse(unmade);
  }
  const rules = { inputs: files.map(({ path }) => path), overwrite };
  const refused = await checkWritable(
    outputs.map(({ path }) => path),
    rules.inputs,
    overwrite,
  );
  for (const problem of refused) {
    const text = "it is there and differs from the schema of this version; give --overwrite to replace it";
    refuse(problem.code === "exists" ? { path: problem.path, text } : problem);
  }
  if (refused.length > 0) return false;
  const done = outputs.length === 0 ? { ok: true as const } : await writeTogether(outputs, rules);
  if (!done.ok) return refuse(done.error);
  for (const { path } of outputs) await terminal.out(`Written: schema: ${path}\n`);
  const all = `${countOf(named.files, "file")} ${named.files === 1 ? "finds its schema" : "find their schemas"}`;
  await terminal.out(`${all}, ${countOf(named.wanted.length, "schema")} in all\n`);
  return true;
}

const YAML = [".yaml", ".yml"];

async function filesOf(
  paths: readonly string[],
): Promise<{ readonly files: readonly TextFile[]; readonly problems: readonly DiskProblem[] }> {
  const files: TextFile[] = [];
  const problems: DiskProblem[] = [];
  for (const path of paths) {
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) {
      const read = await readTextFolder(path, YAML);
      files.push(...read.files);
      problems.push(...read.problems);
      continue;
    }
    const read = await readTextFile(path);
    if (read.ok) files.push(read.file);
    else problems.push(read.error);
  }
  return { files, problems };
}
