import { OUTCOMES } from "./finding-parts.js";
import {
  DAY,
  form,
  formOrNull,
  KEBAB,
  listOf,
  oneOfWords,
  type SchemaPart,
  SHA256,
  text,
  textOrNull,
  UUID5,
  whole,
} from "./schema-words.js";

/** An object that has these keys, and may have more. */
function atLeast(properties: Readonly<Record<string, SchemaPart>>): SchemaPart {
  return { type: "object", properties, required: Object.keys(properties) };
}

/** What every version of the program has written before the points, and will write. */
const HEAD_PARTS: Readonly<Record<string, SchemaPart>> = {
  digest: form("Digest of the run.", SHA256),
  asOf: form("Day for which limits were looked up.", DAY),
  set: text("Set of rules."),
  rulebook: atLeast({ name: text("Name."), version: text("Version."), digest: form("Digest.", SHA256) }),
  surveys: listOf("Surveys.", atLeast({ file: text("Path as given."), digest: form("Digest.", SHA256) })),
  rules: listOf("Rules.", atLeast({ id: form("Id.", KEBAB), undecided: oneOfWords("Counts as.", ["warn", "fail"]) })),
};

/**
 * What must stand before the points of a stored result that what was built is compared with. Whatever else stands in it
 * is not looked at, so that results of earlier versions stay of use.
 */
export const ISSUED_HEAD_SCHEMA: SchemaPart = atLeast({
  ...HEAD_PARTS,
  stage: oneOfWords("Orders are issued under verdicts on proposals.", ["proposed"]),
});

/** The same of a stored result that is compared with another one, of whatever stage. */
export const COMPARED_HEAD_SCHEMA: SchemaPart = atLeast({
  ...HEAD_PARTS,
  stage: oneOfWords("Whether the points are proposals or built.", ["proposed", "installed"]),
  site: atLeast({ name: textOrNull("Name of the site."), file: textOrNull("Site file.") }),
  rulebook: {
    ...HEAD_PARTS.rulebook,
    properties: {
      name: text("Name."),
      version: text("Version."),
      digest: form("Digest.", SHA256),
      // Results of versions that knew no overlays do not have it.
      overlays: listOf("Overlays.", atLeast({ name: text("Name."), version: text("Version.") })),
    },
  },
});

/** What is asked of a point. */
const POINT_PARTS: Readonly<Record<string, SchemaPart>> = {
  id: formOrNull("Id.", UUID5),
  point: textOrNull("Name."),
  verdict: oneOfWords("Verdict.", ["pass", "warn", "fail"]),
  findings: listOf(
    "Findings.",
    atLeast({
      rule: form("Id of the rule.", KEBAB),
      outcome: oneOfWords("Outcome.", OUTCOMES),
      message: textOrNull("Reason."),
    }),
  ),
};

/** What must stand in each of its points. */
export const ISSUED_POINT_SCHEMA: SchemaPart = atLeast(POINT_PARTS);

/** The same of a point that is compared with another one: where it was read, too. */
export const COMPARED_POINT_SCHEMA: SchemaPart = atLeast({
  ...POINT_PARTS,
  file: text("Survey file."),
  sheet: textOrNull("Sheet."),
  row: whole("Row.", 1),
});
