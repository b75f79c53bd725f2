import { SETTLING_PARTS } from "./method-parts.js";
import { CHANGED_BY, OVERLAY_PARTS } from "./overlay-parts.js";
import {
  BANDS,
  CELL,
  COLUMN,
  DAY,
  defined,
  exactly,
  FACT,
  flag,
  form,
  formOrNull,
  KEBAB,
  listOf,
  numberOrNull,
  oneOfWords,
  orNull,
  type SchemaPart,
  SHA256,
  text,
  textOrNull,
  whole,
} from "./schema-words.js";
import { SPREAD_PARTS } from "./spread-parts.js";

const FACT_IDS: SchemaPart = { type: "string", pattern: FACT };

const SHEET = exactly("How one sheet was taken.", {
  sheet: textOrNull("Null for CSV."),
  used: flag("Whether its rows were read as points."),
  why: text("Why it was used, or not."),
  headingRows: listOf("Rows that hold the headings.", { type: "integer", minimum: 1 }),
  pointRows: whole("Rows taken as points."),
  hidden: flag("Hidden in the survey; it counts all the same."),
  language: oneOfWords("Language of its headings.", ["en", "de", "es", "fr", null]),
  languageWhy: text("What settled the language and the way numbers are written."),
});

const COLUMN_READING = exactly("What one column was taken for.", {
  sheet: textOrNull("Null for CSV."),
  column: form("Its letters.", COLUMN),
  heading: text("As typed."),
  facts: listOf("Facts read from it; empty where it is not used.", FACT_IDS),
  unit: textOrNull("Unit of bare numbers."),
  hidden: flag("Hidden in the survey; it counts all the same."),
  why: text("Why it was taken for this."),
});

const PROBLEM = exactly("One thing to know about the survey as read.", {
  code: form("Kind of problem.", KEBAB),
  file: text("Survey file."),
  sheet: textOrNull("Sheet; null for CSV and for the whole file."),
  cell: formOrNull("Cell; null where the whole sheet or file is meant.", CELL),
  heading: textOrNull("Heading as typed."),
  fact: formOrNull("Fact that was to be read.", FACT),
  found: textOrNull("What the cell holds."),
  text: text("What was expected, and what to do."),
});

const SURVEY = exactly("One survey file.", {
  file: text("Path as given, with forward slashes."),
  digest: form("SHA-256 of its bytes.", SHA256),
  sheets: listOf("Its sheets in their order.", defined("sheet")),
  columns: listOf("Its columns.", defined("column")),
  problems: listOf("What reading it brought to light.", defined("problem")),
  notAsked: listOf(
    "Rules that it could not be asked for lack of a column, or for what a sensor model does not state.",
    exactly("A rule that was not asked.", {
      rule: form("Id of the rule.", KEBAB),
      model: orNull(form("Id of the sensor model of whose points it was not asked; null for the whole survey.", KEBAB)),
      facts: listOf("Facts that have no column and are stated nowhere, or that the model does not state.", FACT_IDS),
      text: text("The same in words."),
    }),
  ),
});

const MODEL = exactly("A sensor model with the values in force.", {
  id: form("Id of the model.", KEBAB),
  title: text("Name of the model."),
  facts: listOf(
    "Its values.",
    exactly("One value.", {
      fact: form("Id of the fact.", FACT),
      value: defined("plainValue"),
      unit: textOrNull("Unit of value."),
      from: form("First day in force.", DAY),
      cites: listOf("Ids of its citations.", { type: "string", pattern: KEBAB }),
      origin: defined("origin"),
    }),
  ),
  citations: listOf("Sources of its values.", defined("citation")),
});

const TABLE = exactly("A table in force that rules look up.", {
  id: form("Id of the table.", KEBAB),
  title: text("What it holds."),
  by: listOf("Facts it is looked up by; none for values that hold everywhere.", FACT_IDS),
  gives: listOf("Facts it gives.", FACT_IDS),
  from: form("First day in force.", DAY),
  until: formOrNull("First day not in force.", DAY),
  reviewBy: formOrNull("Day by which it is to be reviewed.", DAY),
  reviewOverdue: flag("The day to review it has passed; it still holds."),
  citations: listOf("Sources of its values.", defined("citation")),
  origin: defined("origin"),
});

