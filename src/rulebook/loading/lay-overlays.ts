import { didYouMean, sha256OfData } from "../../base/index.js";
import type { BookThing, ChangeableKind, Overlay, OverlayChange, OverlayFiles, SwitchedOff } from "../book/overlay.js";
import type { FileFinding } from "../book/rulebook.js";
import type { FileLimits } from "../text/file-limits.js";
import type { RoledFile } from "../text/file-roles.js";
import { foldId, idOf } from "../text/ids.js";
import type { LoadedFile } from "../text/loaded-file.js";
import type { RawChange, RawConditionFile, RawManifest, RawRule } from "../text/raw.js";
import { below } from "../text/source.js";
import {
  loosenedBy,
  type Refusal,
  refusalOfCondition,
  refusalOfForm,
  refusalOfReplacing,
  refusalToSwitchOff,
} from "./change-guards.js";
import { type LoadedFolder, loadFolder } from "./load-files.js";
import { mergedFile } from "./merged-file.js";
import { type BookBelow, noOverlay, overlayManifest } from "./overlay-manifest.js";
import { overlayRoleOf } from "./overlay-roles.js";

/** A rulebook with the overlays merged in, and what they did. */
export interface LaidBook extends LoadedFolder {
  readonly overlays: readonly Overlay[];
  readonly switchedOff: readonly SwitchedOff[];
  /** Paths of the files of the rulebook below all overlays; none where there is no overlay. */
  readonly inherited: ReadonlySet<string>;
  /** SHA-256 of the canonical JSON (RFC 8785) of all loaded data. */
  readonly digest: string;
}

/** The data of files as digests see them, by their paths inside their folder. */
export function dataOfFiles(
  loaded: readonly LoadedFile[],
): readonly { readonly path: string; readonly data: unknown }[] {
  return loaded.map(({ inside, source }) => ({ path: inside, data: source.data }));
}

/** The book as it stands below the next overlay. */
interface Standing {
  roled: readonly RoledFile[];
  loaded: readonly LoadedFile[];
  readonly gates: readonly string[];
  readonly switchedOff: SwitchedOff[];
  readonly findings: FileFinding[];
}

/**
 * Lays overlays over a rulebook, one after the other: what they add stands beside, what they change is merged key by
 * key. Nothing of what comes out is checked here but what a change may not do.
 *
 * @param base - the rulebook, without a mistake
 * @param findings - the list to add mistakes to; the book is of use only if nothing was added
 */
export function layOverlays(
  base: LoadedFolder & { readonly manifest: RawManifest },
  over: readonly OverlayFiles[],
  limits: FileLimits,
  findings: FileFinding[],
): LaidBook {
  const { name, version, methods } = base.manifest;
  const { roled, loaded } = base;
  const standing: Standing = { roled, loaded, gates: methods?.gates ?? [], switchedOff: [], findings };
  const books: BookBelow[] = [{ name, version }];
  const overlays: Overlay[] = [];
  const data: unknown[] = [];
  for (const { root, files } of over) {
    const wrong = noOverlay({ root, files });
    if (wrong) findings.push(wrong);
    const folder = wrong ? null : loadFolder({ root, files, limits, roleOf: overlayRoleOf }, findings);
    const manifest = folder && overlayManifest(folder, books, findings);
    // What lies above a book that is not the right one cannot be looked at either.
    if (!folder || !manifest) break;
    const own = dataOfFiles(folder.loaded);
    data.push(own);
    const changed = layChanges(folder, manifest.name, standing);
    const added = layAdded(folder, standing);
    overlays.push({
      name: manifest.name,
      version: manifest.version,
      digest: sha256OfData(own),
      signedBy: null,
      added,
      changed,
    });
    books.push(manifest);
  }
  const inOrder = <File extends RoledFile>(all: readonly File[]): readonly File[] =>
    [...all].sort((a, b) => (a.inside < b.inside ? -1 : a.inside > b.inside ? 1 : 0));
  return {
    roled: inOrder(standing.roled),
    loaded: inOrder(standing.loaded),
    overlays,
    switchedOff: standing.switchedOff,
    inherited: new Set(roled.map(({ file }) => file.path)),
    digest: sha256OfData({ rulebook: dataOfFiles(loaded), overlays: data }),
  };
}

const isThing = (file: RoledFile): boolean => file.role !== "overlay" && file.role !== "change";

/**
 * The files of a laid book with those first that stand as they do below it, so that of two that are at odds the one
 * that an overlay brought is reported.
 */
export function inheritedFirst({ loaded, inherited }: LaidBook): readonly LoadedFile[] {
  const isOfOverlay = ({ file, source }: LoadedFile): boolean =>
    source.changedAt !== undefined || !inherited.has(file.path);
  return [...loaded.filter((file) => !isOfOverlay(file)), ...loaded.filter(isOfOverlay)];
}

