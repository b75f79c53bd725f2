import { FINDING_PARTS, OUTCOMES } from "./finding-parts.js";
import { OVERLAY_PARTS } from "./overlay-parts.js";
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
  numberOrNull,
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
const CAUSES = [
  "set-too-small",
  "stage",
  "no-id",
  "never-fails",
  "never-warns",
  "never-undecided",
  "never-not-asked",
  "not-accepted",
  "acceptance-ends",
];

const ROW = {
  file: text("Survey file, as given, with forward slashes."),
  sheet: textOrNull("Sheet; null for CSV."),
  row: whole("Row as the spreadsheet program shows it; of CSV the line.", 1),
} as const;

const BAND = exactly("How far a value may lie off the plan without any rule saying worse of the point.", {
  lowest: numberOrNull("Lower end; null where no rule sets one near the plan."),
  highest: numberOrNull("Upper end; null where no rule sets one near the plan."),
  unit: textOrNull("Unit of both ends."),
  lowestBy: listOf("Rules that set the lower end.", defined("bandRule")),
  highestBy: listOf("Rules that set the upper end.", defined("bandRule")),
});

const VALUE = exactly("A value of a job with where it comes from; one that is not known is a box to be filled in.", {
  name: text("What it is, in words."),
  fact: defined("factShown"),
  band: orNull(defined("band")),
});

const LINE = exactly("One thing to do.", {
  text: text("What to do."),
  values: listOf("What it takes.", defined("value")),
  hold: flag("Nobody goes on before this is signed off."),
});

const SUPPLY = exactly("A tool or a material.", {
  kind: oneOfWords("Which of them.", ["tool", "material"]),
  name: text("What it is."),
  amount: numberOrNull("How much; of a tool null."),
  unit: textOrNull("pieces or m; null for a tool."),
  notKnown: whole("Points that need it and do not say how much."),
});

const RECORD = exactly("Something to measure or check, and to write down.", {
  fact: form("Id of the fact that it is read back as, at the stage installed.", FACT),
  name: text("Its name."),
  unit: textOrNull("Its unit."),
  whenRunning: flag("To be taken once the machine runs again."),
  expected: orNull(defined("value")),
});

const HOLD_POINT = exactly("A permit, or a point of the work at which somebody signs before it goes on.", {
  kind: oneOfWords("Which of them.", ["permit", "hold"]),
  text: text("What has to be so."),
  stated: listOf(
    "What the survey says of it; it is no permit.",
    exactly("The same for these points.", {
      points: listOf("Names of the points.", { type: "string" }),
      values: listOf("Facts.", defined("value")),
    }),
  ),
});

const ACCEPTED = exactly("A finding that somebody has accepted, in force on the day.", {
  rule: form("Id of the rule.", KEBAB),
  outcome: oneOfWords("What it says.", OUTCOMES),
  message: text("Why."),
  reason: text("Why it is accepted."),
  acceptedBy: text("Who answers for it: name and role."),
  from: form("First day in force.", DAY),
  until: form("First day not in force.", DAY),
  origin: defined("origin"),
});

const JOB = exactly("The work at one point.", {
  id: form("UUID version 5 of site and point.", UUID5),
  point: text("The point as the survey names it."),
  place: text("Where on the machine, in words."),
  assetTag: textOrNull("The tag of the machine."),
  component: textOrNull("Part of the machine, as a choice of the catalogue."),
  bearingPosition: textOrNull("Bearing, as a choice of the catalogue."),
  direction: textOrNull("Measuring direction, as a choice of the catalogue."),
  siteStated: textOrNull("Site, where the row states it itself."),
  pointId: textOrNull("Its own id in the survey; null where its name is made of its parts."),
  ...ROW,
  verdict: oneOfWords("The verdict it rests on. A screening, not a permission.", VERDICTS),
  accepted: listOf("What somebody has accepted; empty where the point passes.", defined("accepted")),
  method: textOrNull("Mounting method, as a choice of the catalogue."),
  sections: listOf(
    "What to do, in the order of the work.",
    exactly("A part of the job.", {
      part: oneOfWords("Which.", ["place", "seat", "hole", "bond", "fit", "cable", "supply"]),
      title: text("Its title."),
      lines: listOf("Its steps.", defined("line")),
    }),
  ),
  records: listOf("What to write down.", defined("record")),
  supplies: listOf("Tools and materials.", defined("supply")),
});

