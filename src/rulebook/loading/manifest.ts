import { didYouMean } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";
import type { BookNames } from "../reading/condition-reading.js";
import type { RoledFile } from "../text/file-roles.js";
import type { LoadedFile } from "../text/loaded-file.js";
import type { RawManifest } from "../text/raw.js";

/**
 * Checks that there is one manifest, that it names what is there, and that there are rules at all: a screening
 * without rules would pass every point.
 */
export function checkManifest(
  roled: readonly RoledFile[],
  manifest: (LoadedFile & { readonly raw: RawManifest }) | undefined,
  names: BookNames,
  root: string,
  findings: FileFinding[],
): void {
  const [first, second] = roled.filter((file) => file.role === "manifest");
  const expected = root === "" ? "rulebook.yaml" : `${root.replace(/\/$/, "")}/rulebook.yaml`;
  const path = first?.file.path ?? expected;
  if (!first) {
    const text = "there is no manifest; write rulebook.yaml with name, version, language and sets";
    findings.push({ file: path, line: 1, column: 1, code: "no-manifest", text });
  }
  if (second) {
    const text = `the manifest stands in ${path} already; keep one of them`;
    findings.push({ file: second.file.path, line: 1, column: 1, code: "second-manifest", text });
  }
  if (!roled.some((file) => file.role === "rule")) {
    const text =
      "the rulebook has no rules, so every point would pass; put rules into topic folders beside the manifest";
    findings.push({ file: path, line: 1, column: 1, code: "no-rules", text });
  }
  if (!manifest) return;
  const { sets, defaultSet, baselineModel, methods } = manifest.raw;
  const rules = roled.filter((file) => file.role === "rule").map((file) => file.name);
  for (const [index, gate] of (methods?.gates ?? []).entries()) {
    if (rules.includes(gate)) continue;
    const near = didYouMean(gate, rules) || "; name a rule of this rulebook, or leave it out";
    manifest.report.atValue(`/methods/gates/${index}`, "unknown-rule", `there is no rule "${gate}"${near}`);
  }
  if (!sets.includes(defaultSet)) {
    const near = didYouMean(defaultSet, sets) || `; its sets are ${sets.join(", ")}`;
    manifest.report.atValue("/defaultSet", "unknown-set", `"${defaultSet}" is none of the sets${near}`);
  }
  if (!names.models.has(baselineModel)) {
    const near = didYouMean(baselineModel, names.models) || `; write models/${baselineModel}.yaml`;
    manifest.report.atValue("/baselineModel", "unknown-model", `there is no model "${baselineModel}"${near}`);
  }
}