/** Puts the things of an overlay beside those of the book below, where they would stand in a rulebook. */
function layAdded({ roled, loaded }: LoadedFolder, standing: Standing): readonly BookThing[] {
  const asInBook = <File extends RoledFile>(file: File): File => ({
    ...file,
    inside: file.inside.replace(/^rules\//, ""),
  });
  const things: BookThing[] = [];
  const refused = new Set<string>();
  for (const file of loaded.filter(isThing)) {
    const kind = file.role as ChangeableKind;
    const id = idOf(file.source.data) ?? file.name;
    const home = thingIn(standing.loaded, kind, id);
    if (home) {
      const text = `the book below has the ${kind} "${id}" (${home.file.path}); write a change file with changes: { ${kind}: ${id} } instead`;
      file.report.atValue("/id", "already-there", text);
      refused.add(file.file.path);
    } else things.push({ kind, id });
  }
  // The name of a refused file still counts as known, so that who names it is not said to be wrong, too.
  standing.roled = [...standing.roled, ...roled.filter(isThing).map(asInBook)];
  const kept = loaded.filter((file) => isThing(file) && !refused.has(file.file.path));
  standing.loaded = [...standing.loaded, ...kept.map(asInBook)];
  return things;
}

function thingIn(loaded: readonly LoadedFile[], kind: ChangeableKind, id: string): LoadedFile | undefined {
  return loaded.find((file) => file.role === kind && foldId(idOf(file.source.data) ?? file.name) === foldId(id));
}

function layChanges(folder: LoadedFolder, overlay: string, standing: Standing): readonly OverlayChange[] {
  const changes: OverlayChange[] = [];
  const homes = new Map<string, string>();
  for (const file of folder.loaded) {
    if (file.role !== "change" || !file.fits) continue;
    const raw = file.source.data as RawChange;
    const [[kind, id] = []] = Object.entries(raw.changes) as [ChangeableKind, string][];
    if (kind === undefined || id === undefined) continue;
    const home = homes.get(`${kind} ${id}`);
    homes.set(`${kind} ${id}`, home ?? file.file.path);
    if (home !== undefined) {
      const text = `${home} changes the ${kind} "${id}" already; put both changes into one file`;
      file.report.atValue(below("/changes", kind), "changed-twice", text);
      continue;
    }
    const target = standing.loaded.find((other) => other.role === kind && idOf(other.source.data) === id);
    if (target === undefined)
      file.report.atValue(below("/changes", kind), "unknown-thing", notThere(folder, { kind, id }, standing));
    else if (target.fits) layChange({ file, raw, thing: { kind, id }, target }, overlay, standing, changes);
  }
  return changes;
}

function notThere({ loaded }: LoadedFolder, { kind, id }: BookThing, { loaded: all, switchedOff }: Standing): string {
  const off = kind === "rule" ? switchedOff.find(({ rule }) => rule === id) : undefined;
  if (off) return `"${off.overlay}" has switched the rule "${id}" off; nothing can be changed of it`;
  if (loaded.some((file) => file.role === kind && idOf(file.source.data) === id)) {
    return `the overlay itself adds the ${kind} "${id}"; write it as it is to be there`;
  }
  const known = all.filter(({ role }) => role === kind).map(({ source, name }) => idOf(source.data) ?? name);
  return `the book below has no ${kind} "${id}"${didYouMean(id, known) || "; name one that it has, or write a whole file"}`;
}

/** One change file and the thing that it changes. */
interface Change {
  readonly file: LoadedFile;
  readonly raw: RawChange;
  readonly thing: BookThing;
  readonly target: LoadedFile;
}

function layChange(change: Change, overlay: string, standing: Standing, changes: OverlayChange[]): void {
  const { file, raw, thing, target } = change;
  const refusal = refusalOfForm(raw, thing) ?? refusalOfWhat(change, standing);
  if (refusal) {
    file.report.atKey(refusal.pointer, refusal.code, refusal.text);
    return;
  }
  const { reason, by, on, replaces = {} } = raw;
  const at = file.report.placeOfKey("/changes");
  const isTarget = (other: RoledFile): boolean => other.role === target.role && other.name === target.name;
  if (raw.switchedOff) {
    const { title } = target.source.data as RawRule;
    standing.switchedOff.push({ rule: thing.id, title, overlay, reason, by, on, at });
    standing.roled = standing.roled.filter((other) => !isTarget(other));
    standing.loaded = standing.loaded.filter((other) => !isTarget(other));
    return;
  }
  const loosens = thing.kind === "rule" ? loosenedBy(target.source.data as RawRule, replaces) : [];
  const keys = [...Object.keys(replaces), ...(raw.addsCases ? ["addsCases"] : [])];
  changes.push({ ...thing, keys, loosens, reason, by, on, at });
  const merged = mergedFile(target, { raw, source: file.source, report: file.report }, standing.findings);
  standing.loaded = standing.loaded.map((other) => (other === target ? merged : other));
}

function refusalOfWhat({ raw, thing, target }: Change, { loaded, gates }: Standing): Refusal | null {
  if (thing.kind === "rule") {
    const rule = target.source.data as RawRule;
    return raw.switchedOff ? refusalToSwitchOff(rule, gates) : refusalOfReplacing(rule, raw.replaces ?? {});
  }
  if (thing.kind !== "condition") return null;
  const rules = loaded.flatMap(({ role, fits, source }) => (role === "rule" && fits ? [source.data as RawRule] : []));
  const conditions = loaded.flatMap(({ role, fits, source }) =>
    role === "condition" && fits ? [source.data as RawConditionFile] : [],
  );
  return refusalOfCondition(thing.id, rules, new Map(conditions.map(({ id, when }) => [id, when])));
}
