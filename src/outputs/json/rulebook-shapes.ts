import type { ChangedBy, ChangeShown, OverlayShown, RulebookShown, SwitchedOffShown } from "../../screening/index.js";
import type { Shape } from "./shape.js";

/** The rulebook of a run with the overlays of sites, as documents write it. */
export function rulebookShape({
  name,
  version,
  digest,
  overlays,
  switchedOff,
  signedBy,
}: RulebookShown): Shape<RulebookShown> {
  return {
    name,
    version,
    digest,
    overlays: overlays.map(overlayShape),
    switchedOff: switchedOff.map(offShape),
    signedBy,
  };
}

function overlayShape({ name, version, digest, signedBy, added, changed }: OverlayShown): Shape<OverlayShown> {
  return {
    name,
    version,
    digest,
    signedBy,
    added: added.map(({ kind, id }) => ({ kind, id })),
    changed: changed.map(changeShape),
  };
}

function changeShape({ kind, id, keys, loosens, reason, by, on }: ChangeShown): Shape<ChangeShown> {
  return { kind, id, keys, loosens, reason, by, on };
}

function offShape({ rule, title, overlay, reason, by, on }: SwitchedOffShown): Shape<SwitchedOffShown> {
  return { rule, title, overlay, reason, by, on };
}

/** Who changed a rule, as documents write it. */
export function changedByShape({ overlay, keys, loosens, reason, by, on }: ChangedBy): Shape<ChangedBy> {
  return { overlay, keys, loosens, reason, by, on };
}
