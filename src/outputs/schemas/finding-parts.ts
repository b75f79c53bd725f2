import { BASES } from "../../rulebook/index.js";
import { ACCEPTED } from "./deviation-parts.js";
import { METHOD_ADVISED, METHOD_TRIED } from "./method-parts.js";
import {
  BANDS,
  CELL,
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
  text,
  textOrNull,
  UUID5,
  whole,
} from "./schema-words.js";

export const OUTCOMES = ["pass", "warn", "fail", "undecided", "not-applicable", "no-limit-in-force"];

const PLAIN_VALUE: SchemaPart = {
  description: "A number in `unit`, a text or the id of a choice, yes or no; null where it is no single value.",
  type: ["number", "string", "boolean", "null"],
};

const CITATION = exactly("The source of a limit or of a value of a model.", {
  id: form("Name by which limits cite it.", KEBAB),
  basis: oneOfWords("How well it is founded.", BASES),
  says: text("What the source says, in our words."),
  source: textOrNull("Title of the standard, book or data set."),
  clause: textOrNull("Clause, only where someone has read it."),
  readOn: formOrNull("Day on which it was read.", DAY),
});

const ORIGIN = exactly("A line of a rule, model or site file.", {
  file: text("Path of the file."),
  line: whole("Line, counted from 1.", 1),
});

/** A cell within one survey file. */
export const CELL_PLACE = {
  sheet: textOrNull("Null for CSV."),
  cell: form("Such as F17.", CELL),
} as const;

/** A fact with what is said of it, and the cells in the form that a document gives them. */
export function factShownPart(cell: Readonly<Record<string, SchemaPart>>): SchemaPart {
  return exactly("A fact that a finding rests on.", {
    fact: form("Id of the fact in the catalogue.", FACT),
    value: PLAIN_VALUE,
    lowest: numberOrNull("Lower end where it is no single value; null for no lower bound."),
    highest: numberOrNull("Upper end where it is no single value; null for no upper bound."),
    unit: textOrNull("Unit of value, lowest, highest and accuracy."),
    accuracy: numberOrNull("Stated accuracy, plus or minus."),
    assumed: textOrNull("What was taken for granted in reading it."),
    cells: listOf(
      "Cells it was read from; of a derived fact, the cells of the facts under it.",
      exactly("A cell as the spreadsheet program names it.", cell),
    ),
    origin: orNull(defined("origin")),
  });
}

const LIMIT = exactly("The limit that spoke, or of a pass the nearest failing one.", {
  is: oneOfWords("How the limit is broken.", BANDS),
  value: {
    description: "A number in `unit`, a pair for outside, choices for oneOf and noneOf; null where a bound is unknown.",
    anyOf: [
      { type: ["number", "null"] },
      { type: "array", items: { type: "number" }, minItems: 2, maxItems: 2 },
      { type: "array", items: { type: "string" } },
    ],
  },
  unit: textOrNull("Unit of value."),
  from: form("First day of the dated entry.", DAY),
  fact: formOrNull("The fact that the bound is taken from.", FACT),
  origin: defined("origin"),
  cites: listOf("Ids of citations of the rule or the model.", { type: "string", pattern: KEBAB }),
});

const MARGIN = exactly("Distance to the nearest failing limit from the worst end; positive on the good side.", {
  value: { description: "In the unit of the judged fact.", type: "number" },
  fraction: numberOrNull("Of the limit's magnitude; null at a limit of 0 and for a temperature."),
});

const CHANGE = exactly("A change of one fact by which the finding would pass, or no longer apply.", {
  fact: form("Id of the fact.", FACT),
  from: PLAIN_VALUE,
  to: { description: "A number in `unit`, a text or the id of a choice.", type: ["number", "string"] },
  unit: textOrNull("Unit of from and to."),
  breaks: listOf("Ids of rules that would then say worse of the point.", { type: "string", pattern: KEBAB }),
});

const FINDING = exactly("What one rule says of one point.", {
  rule: form("Id of the rule.", KEBAB),
  outcome: oneOfWords("What the rule says.", OUTCOMES),
  atBest: oneOfWords("The best that could still come out, where it is open.", [...OUTCOMES, null]),
  facts: listOf("Facts it rests on, the judged one first.", defined("factShown")),
  limit: orNull(defined("limit")),
  margin: orNull(defined("margin")),
  missing: listOf(
    "Survey, site or model facts that would have to be known, or known better.",
    exactly("A fact that is not known well enough.", {
      fact: form("Id of the fact.", FACT),
      reason: oneOfWords("Why.", ["missing", "doubtful", "unreadable", "conflicting", "too-close"]),
      measureTo: orNull(
        exactly(
          "How accurately a number that is too close to a limit must be measured again; null if that is no way.",
          {
            accuracy: { description: "Plus or minus, in `unit`; rounded down, so that it is enough.", type: "number" },
            unit: text("Unit of the fact."),
          },
        ),
      ),
    }),
  ),
  message: textOrNull("The reason in words."),
  remedy: textOrNull("What to do; the changes that were found come first."),
  changes: listOf(
    "Of fail and warn: the smallest change of a fact in each direction that would do; those that make no rule worse first.",
    defined("change"),
  ),
  group: textOrNull("Id of the group that the finding refers to."),
  accepted: orNull(defined("accepted")),
});

const POINT = exactly("One point with its verdict.", {
  id: formOrNull("UUID version 5 of site and point; null where the row says too little.", UUID5),
  point: textOrNull("The point as the survey names it."),
  machine: textOrNull("The machine as the survey names it."),
  assetTag: textOrNull("The tag of the machine as the register has it."),
  component: textOrNull("Part of the machine, as a choice of the catalogue."),
  bearingPosition: textOrNull("Bearing, as a choice of the catalogue."),
  direction: textOrNull("Measuring direction, as a choice of the catalogue."),
  file: text("Survey file, as given, with forward slashes."),
  sheet: textOrNull("Sheet; null for CSV."),
  row: whole("Row as the spreadsheet program shows it; of CSV the line.", 1),
  verdict: oneOfWords("What all rules together say. A screening, not a permission.", ["pass", "warn", "fail"]),
  accepted: flag("It does not pass, and every finding that keeps it from passing is accepted."),
  methods: {
    description:
      "The proposed mounting method and those allowed, best first; of points that do not pass, and on request.",
    anyOf: [{ type: "array", items: defined("methodTried") }, { type: "null" }],
  },
  methodAdvised: orNull(defined("methodAdvised")),
  settledBy: {
    description: "The fewest facts that surely settle the verdict; null where it is settled or no fact would.",
    anyOf: [{ type: "array", items: { type: "string", pattern: FACT } }, { type: "null" }],
  },
  findings: listOf("Warn, fail and undecided always; pass and not-applicable on request.", defined("finding")),
});

/** Definitions that the points of a document use. */
export const FINDING_PARTS = {
  citation: CITATION,
  origin: ORIGIN,
  plainValue: PLAIN_VALUE,
  factShown: factShownPart(CELL_PLACE),
  limit: LIMIT,
  margin: MARGIN,
  change: CHANGE,
  accepted: ACCEPTED,
  finding: FINDING,
  methodTried: METHOD_TRIED,
  methodAdvised: METHOD_ADVISED,
  point: POINT,
} as const;