const PACK = exactly("The work on one machine in one outage.", {
  id: form("Its name, safe in file names.", "^[a-z0-9]+(-[a-z0-9]+)*$"),
  machine: text("The machine as the survey names it."),
  assetTag: textOrNull("Its tag."),
  where: listOf("Where it stands.", defined("value")),
  outage: formOrNull("Day of the outage; null where none is stated.", DAY),
  holdPoints: listOf("Permits and hold points.", defined("holdPoint")),
  points: listOf("The points, in the order of the survey.", defined("job")),
  supplies: listOf("Tools and materials for the pack.", defined("supply")),
});

const HELD_BACK = exactly("A reason against planning work.", {
  cause: oneOfWords("Its kind.", CAUSES),
  rule: formOrNull("The rule that speaks; null where none does.", KEBAB),
  text: text("Why."),
  remedy: text("What to do."),
});

/** JSON Schema of the work packs of a run. The file `schemas/work-packs.schema.json` is written from it. */
export const WORK_PACKS_SCHEMA: SchemaPart = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "work-packs.schema.json",
  title: "Work packs",
  ...exactly("The work on released points per machine and outage, and what is held back.", {
    basis: exactly("What the verdicts rest on.", {
      program: HEAD.program,
      run: form("Digest of the run.", SHA256),
      asOf: form("Day for which limits were looked up.", DAY),
      set: text("Set of rules."),
      rulebook: HEAD.rulebook,
      site: textOrNull("Name of the site."),
      surveys: listOf(
        "The surveys.",
        exactly("A survey.", { file: ROW.file, digest: form("SHA-256 of its bytes.", SHA256) }),
      ),
      deviations: orNull(
        exactly("The file of accepted deviations.", {
          file: text("Its path as given."),
          digest: form("SHA-256 of its data.", SHA256),
        }),
      ),
    }),
    cautions: HEAD.cautions,
    allHeldBack: orNull(defined("heldBack")),
    packs: listOf("By outage, those without a day last.", defined("pack")),
    outages: listOf(
      "What each outage needs.",
      exactly("An outage.", {
        outage: formOrNull("Its day; null where none is stated.", DAY),
        packs: listOf("Ids of its packs.", { type: "string" }),
        points: whole("Points in them."),
        supplies: listOf("Tools and materials for all of them.", defined("supply")),
      }),
    ),
    heldBack: listOf(
      "Points on which no work is planned.",
      exactly("A point.", {
        id: formOrNull("Its id.", UUID5),
        point: text("Its name."),
        machine: textOrNull("The machine."),
        place: text("Where on the machine, in words."),
        ...ROW,
        verdict: oneOfWords("Its verdict.", VERDICTS),
        reasons: listOf("Every reason.", defined("heldBack")),
      }),
    ),
  }),
  $defs: {
    origin: FINDING_PARTS.origin,
    factShown: FINDING_PARTS.factShown,
    ...OVERLAY_PARTS,
    bandRule: exactly("A rule that sets an end.", {
      rule: form("Its id.", KEBAB),
      outcome: oneOfWords("What it says beyond the end.", OUTCOMES),
    }),
    band: BAND,
    value: VALUE,
    line: LINE,
    supply: SUPPLY,
    record: RECORD,
    holdPoint: HOLD_POINT,
    accepted: ACCEPTED,
    job: JOB,
    pack: PACK,
    heldBack: HELD_BACK,
  },
};

/** The schema as its file holds it. */
export function workPacksSchemaText(): string {
  return `${JSON.stringify(WORK_PACKS_SCHEMA, null, 2)}\n`;
}
