import type { TextFile } from "../base/index.js";
import { overlayReleaseProblems, type ReleaseProblem, releaseProblems } from "../comparing/index.js";
import type { RulesCheck } from "../outputs/index.js";
import { type FileFinding, loadRulebook, type OverlayFiles, type Rulebook, readOverlay } from "../rulebook/index.js";
import { type OverlayFolder, readChanges, readRulebookFiles } from "./open-rulebook.js";

/** What is to be put in force: a rulebook, and what lies over it. */
export interface NewerBook {
  /** As the user gave it; null for the one that comes with the program. */
  readonly folder: string | null;
  readonly root: string;
  readonly files: readonly TextFile[];
  /** What they come to, without what lies over them. */
  readonly rulebook: Rulebook;
  readonly over: readonly OverlayFolder[];
}

/**
 * What keeps a rulebook from being put in force after an older one; where an older overlay is given, what keeps the
 * overlay of the same name from it.
 *
 * @param since - FOLDER or FOLDER@COMMIT, a rulebook or an overlay
 */
export async function problemsSince(since: string, newer: NewerBook): Promise<RulesCheck["mistakes"]> {
  const older = await readRulebookFiles(since);
  if (!older.ok) return unread(since, older.findings);
  if (manifestOf(older, "overlay")) return overlaySince(since, older, newer);
  const loading = loadRulebook(older.files, { root: older.root });
  if (!loading.ok) return unread(since, loading.findings);
  const { manifest, changes } = await releaseFiles(newer, "rulebook");
  return withLines(releaseProblems(loading.rulebook, newer.rulebook, { manifest, changes }), [manifest, changes]);
}

async function overlaySince(since: string, older: OverlayFiles, { over }: NewerBook): Promise<RulesCheck["mistakes"]> {
  const before = readOverlay(older);
  if (!before.ok) return unread(since, before.findings);
  for (const one of over) {
    const after = readOverlay(one);
    if (!after.ok || after.overlay.name !== before.overlay.name) continue;
    const { manifest, changes } = await releaseFiles(one, "overlay");
    const problems = overlayReleaseProblems(before.overlay, after.overlay, { manifest, changes });
    return withLines(problems, [manifest, changes]);
  }
  const text = `this is the overlay "${before.overlay.name}" as it was; give it as it is now with --over`;
  return [{ file: since, line: 1, column: 1, code: "overlay-not-given", text, lineText: null }];
}

function unread(since: string, findings: readonly FileFinding[]): RulesCheck["mistakes"] {
  const asItWas = (text: string): string => `the older rulebook ${since} does not load with this version: ${text}`;
  return findings.map((finding) => ({ ...finding, text: asItWas(finding.text), lineText: null }));
}

function manifestOf({ root, files }: OverlayFiles, name: "rulebook" | "overlay"): TextFile | undefined {
  const manifest = new RegExp(`^/${name}\\.(?:ya?ml|json)$`);
  return files.find(({ path }) => manifest.test(path.slice(root.length)));
}

async function releaseFiles(book: OverlayFiles & Pick<NewerBook, "folder">, name: "rulebook" | "overlay") {
  const manifest = manifestOf(book, name) ?? { path: "", text: "" };
  const path = manifest.path.replace(/[^/]*$/, "CHANGES.md");
  return { manifest, changes: { path, text: await readChanges(book.folder) } };
}

function withLines(problems: readonly ReleaseProblem[], files: readonly TextFile[]): RulesCheck["mistakes"] {
  return problems.map((problem) => ({ ...problem, lineText: lineOf(problem, files) }));
}

/** The line of a file in which a finding stands; null where it is not there. */
export function lineOf({ file, line }: FileFinding, files: readonly TextFile[]): string | null {
  return files.find(({ path }) => path === file)?.text.split(/\r\n|\r|\n/)[line - 1] ?? null;
}
