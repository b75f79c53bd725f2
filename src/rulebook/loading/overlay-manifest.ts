import { didYouMean, showText } from "../../base/index.js";
import type { OverlayFiles } from "../book/overlay.js";
import type { FileFinding } from "../book/rulebook.js";
import { manifestIn } from "../text/file-roles.js";
import type { RawOverlay } from "../text/raw.js";
import type { LoadedFolder } from "./load-files.js";

/** A book that an overlay can be made for: a rulebook, or an overlay below. */
export interface BookBelow {
  readonly name: string;
  readonly version: string;
}

/** Why a folder is no overlay at all; whatever else it holds is then not looked at. */
export function noOverlay({ root, files }: OverlayFiles): FileFinding | null {
  if (manifestIn(files, root, "overlay")) return null;
  const book = manifestIn(files, root, "rulebook");
  const path = book?.path ?? (root === "" ? "overlay.yaml" : `${root.replace(/\/$/, "")}/overlay.yaml`);
  const text = book
    ? "this is a rulebook; give it with --rules, or write overlay.yaml instead of rulebook.yaml"
    : "the overlay has no manifest; write overlay.yaml with name, version and over";
  return { file: path, line: 1, column: 1, code: book ? "rulebook-as-overlay" : "no-manifest", text };
}

/**
 * The manifest of an overlay, checked against the books below it.
 *
 * @param below - the rulebook, and the overlays that were laid over it before
 * @returns null where there is none, or none that fits; that was reported
 */
export function overlayManifest(
  { roled, loaded }: LoadedFolder,
  below: readonly BookBelow[],
  findings: FileFinding[],
): RawOverlay | null {
  const [first, second] = roled.filter(({ role }) => role === "overlay");
  if (first && second) {
    const text = `the manifest stands in ${first.file.path} already; keep one of them`;
    findings.push({ file: second.file.path, line: 1, column: 1, code: "second-manifest", text });
  }
  const manifest = loaded.find(({ role, fits }) => role === "overlay" && fits);
  if (!manifest) return null;
  const raw = manifest.source.data as RawOverlay;
  const { report } = manifest;
  if (below.some(({ name }) => name === raw.name)) {
    const text = `"${showText(raw.name)}" is the name of a book below; give each overlay once, and a name of its own`;
    report.atValue("/name", "name-taken", text);
    return null;
  }
  const meant = below.find(({ name }) => name === raw.over.name);
  if (!meant) {
    const names = below.map(({ name }) => name);
    const near =
      didYouMean(raw.over.name, names) ||
      `; below it lie ${names.map((name) => `"${name}"`).join(", ")}: give the book that it was made for`;
    report.atValue("/over/name", "not-over-this", `the overlay lies over "${showText(raw.over.name)}"${near}`);
    return null;
  }
  if (meant.version !== raw.over.version) {
    const text =
      `the overlay was made for version ${raw.over.version} of "${showText(meant.name)}", and this is ${meant.version}; ` +
      `look what is different (spotface what-changes), mend the overlay, and write ${meant.version} here`;
    report.atValue("/over/version", "other-version", text);
    return null;
  }
  return raw;
}
