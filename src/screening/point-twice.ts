import type { Facts } from "../facts/index.js";
import type { PointRecord } from "../records/index.js";
import { showFact } from "./fact-shown.js";
import type { Finding, RuleShown } from "./result.js";

/** Rows shown in a message; the rest are counted. */
const ROWS_SHOWN = 3;

/** Id of the built-in rule. */
export const POINT_TWICE = "point-twice";

const REMEDY = "keep one of the rows, or correct the point ID of the other";

/** The built-in rule as results list it. */
export const POINT_TWICE_SHOWN: RuleShown = {
  id: POINT_TWICE,
  title: "The point stands in one row only",
  sets: [],
  undecided: "warn",
  // Which of the rows was looked at nobody can tell.
  releases: "never",
  judged: null,
  appliesWhen: null,
  limits: [],
  citations: [
    {
      id: "one-row",
      basis: "common-practice",
      says: "one proposed point is one row; a second row is a slip or a contradiction",
    },
  ],
  reviewOverdue: false,
  remedy: REMEDY,
  addedBy: null,
  changedBy: [],
};

/**
 * The finding of a row whose id another row has too, or null.
 *
 * @param others - the other rows with its id, over all files of the run
 */
export function pointTwice(facts: Facts, others: readonly PointRecord[]): Finding | null {
  if (others.length === 0) return null;
  const named = others.slice(0, ROWS_SHOWN).map(rowInWords).join(", ");
  const more = others.length > ROWS_SHOWN ? ` and ${others.length - ROWS_SHOWN} more` : "";
  const identity = facts.get("point_id")?.known
    ? ["point_id"]
    : ["component", "bearing_position", "direction", "asset_tag"];
  return {
    rule: POINT_TWICE,
    outcome: "fail",
    atBest: null,
    facts: identity.map((fact) => showFact(fact, facts)),
    limit: null,
    margin: null,
    missing: [],
    message: `the same point also stands in ${named}${more}`,
    remedy: REMEDY,
    changes: [],
    group: null,
    accepted: null,
  };
}

/** Where a row stands ("survey.xlsx > Pumps row 17"). */
export function rowInWords(record: PointRecord): string {
  return record.sheet === null
    ? `${record.file} line ${record.row}`
    : `${record.file} > ${record.sheet} row ${record.row}`;
}
