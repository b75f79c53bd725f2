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
} from "./schema-words.js";

/** An object that has these keys, and may have more. */
function atLeast(properties: Readonly<Record<string, SchemaPart>>): SchemaPart {
  return { type: "object", properties, required: Object.keys(properties) };
}

/**
 * What must stand before the points of a stored result to be compared with: the part that every version of the program
 * has written and will write. Whatever else stands in it is not looked at, so that results of earlier versions stay of
 * use.
 */
export const ISSUED_HEAD_SCHEMA: SchemaPart = atLeast({
  digest: form("Digest of the run.", SHA256),
  asOf: form("Day for which limits were looked up.", DAY),
  stage: oneOfWords("Orders are issued under verdicts on proposals.", ["proposed"]),
  set: text("Set of rules."),
  rulebook: atLeast({ name: text("Name."), version: text("Version."), digest: form("Digest.", SHA256) }),
  surveys: listOf("Surveys.", atLeast({ file: text("Path as given."), digest: form("Digest.", SHA256) })),
  rules: listOf("Rules.", atLeast({ id: form("Id.", KEBAB), undecided: oneOfWords("Counts as.", ["warn", "fail"]) })),
});

/** What must stand in each of its points. */
export const ISSUED_POINT_SCHEMA: SchemaPart = atLeast({
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
});
