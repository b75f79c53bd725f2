import { STAGES } from "../base/index.js";
import { findFact } from "../facts/index.js";

const VERDICTS = ["pass", "warn", "fail"];
const SEVERITIES = ["pass", "warn", "undecided", "no-limit-in-force", "fail"];

/** What a mapping may take from the results beside the facts. */
export interface FieldDefinition {
  readonly kind: "text" | "choice" | "yes-no" | "date" | "count";
  /** Whose it is: a point's, the whole run's (the same in every row), or the row's own. */
  readonly of: "point" | "run" | "row";
  readonly choices?: readonly string[];
  readonly says: string;
}

const ofPoint = (kind: FieldDefinition["kind"], says: string, choices?: readonly string[]): FieldDefinition => ({
  kind,
  of: "point",
  says,
  ...(choices ? { choices } : {}),
});
const ofRun = (says: string, kind: FieldDefinition["kind"] = "text"): FieldDefinition => ({ kind, of: "run", says });

const BY_NAME: Readonly<Record<string, FieldDefinition>> = {
  id: { kind: "text", of: "row", says: "stable id (a UUID) of the point, or of what the row stands for" },
  points: { kind: "count", of: "row", says: "number of points that the row speaks of" },
  worstVerdict: { kind: "choice", of: "row", choices: VERDICTS, says: "gravest verdict of these points" },
  point: ofPoint("text", "the point as the survey names it"),
  machine: ofPoint("text", "the machine as the survey names it"),
  assetTag: ofPoint("text", "tag of the machine in the register"),
  component: ofPoint("choice", "component", findFact("component")?.choices),
  bearingPosition: ofPoint("choice", "bearing position", findFact("bearing_position")?.choices),
  direction: ofPoint("choice", "direction", findFact("direction")?.choices),
  site: ofPoint("text", "name of the site"),
  verdict: ofPoint("choice", "verdict", VERDICTS),
  released: ofPoint("yes-no", "whether work may be planned on the point"),
  heldBack: ofPoint("text", "why not"),
  accepted: ofPoint("yes-no", "everything that speaks against the point is accepted"),
  acceptedBy: ofPoint("text", "who has accepted findings, in force"),
  acceptedUntil: ofPoint("date", "the day on which the first of these acceptances ends"),
  severity: ofPoint("choice", "outcome of the leading finding; pass where there is none", SEVERITIES),
  leadingRule: ofPoint("text", "rule of the finding that a person should read first"),
  message: ofPoint("text", "why, of that finding"),
  remedy: ofPoint("text", "what to do, of that finding"),
  missing: ofPoint("text", "facts that would have to be known"),
  methodAdvised: ofPoint("choice", "another mounting method that is advised", findFact("mounting_method")?.choices),
  otherMethod: ofPoint("text", "the same in words"),
  settledBy: ofPoint("text", "the fewest facts that surely settle the verdict"),
  file: ofPoint("text", "path of the survey file, as the command was given it"),
  fileName: ofPoint("text", "name of the survey file, without its folder"),
  sheet: ofPoint("text", "sheet of the survey"),
  row: ofPoint("count", "row of the sheet"),
  surveyDigest: ofPoint("text", "SHA-256 of the survey file"),
  rulebook: ofRun("name of the rulebook"),
  rulebookVersion: ofRun("version of the rulebook"),
  rulebookDigest: ofRun("digest of the rulebook"),
  asOf: ofRun("day for which limits were looked up", "date"),
  stage: { kind: "choice", of: "run", choices: STAGES, says: "whether points are proposed or built" },
  set: ofRun("set of rules"),
  runDigest: ofRun("digest over all that the result rests on"),
  program: ofRun("name of the program"),
  programVersion: ofRun("version of the program"),
  mapping: ofRun("id of the mapping"),
  mappingVersion: ofRun("version of the mapping"),
  cautions: ofRun("what goes with every output that leads to work on a machine"),
};

/** Every field by its name; nothing stands under names such as "constructor", which a mapping may hold, too. */
export const FIELDS: Readonly<Record<string, FieldDefinition>> = Object.assign(
  Object.create(null) as Record<string, FieldDefinition>,
  BY_NAME,
);
