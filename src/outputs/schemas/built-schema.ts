import { MATCH_STATUSES } from "../../built/index.js";
import { CELL_PLACE, FINDING_PARTS, factShownPart, OUTCOMES } from "./finding-parts.js";
import { GROUP_PARTS } from "./group-parts.js";
import { HEAD_PARTS } from "./head-parts.js";
import { HEAD } from "./result-schema.js";
import {
  DAY,
  defined,
  exactly,
  FACT,
  flag,
  form,
  formOrNull,
  KEBAB,
  listOf,
  oneOfWords,
  orNull,
  type SchemaPart,
  SHA256,
  text,
  textOrNull,
  UUID5,
  whole,
} from "./schema-words.js";

const VERDICTS = ["pass", "warn", "fail"];
const FACT_IDS: SchemaPart = { type: "string", pattern: FACT };

const ROW = exactly("A row of a survey.", {
  file: text("Survey file, as given, with forward slashes."),
  sheet: textOrNull("Sheet; null for CSV."),
  row: whole("Row as the spreadsheet program shows it; of CSV the line.", 1),
});

const DIFFERENCE = exactly("A fact that both sides state, and not alike.", {
  fact: form("Id of the fact.", FACT),
  proposed: defined("factShown"),
  built: defined("factShown"),
  needsNewVerdict: flag("Method or place: the verdict on the proposal does not hold for what was built."),
});

const TURNED = exactly("A rule that says something else now.", {
  rule: form("Id of the rule.", KEBAB),
  worse: flag("It stands in the way now, or more than before."),
  before: orNull(
    exactly("What it said when the order was issued; null: it passed, did not apply or was not asked.", {
      outcome: oneOfWords("Its outcome.", OUTCOMES),
      message: textOrNull("The reason in words."),
    }),
  ),
  now: orNull(defined("finding")),
  asked: flag("It is asked now; one that speaks of proposals alone is not asked of what was built."),
});

const PARTNER = exactly("A point that may be the same one under another id.", {
  id: formOrNull("Its id.", UUID5),
  point: textOrNull("The point as its survey names it."),
  at: defined("row"),
});

const POINT = exactly("One point with what was proposed and what was built.", {
  id: formOrNull("UUID version 5 of site and point; null where the row says too little.", UUID5),
  point: textOrNull("The point as the survey names it."),
  machine: textOrNull("The machine as the survey names it."),
  assetTag: textOrNull("The tag of the machine as the register has it."),
  component: textOrNull("Part of the machine, as a choice of the catalogue."),
  bearingPosition: textOrNull("Bearing, as a choice of the catalogue."),
  direction: textOrNull("Measuring direction, as a choice of the catalogue."),
  status: oneOfWords("How the two sides belong together.", MATCH_STATUSES),
  proposed: listOf("Its rows in the proposal.", defined("row")),
  built: listOf("Its rows in the built survey.", defined("row")),
  verdictThen: oneOfWords("The verdict that an order rests on; null for none.", [...VERDICTS, null]),
  verdictNow: oneOfWords("What was built, or an open order under the rules of today.", [...VERDICTS, null]),
  change: oneOfWords("What became of the verdict.", ["falls", "rises", "same", null]),
  recall: flag("The order is to be called back."),
  onlyUndecided: flag("It is called back only because something is not recorded."),
  needsNewVerdict: flag("It was built without a verdict that covers it."),
  againstVerdict: flag("It was built although the proposal failed, and no rule that failed has been met since."),
  differences: listOf("Facts that both sides state, and not alike.", defined("difference")),
  turned: listOf("Rules that say something else now.", defined("turned")),
  carried: listOf("Facts judged by the proposal's word, since the built survey does not state them.", FACT_IDS),
  notCarried: listOf("Facts that the proposal states of another place, method or part than was built.", FACT_IDS),
  likely: listOf(
    "Points on the other side that may be the same one, likeliest first; never matched.",
    defined("partner"),
  ),
  text: textOrNull("What is to be said of the status."),
});

