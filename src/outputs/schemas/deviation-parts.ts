import { DEVIATION_STATUSES } from "../../screening/index.js";
import {
  DAY,
  defined,
  exactly,
  flag,
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

const ACCEPTANCE = {
  reason: text("Why it is accepted."),
  acceptedBy: text("Who answers for it: name and role."),
  from: form("First day in force.", DAY),
  until: form("First day not in force.", DAY),
  origin: defined("origin"),
} as const satisfies Record<string, SchemaPart>;

/** The word of the person who accepted a finding. */
export const ACCEPTED = exactly("A deviation in force that covers the finding.", ACCEPTANCE);

/** The deviations of a run. */
export const DEVIATIONS = exactly("Accepted deviations, in the order of their file.", {
  file: text("Path as given, with forward slashes."),
  digest: form("SHA-256 of the canonical JSON of its data.", SHA256),
  endingWithin: whole("Days ahead in which an end is told of."),
  list: listOf(
    "All of them.",
    exactly("A deviation, and how it stands on the day.", {
      point: text("The point as written: id or name."),
      rule: form("Id of the rule.", KEBAB),
      outcome: oneOfWords("The worst that is accepted.", ["fail", "warn", "undecided"]),
      limit: textOrNull("Limit under which it was accepted, as written."),
      value: textOrNull("Value that was found when it was accepted, as written."),
      ...ACCEPTANCE,
      status: oneOfWords("How it stands; all but in-use cover nothing.", DEVIATION_STATUSES),
      pointId: formOrNull("Id of the point that is meant; null where the run does not have it.", UUID5),
      found: oneOfWords("What the rule says of the point, where that keeps it from passing.", [
        "warn",
        "fail",
        "undecided",
        "no-limit-in-force",
        null,
      ]),
      open: flag("The finding stands, and no deviation in force covers it."),
      endsSoon: flag("In use, ends within the days asked about, and no other follows on."),
      remark: textOrNull("What speaks against relying on it further."),
    }),
  ),
});