const BOUND = exactly("A bound of a limit: a number, or a fact times a factor plus a shift.", {
  value: numberOrNull("The number; null where the bound is a fact."),
  fact: formOrNull("The fact; null where the bound is a number.", FACT),
  times: { description: "Factor on the fact.", type: "number" },
  plus: { description: "Shift of the fact.", type: "number" },
});

const LIMIT_IN_FORCE = exactly("A limit of a rule in force on the day.", {
  outcome: oneOfWords("What breaking it means.", ["fail", "warn"]),
  is: oneOfWords("How it is broken.", BANDS),
  unit: textOrNull("Unit of its bounds."),
  bounds: listOf("One, or two for outside.", defined("bound")),
  choices: listOf("Of oneOf and noneOf.", { type: "string" }),
  condition: textOrNull("Of when, in words."),
  from: form("First day in force.", DAY),
  until: formOrNull("First day not in force.", DAY),
  reviewBy: formOrNull("Day by which it is to be reviewed.", DAY),
  cites: listOf("Sources, by their id.", { type: "string" }),
});

const RULE = exactly("A rule that was applied.", {
  id: form("Id of the rule.", KEBAB),
  title: text("What the rule demands."),
  sets: listOf("Sets it belongs to.", { type: "string" }),
  undecided: oneOfWords("How an open question counts in the verdict.", ["warn", "fail"]),
  releases: oneOfWords("never: somebody can be hurt, no deviation from it is accepted.", ["never", null]),
  judged: formOrNull("The fact its limits speak of at this stage.", FACT),
  appliesWhen: textOrNull("When it applies, in words; null: always."),
  limits: listOf("Its limits in force on the day.", defined("limitInForce")),
  citations: listOf("Sources of its limits.", defined("citation")),
  reviewOverdue: flag("The day to review its limit has passed; the limit still holds."),
  remedy: text("What to do where it is broken."),
  addedBy: textOrNull("Name of the overlay that added it; null for a rule of the rulebook."),
  changedBy: CHANGED_BY,
});

const COUNTS = exactly("Outcomes of one rule over all points.", {
  rule: form("Id of the rule.", KEBAB),
  pass: whole("Points that pass; of a rule of groups, points of groups that do."),
  warn: whole("Points that warn."),
  fail: whole("Points that fail."),
  undecided: whole("Points where it is open."),
  notApplicable: whole("Points it does not concern."),
  noLimitInForce: whole("Points on a day that no limit covers."),
});

const SUMMARY = exactly("What stands after the points.", {
  points: whole("Points screened."),
  pass: whole("Points with verdict pass."),
  warn: whole("Points with verdict warn."),
  fail: whole("Points with verdict fail."),
  warnOnlyUndecided: whole("Points that warn only because something is undecided."),
  accepted: whole("Points that do not pass, with everything that keeps them from passing accepted."),
  problems: whole("Import problems over all surveys."),
  byRule: listOf("Counts by rule.", defined("ruleCounts")),
  byCriticality: listOf(
    "Machines and points by the class of the machine.",
    exactly("Machines and points of one class.", {
      criticality: oneOfWords("The class; null where it is not known or the rows of a machine disagree.", [
        "A",
        "B",
        "C",
        null,
      ]),
      machines: whole("Machines, by their asset tags."),
      points: whole("Points on machines of the class; a point without a tag by its own row."),
    }),
  ),
  toMeasure: listOf(
    "Facts that stand in the way, most points first.",
    exactly("A fact to be measured.", { fact: form("Id of the fact.", FACT), points: whole("Points it leaves open.") }),
  ),
  ...SETTLING_PARTS,
  ...SPREAD_PARTS,
});

/** Definitions that the head and the summary of a document use. */
export const HEAD_PARTS = {
  sheet: SHEET,
  column: COLUMN_READING,
  problem: PROBLEM,
  survey: SURVEY,
  model: MODEL,
  table: TABLE,
  bound: BOUND,
  limitInForce: LIMIT_IN_FORCE,
  rule: RULE,
  ...OVERLAY_PARTS,
  ruleCounts: COUNTS,
  summary: SUMMARY,
} as const;