const ISSUED = exactly("The result under which orders were issued.", {
  file: text("Its file, as given."),
  digest: form("SHA-256 of its bytes.", SHA256),
  run: form("Digest of the run that it is of.", SHA256),
  asOf: form("Day for which its limits were looked up.", DAY),
  set: text("Set of rules that was asked."),
  rulebook: exactly("Its rulebook.", {
    name: text("Its name."),
    version: text("Its version."),
    digest: form("SHA-256 of its data.", SHA256),
  }),
  rulebookChanged: flag("The rulebook of this comparison is another one."),
  surveys: listOf(
    "The surveys that it rests on.",
    exactly("A survey.", {
      file: text("Path as given then."),
      digest: form("SHA-256 of its bytes then.", SHA256),
      now: formOrNull("SHA-256 of the proposed survey that is given now; null for none.", SHA256),
    }),
  ),
  gone: listOf(
    "Points that it has a verdict on and that the proposal no longer holds.",
    exactly("A point.", {
      id: form("Its id.", UUID5),
      point: textOrNull("Its name."),
      verdict: oneOfWords("The verdict on it.", VERDICTS),
    }),
  ),
});

const COUNTS: Readonly<Record<string, string>> = {
  points: "Points on both sides together.",
  matched: "Points proposed and built.",
  notBuilt: "Points not built yet.",
  notProposed: "Points built without a proposal.",
  twice: "Points that stand in several rows of one side.",
  noId: "Rows without an id.",
  recalled: "Points whose order is to be called back.",
  recalledOnlyUndecided: "Of those, the ones called back only because something is not recorded.",
  needsNewVerdict: "Points built without a verdict that covers them.",
  againstVerdict: "Points built although the proposal failed, and no better now.",
  differing: "Points built otherwise than proposed.",
  rises: "Points whose verdict is better now.",
  pass: "Matched points with verdict pass as built.",
  warn: "Matched points with verdict warn as built.",
  fail: "Matched points with verdict fail as built.",
};

const SUMMARY = exactly("What stands after the points.", {
  ...Object.fromEntries(Object.entries(COUNTS).map(([key, description]) => [key, whole(description)])),
  byFact: listOf(
    "Facts that differ, most points first.",
    exactly("A fact.", { fact: form("Id of the fact.", FACT), points: whole("Points in which it differs.") }),
  ),
});

const { point: _, ...ofFindings } = FINDING_PARTS;

/**
 * JSON Schema of the document that compares proposal and built survey. Every key is always there, null where it has no
 * value. The file `schemas/built.schema.json` is written from it.
 */
export const BUILT_SCHEMA: SchemaPart = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "built.schema.json",
  title: "Proposed against built",
  ...exactly("What was built beside what was proposed: differences, verdicts then and now, orders to be called back.", {
    program: HEAD.program,
    digest: form("SHA-256 over the runs on both sides and the result under which orders were issued.", SHA256),
    sameSurvey: flag("The same surveys hold what was proposed and what was built."),
    proposed: defined("runHead"),
    built: defined("runHead"),
    issued: orNull(defined("issued")),
    remarks: listOf("What is to be known of the comparison.", defined("problem")),
    cautions: HEAD.cautions,
    points: listOf("Points in the order of the proposal, then those built besides.", defined("builtPoint")),
    summary: defined("builtSummary"),
  }),
  $defs: {
    ...ofFindings,
    ...HEAD_PARTS,
    ...GROUP_PARTS,
    factShown: factShownPart({ file: text("Survey file that the cell stands in."), ...CELL_PLACE }),
    runHead: exactly("The head of a run, as in the result document.", HEAD),
    row: ROW,
    difference: DIFFERENCE,
    turned: TURNED,
    partner: PARTNER,
    builtPoint: POINT,
    issued: ISSUED,
    builtSummary: SUMMARY,
  },
};

/** The schema as its file holds it. */
export function builtSchemaText(): string {
  return `${JSON.stringify(BUILT_SCHEMA, null, 2)}\n`;
}
