import type { TextFile, TextPlace } from "../base/index.js";
import type { OverlayAlone, Rulebook } from "../rulebook/index.js";
import { rulebookChanges } from "./rulebook-changes.js";

/** Why a changed rulebook is not fit to be put in force. */
export interface ReleaseProblem extends TextPlace {
  readonly code: "version-not-raised" | "no-change-record" | "not-in-change-record";
  readonly text: string;
}

/** The files in which a release says that it is one. */
export interface ReleaseFiles {
  /** The manifest, rulebook.yaml or overlay.yaml. */
  readonly manifest: TextFile;
  /** The change record, CHANGES.md. */
  readonly changes: TextFile;
}

/**
 * Holds a changed rulebook to its change record: where a rule, model or named condition is another than in the older
 * book, the version must be a higher one, and the change record must name each of them below that version.
 *
 * @returns nothing where the books differ in nothing that an outcome rests on
 */
export function releaseProblems(before: Rulebook, after: Rulebook, files: ReleaseFiles): readonly ReleaseProblem[] {
  return problemsOf(rulebookChanges(before, after), { before, after }, files);
}

/**
 * Holds a changed overlay to its own change record in the same way, by what it says itself, whatever lies below it. One
 * that was only made to fit another book needs a higher version and a heading, too.
 */
export function overlayReleaseProblems(
  before: OverlayAlone,
  after: OverlayAlone,
  files: ReleaseFiles,
): readonly ReleaseProblem[] {
  const keys = [...new Set([...before.things.keys(), ...after.things.keys()])].sort();
  const things = keys.flatMap((key): ReleasedThing[] => {
    const [one, other] = [before.things.get(key), after.things.get(key)];
    const thing = other ?? one;
    if (!thing || one?.digest === other?.digest) return [];
    const how = one === undefined ? "added" : other === undefined ? "removed" : "changed";
    return [{ kind: thing.kind, id: thing.id, how }];
  });
  const isSameBelow = before.over.name === after.over.name && before.over.version === after.over.version;
  const below = isSameBelow ? [] : [`made for ${after.over.name} ${after.over.version}`];
  return problemsOf(things, { before, after }, files, below);
}

/** Something that was changed, as far as a change record names it. */
interface ReleasedThing {
  readonly kind: string;
  readonly id: string;
  readonly how: string;
}

/** @param more - what else was changed, in words; the change record need not name it */
function problemsOf(
  things: readonly ReleasedThing[],
  { before, after }: { readonly before: { readonly version: string }; readonly after: { readonly version: string } },
  files: ReleaseFiles,
  more: readonly string[] = [],
): readonly ReleaseProblem[] {
  if (things.length + more.length === 0) return [];
  const names = [...things.map(({ kind, id, how }) => `${kind} ${id} (${how})`), ...more];
  if (compareVersions(after.version, before.version) <= 0) {
    const text = `changed since ${before.version}: ${names.join(", ")}; raise the version and write it into CHANGES.md`;
    return [{ ...lineWith(files.manifest, /^version:/), code: "version-not-raised", text }];
  }
  const heading = new RegExp(`^##\\s+${after.version.replaceAll(".", "\\.")}(?![\\d.])`);
  const section = sectionOf(files.changes, heading);
  if (section === null) {
    const text = `CHANGES.md has no heading "## ${after.version}"; say below it what changed: ${names.join(", ")}`;
    return [{ ...lineWith(files.changes, /^#/), code: "no-change-record", text }];
  }
  return things
    .filter(({ id }) => !section.includes(`\`${id}\``))
    .map(({ kind, id, how }) => {
      const text = `the ${kind} "${id}" was ${how} and is not named below ${after.version}; name it as \`${id}\``;
      return { ...lineWith(files.changes, heading), code: "not-in-change-record", text };
    });
}

/** Below 0 where the first is the lower version, above 0 where it is the higher one. */
function compareVersions(one: string, other: string): number {
  const [a, b] = [one, other].map((version) => version.split(/[.+-]/).map((part) => Number.parseInt(part, 10)));
  for (let i = 0; i < 3; i++) {
    const difference = (a?.[i] || 0) - (b?.[i] || 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

function sectionOf({ text }: TextFile, heading: RegExp): string | null {
  const lines = text.split(/\r\n|\r|\n/);
  const start = lines.findIndex((line) => heading.test(line));
  if (start < 0) return null;
  const length = lines.slice(start + 1).findIndex((line) => /^##\s/.test(line));
  return lines.slice(start + 1, length < 0 ? undefined : start + 1 + length).join("\n");
}

function lineWith({ path, text }: TextFile, pattern: RegExp): TextPlace {
  const line = text.split(/\r\n|\r|\n/).findIndex((one) => pattern.test(one));
  return { file: path, line: Math.max(line, 0) + 1, column: 1 };
}
