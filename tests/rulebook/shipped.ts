import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { TextFile } from "../../src/base/index.js";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";

/** Every YAML file of the shipped rulebook, with paths from the folder that holds it. */
export function shippedFiles(): readonly TextFile[] {
  const folder = new URL("../../rules/", import.meta.url).pathname;
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".yaml"))
    .map((path) => ({ path: `rules/${path.replaceAll("\\", "/")}`, text: readFileSync(join(folder, path), "utf8") }));
}

/** The shipped rulebook, loaded; throws with its findings where it does not load. */
export function shippedRulebook(): Rulebook {
  const loading = loadRulebook(shippedFiles(), { root: "rules" });
  if (loading.ok) return loading.rulebook;
  throw new Error(loading.findings.map((f) => `${f.file}:${f.line}:${f.column} ${f.text} [${f.code}]`).join("\n"));
}
