import type { BookThing, Rulebook, SiteWord } from "../rulebook/index.js";
import { wordOfOverlays } from "../rulebook/index.js";

/** What an overlay changes of one thing, as results tell of it. */
export interface ChangeShown extends BookThing, SiteWord {
  /** Whole keys of its file that are replaced or taken away; `addsCases` where cases are added. */
  readonly keys: readonly string[];
  /** What the book below demanded and this does not or may not, in words. */
  readonly loosens: readonly string[];
}

/** An overlay that lay over the rulebook. */
export interface OverlayShown {
  readonly name: string;
  readonly version: string;
  readonly digest: string;
  /** Fingerprint of the trusted key that signed it; null where no key was asked for. */
  readonly signedBy: string | null;
  readonly added: readonly BookThing[];
  readonly changed: readonly ChangeShown[];
}

/** A rule that an overlay has switched off, so that no point was asked it. */
export interface SwitchedOffShown extends SiteWord {
  readonly rule: string;
  readonly title: string;
  /** Name of the overlay. */
  readonly overlay: string;
}

/** The rulebook of a run. */
export interface RulebookShown {
  readonly name: string;
  readonly version: string;
  /** Over all loaded data, overlays included. */
  readonly digest: string;
  /** What sites have laid over it, the lowest first. */
  readonly overlays: readonly OverlayShown[];
  /** Over all sets. */
  readonly switchedOff: readonly SwitchedOffShown[];
  /** Fingerprint of the trusted key that signed it, without overlays; null where no key was asked for. */
  readonly signedBy: string | null;
}

/** Who changed a rule: the overlay, what it replaces, and the word of the site. */
export interface ChangedBy extends SiteWord {
  readonly overlay: string;
  readonly keys: readonly string[];
  readonly loosens: readonly string[];
}

/** The rulebook of a run as results tell of it. */
export function rulebookShown({ name, version, digest, overlays, switchedOff, signedBy }: Rulebook): RulebookShown {
  return {
    name,
    version,
    digest,
    overlays: overlays.map((overlay) => ({
      name: overlay.name,
      version: overlay.version,
      digest: overlay.digest,
      signedBy: overlay.signedBy,
      added: overlay.added,
      changed: overlay.changed.map(({ kind, id, keys, loosens, reason, by, on }) => {
        return { kind, id, keys, loosens, reason, by, on };
      }),
    })),
    switchedOff: switchedOff.map(({ rule, title, overlay, reason, by, on }) => {
      return { rule, title, overlay, reason, by, on };
    }),
    signedBy,
  };
}

/** What overlays have to do with a rule, as results tell of it. */
export function overlaysOfRule(
  { overlays }: Pick<Rulebook, "overlays">,
  id: string,
): { readonly addedBy: string | null; readonly changedBy: readonly ChangedBy[] } {
  const { addedBy, changedBy } = wordOfOverlays(overlays, { kind: "rule", id });
  return {
    addedBy,
    changedBy: changedBy.map(({ overlay, keys, loosens, reason, by, on }) => {
      return { overlay, keys, loosens, reason, by, on };
    }),
  };
}
