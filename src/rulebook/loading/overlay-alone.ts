import { sha256OfData } from "../../base/index.js";
import type { OverlayFiles } from "../book/overlay.js";
import type { FileFinding } from "../book/rulebook.js";
import { RULEBOOK_LIMITS } from "../text/file-limits.js";
import { idOf } from "../text/ids.js";
import type { LoadedFile } from "../text/loaded-file.js";
import type { RawChange, RawOverlay } from "../text/raw.js";
import { loadFolder } from "./load-files.js";
import { noOverlay } from "./overlay-manifest.js";
import { overlayRoleOf } from "./overlay-roles.js";

/** An overlay by itself, whatever lies below it. */
export interface OverlayAlone {
  readonly name: string;
  readonly version: string;
  readonly over: { readonly name: string; readonly version: string };
  /** What it says of each thing, as a digest without cases, by kind and id ("rule thread-depth"). */
  readonly things: ReadonlyMap<string, { readonly kind: string; readonly id: string; readonly digest: string }>;
}

/** The overlay, or what is wrong with the form of its files. */
export type OverlayReading =
  | { readonly ok: true; readonly overlay: OverlayAlone }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/** Cases prove what is said; nothing is judged by them. */
const LEFT_OUT: ReadonlySet<string> = new Set(["cases", "casesGive", "addsCases"]);

/** Reads an overlay without a book below it: only the form of its files is checked. */
export function readOverlay({ root, files }: OverlayFiles): OverlayReading {
  const wrong = noOverlay({ root, files });
  if (wrong) return { ok: false, findings: [wrong] };
  const findings: FileFinding[] = [];
  const folder = loadFolder({ root, files, limits: RULEBOOK_LIMITS, roleOf: overlayRoleOf }, findings);
  const manifest = folder?.loaded.find(({ role }) => role === "overlay");
  if (!folder || !manifest || findings.length > 0) return { ok: false, findings };
  const { name, version, over } = manifest.source.data as RawOverlay;
  const said = folder.loaded.filter(({ role }) => role !== "overlay").map(thingIn);
  return {
    ok: true,
    overlay: { name, version, over, things: new Map(said.map((one) => [`${one.kind} ${one.id}`, one])) },
  };
}

function thingIn({ role, source, name }: LoadedFile): { kind: string; id: string; digest: string } {
  const digest = sha256OfData(withoutCases(source.data));
  if (role !== "change") return { kind: role, id: idOf(source.data) ?? name, digest };
  const [[kind, id] = [role, name]] = Object.entries((source.data as RawChange).changes);
  return { kind, id, digest };
}

/** Data of a file without cases, also below `replaces`; keys of other things are never named like these. */
function withoutCases(data: unknown): unknown {
  if (typeof data !== "object" || data === null || Array.isArray(data)) return data;
  const kept = Object.entries(data).filter(([key]) => !LEFT_OUT.has(key));
  return Object.fromEntries(kept.map(([key, value]) => [key, key === "replaces" ? withoutCases(value) : value]));
}
