import type { PlainDay, TextFile, TextPlace } from "../../base/index.js";

/** The files of an overlay folder. */
export interface OverlayFiles {
  /** Folder that the given paths begin with. */
  readonly root: string;
  readonly files: readonly TextFile[];
}

/** The kinds of things that an overlay can change, in the order in which they are listed. */
export const CHANGEABLE_KINDS = ["rule", "model", "condition", "table", "group", "measuring"] as const;

export type ChangeableKind = (typeof CHANGEABLE_KINDS)[number];

/** A thing of a rulebook. */
export interface BookThing {
  readonly kind: ChangeableKind;
  readonly id: string;
}

/** Why a site wants something otherwise, and who answers for it. */
export interface SiteWord {
  readonly reason: string;
  readonly by: string;
  readonly on: PlainDay;
}

/** What an overlay changes of one thing of the book below. */
export interface OverlayChange extends BookThing, SiteWord {
  /** Whole keys that it replaces or takes away; `addsCases` where it adds cases. */
  readonly keys: readonly string[];
  /** What the book below demanded and the changed thing does not or may not, in words; also said in results. */
  readonly loosens: readonly string[];
  readonly at: TextPlace;
}

/** A rule of the book below that a site does not apply. */
export interface SwitchedOff extends SiteWord {
  readonly rule: string;
  readonly title: string;
  /** Name of the overlay. */
  readonly overlay: string;
  readonly at: TextPlace;
}

/** An overlay as it was laid over a rulebook. */
export interface Overlay {
  readonly name: string;
  readonly version: string;
  /** SHA-256 of the canonical JSON (RFC 8785) of its own data. */
  readonly digest: string;
  /** Fingerprint of the trusted key by which its signature was checked; null where nobody asked. */
  readonly signedBy: string | null;
  readonly added: readonly BookThing[];
  readonly changed: readonly OverlayChange[];
}

/** What overlays have to do with one thing: who added it, and who changed it, the lowest overlay first. */
export interface WordOfOverlays {
  readonly addedBy: string | null;
  readonly changedBy: readonly (OverlayChange & { readonly overlay: string })[];
}

/** Looks up what the overlays of a book say of one of its things. */
export function wordOfOverlays(overlays: readonly Overlay[], { kind, id }: BookThing): WordOfOverlays {
  const isIt = (one: BookThing): boolean => one.kind === kind && one.id === id;
  return {
    addedBy: overlays.find(({ added }) => added.some(isIt))?.name ?? null,
    changedBy: overlays.flatMap(({ name, changed }) =>
      changed.filter(isIt).map((change) => ({ ...change, overlay: name })),
    ),
  };
}
