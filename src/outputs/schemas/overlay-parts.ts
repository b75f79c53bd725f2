import { CHANGEABLE_KINDS } from "../../rulebook/index.js";
import {
  DAY,
  defined,
  exactly,
  form,
  formOrNull,
  KEBAB,
  listOf,
  oneOfWords,
  type SchemaPart,
  SHA256,
  text,
} from "./schema-words.js";

/** Why a site wants something otherwise, and who answers for it. */
const WORD: Readonly<Record<string, SchemaPart>> = {
  reason: text("Why the site wants it otherwise."),
  by: text("Who answers for it: name and role."),
  on: form("The day on which it was decided.", DAY),
};

const CHANGED: Readonly<Record<string, SchemaPart>> = {
  keys: listOf("Whole keys of its file that are replaced or taken away; addsCases where cases are added.", {
    type: "string",
  }),
  loosens: listOf("What the book below demanded and this does not or may not, in words.", { type: "string" }),
  ...WORD,
};

const THING: Readonly<Record<string, SchemaPart>> = {
  kind: oneOfWords("What it is.", CHANGEABLE_KINDS),
  id: form("Its id.", KEBAB),
};

const SIGNED_BY = formOrNull(
  "Fingerprint of the trusted key that signed it (SHA-256 of its DER form); null where none was asked for.",
  "^sha256:[0-9a-f]{64}$",
);

/** The rulebook of a run, with what sites have laid over it. */
export const RULEBOOK_SHOWN: SchemaPart = exactly("The rulebook, overlays included.", {
  name: text("Its name."),
  version: text("Its version."),
  digest: form("SHA-256 of the canonical JSON of all its data, overlays included.", SHA256),
  overlays: listOf("What sites have laid over it, the lowest first.", defined("overlay")),
  switchedOff: listOf(
    "Rules that an overlay has switched off: no point was asked them.",
    exactly("A rule that was switched off.", {
      rule: form("Id of the rule.", KEBAB),
      title: text("What the rule would demand."),
      overlay: text("Name of the overlay."),
      ...WORD,
    }),
  ),
  signedBy: SIGNED_BY,
});

/** Who changed a rule. */
export const CHANGED_BY: SchemaPart = listOf(
  "The overlays that changed it, the lowest first.",
  exactly("What one overlay changes of it.", { overlay: text("Name of the overlay."), ...CHANGED }),
);

/** Definitions that the head of a document uses. */
export const OVERLAY_PARTS = {
  overlay: exactly("An overlay.", {
    name: text("Its name."),
    version: text("Its version."),
    digest: form("SHA-256 of the canonical JSON of its own data.", SHA256),
    signedBy: SIGNED_BY,
    added: listOf("What it adds.", exactly("A thing that it adds.", THING)),
    changed: listOf("What it changes.", exactly("A thing that it changes.", { ...THING, ...CHANGED })),
  }),
} as const;
